using System.Security.Cryptography;
using System.Text;
using Alburnum.Records.Store;

namespace Alburnum.Records.Bundles;

/// <summary>
/// The key with which a practice signs what it hands over: ECDSA on the curve P-256 (FIPS 186-5). It lies beside the store, encrypted with a passphrase; its
/// public half lies there too, for whoever is to compare it.
/// </summary>
public sealed class PracticeKey : IDisposable
{
    /// <summary>Fewest characters of a passphrase that a new key is protected with.</summary>
    public const int ShortestPassphrase = 12;

    // PBES2 (RFC 8018); the count is OWASP's of 2023 for PBKDF2 with HMAC-SHA-256.
    private static readonly PbeParameters Protection = new(
        PbeEncryptionAlgorithm.Aes256Cbc,
        HashAlgorithmName.SHA256,
        iterationCount: 600_000
    );

    private readonly ECDsa _key;

    private PracticeKey(ECDsa key) => _key = key;

    /// <summary>What is handed over beside a signature.</summary>
    public PublicKey Public => PublicKey.Of(_key);

    /// <summary>Whether a store has a key already.</summary>
    /// <param name="storePath">Database file of the store.</param>
    public static bool IsThere(string storePath) => File.Exists(FileOf(storePath));

    /// <summary>The public half of a store's key; null where it has no key yet.</summary>
    /// <param name="storePath">Database file of the store.</param>
    /// <exception cref="InputRefusedException">The file is no such key.</exception>
    public static PublicKey? PublicOf(string storePath)
    {
        var path = PublicFileOf(storePath);
        return File.Exists(path) ? PublicKey.Read(PlainFile.Text(path, path, PublicKey.Expected), path) : null;
    }

    /// <summary>Opens the key of a store, or makes one where there is none.</summary>
    /// <param name="storePath">Database file of the store.</param>
    /// <param name="passphrase">What it is protected with.</param>
    /// <param name="stop">Signalled to give up; no key is made then.</param>
    /// <exception cref="InputRefusedException">The passphrase is another or too short, or the file cannot be read or written.</exception>
    public static async Task<PracticeKey> OpenOrMakeAsync(string storePath, string passphrase, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(passphrase);
        var path = FileOf(storePath);
        if (File.Exists(path) && File.Exists(PublicFileOf(storePath)))
            return Open(path, passphrase);
        if (passphrase.Length < ShortestPassphrase)
            throw Refused(
                path,
                $"a passphrase of {passphrase.Length} characters for a new key",
                $"at least {ShortestPassphrase}"
            );
        using var key = new PracticeKey(ECDsa.Create(ECCurve.NamedCurves.nistP256));
        try
        {
            // Two may make the first key at once: the one whose file is there first is the practice's, for both.
            await DurableFile.WriteFirstAsync(
                path,
                Encoding.ASCII.GetBytes(key._key.ExportEncryptedPkcs8PrivateKeyPem(passphrase, Protection)),
                stop
            );
            var first = Open(path, passphrase);
            await DurableFile.WriteAsync(PublicFileOf(storePath), Encoding.ASCII.GetBytes(first.Public.Pem), stop);
            return first;
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken), "a place where a key can be kept");
        }
    }

    /// <summary>Signs bytes: ECDSA with SHA-256, in the form (DER) that other programs read.</summary>
    internal byte[] Sign(ReadOnlySpan<byte> bytes) =>
        _key.SignData(bytes, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);

    /// <inheritdoc/>
    public void Dispose() => _key.Dispose();

    private static PracticeKey Open(string path, string passphrase)
    {
        var text = PlainFile.Text(path, path, "the key of a practice");
        var key = ECDsa.Create();
        try
        {
            key.ImportFromEncryptedPem(text, passphrase);
            return new(key);
        }
        catch (Exception other) when (other is CryptographicException or ArgumentException)
        {
            key.Dispose();
            throw Refused(
                path,
                "a key that this passphrase does not open",
                "its passphrase, and the key as it was made"
            );
        }
    }

    private static string FileOf(string storePath) => Beside(storePath, ".key.pem");

    private static string PublicFileOf(string storePath) => Beside(storePath, ".public-key.pem");

    private static string Beside(string storePath, string ending) =>
        Path.ChangeExtension(new SqliteFile(storePath, _ => { }, TimeSpan.Zero).Path, ending);

    private static InputRefusedException Refused(string path, string found, string expected) =>
        new(new InputProblem(path, 0, "", "key", found, expected));
}

/// <summary>The public half of a key.</summary>
/// <param name="Pem">SubjectPublicKeyInfo (RFC 5280) as PEM text (RFC 7468).</param>
/// <param name="Fingerprint">SHA-256 of the same in DER, 64 lower-case hexadecimal digits: what two people compare.</param>
public sealed record PublicKey(string Pem, string Fingerprint)
{
    internal const string Expected = "the public half of a key on the curve P-256, as PEM text";
    private const string CurveP256 = "1.2.840.10045.3.1.7";

    /// <summary>The public half of a key.</summary>
    internal static PublicKey Of(ECDsa key)
    {
        var bytes = key.ExportSubjectPublicKeyInfo();
        return new(key.ExportSubjectPublicKeyInfoPem() + "\n", Sha256Of.Bytes(bytes));
    }

    /// <summary>Reads one.</summary>
    /// <param name="pem">The text.</param>
    /// <param name="shown">Where it stands, for messages.</param>
    /// <exception cref="InputRefusedException">It is no such key.</exception>
    internal static PublicKey Read(string pem, string shown)
    {
        using var key = Key(pem, shown);
        return Of(key);
    }

    /// <summary>Whether a signature is this key's over these bytes.</summary>
    internal bool HasSigned(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> signature)
    {
        using var key = Key(Pem, "");
        try
        {
            return key.VerifyData(bytes, signature, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    private static ECDsa Key(string pem, string shown)
    {
        var key = ECDsa.Create();
        try
        {
            key.ImportSubjectPublicKeyInfo(Der(pem), out _);
            if (key.ExportParameters(includePrivateParameters: false).Curve.Oid.Value == CurveP256)
                return key;
        }
        catch (Exception other) when (other is CryptographicException or ArgumentException or FormatException)
        {
            // Refused below, like a key on another curve.
        }
        key.Dispose();
        throw new InputRefusedException(new InputProblem(shown, 0, "", "", "something else", Expected));
    }

    private static byte[] Der(string pem)
    {
        var fields = PemEncoding.Find(pem);
        return Convert.FromBase64String(pem[fields.Base64Data]);
    }
}

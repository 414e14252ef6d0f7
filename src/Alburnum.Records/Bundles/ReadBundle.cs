using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Alburnum.Facts;
using Alburnum.Records.Ledger;

namespace Alburnum.Records.Bundles;

/// <summary>Verifies a bundle. It takes the file alone: no store, no key but the public one. Nothing is unpacked.</summary>
public static class ReadBundle
{
    private const string Expected = "a case bundle, whole and as it was signed";
    private const int MostFiles = 20_000;
    private const long MostBytes = 20L << 30;
    private const int MostManifestBytes = 16 << 20;
    private const int MostKeyBytes = 4096;

    /// <summary>Verifies it.</summary>
    /// <param name="path">The bundle.</param>
    /// <param name="fingerprint">Fingerprint of the key that must have signed it; null: whichever did is told.</param>
    /// <param name="stop">Signalled to give up.</param>
    /// <exception cref="InputRefusedException">It is no bundle, or not signed as it is, or by another key.</exception>
    public static BundleFindings Verify(string path, string? fingerprint, CancellationToken stop)
    {
        using var stream = PlainFile.Open(path, path, Expected);
        try
        {
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            var packed = Packed(path, zip);
            var bytes = Small(path, packed, BundleNames.Manifest, MostManifestBytes);
            var manifest = Signed(path, packed, bytes, fingerprint);
            var faults = new List<InputProblem>();
            foreach (var file in manifest.Files)
                CheckFile(path, file, packed.GetValueOrDefault(file.Path), faults, stop);
            string[] beside = [BundleNames.Manifest, BundleNames.Signature, BundleNames.PublicKey];
            var listed = manifest.Files.Select(file => file.Path).Concat(beside).ToHashSet(StringComparer.Ordinal);
            foreach (var name in packed.Keys.Where(name => !listed.Contains(name)))
                faults.Add(Problem(path, name, "a file that the manifest does not list", "listed files alone"));
            if (faults.Count > 0)
                throw new InputRefusedException(faults);
            return new(
                Ledger(path, packed, manifest),
                manifest.CaseNumber,
                manifest.MadeAt,
                manifest.Program,
                manifest.Fingerprint
            );
        }
        catch (InvalidDataException)
        {
            throw Refused(path, "", "a file that is no ZIP, or is damaged");
        }
    }

    private static Dictionary<string, ZipArchiveEntry> Packed(string path, ZipArchive zip)
    {
        if (zip.Entries.Count > MostFiles)
            throw Refused(path, "", $"{zip.Entries.Count} files");
        var packed = new Dictionary<string, ZipArchiveEntry>(StringComparer.Ordinal);
        foreach (var entry in zip.Entries)
        {
            if (!BundleNames.StaysInside(entry.FullName.EndsWith('/') ? entry.FullName[..^1] : entry.FullName))
                throw Refused(path, entry.FullName, "a name that leads out of the folder where it is unpacked");
            // A folder of its own, as some programs pack them, holds nothing.
            if (entry.FullName.EndsWith('/') && entry.Length == 0)
                continue;
            if (!packed.TryAdd(entry.FullName, entry))
                throw Refused(path, entry.FullName, "a name that two files have");
        }
        return packed;
    }

    private static BundleManifest Signed(
        string path,
        Dictionary<string, ZipArchiveEntry> packed,
        byte[] bytes,
        string? fingerprint
    )
    {
        var pem = Encoding.ASCII.GetString(Small(path, packed, BundleNames.PublicKey, MostKeyBytes));
        var key = PublicKey.Read(pem, $"{path}: {BundleNames.PublicKey}");
        if (fingerprint is not null && fingerprint != key.Fingerprint)
            throw Refused(
                path,
                BundleNames.PublicKey,
                $"another key, with the fingerprint {key.Fingerprint}",
                $"the key with the fingerprint {fingerprint}"
            );
        if (!key.HasSigned(bytes, Small(path, packed, BundleNames.Signature, MostKeyBytes)))
            throw Refused(
                path,
                BundleNames.Signature,
                "a signature that is not this key's over this manifest",
                "a manifest as it was signed"
            );
        var manifest =
            BundleManifest.OrNull(bytes) ?? throw Refused(path, BundleNames.Manifest, "a manifest that cannot be read");
        if (manifest.Fingerprint != key.Fingerprint)
            throw Refused(path, BundleNames.Manifest, "the fingerprint of another key");
        if (
            manifest.Files.Any(file => PhotographSize.IsBeyond(file.Bytes))
            || manifest.Files.Sum(file => file.Bytes) > MostBytes
        )
            throw Refused(
                path,
                BundleNames.Manifest,
                "files that are too large",
                $"files of {PhotographSize.Expected} each"
            );
        return manifest;
    }

    // No more is unpacked than the manifest says there is.
    private static void CheckFile(
        string path,
        BundledFile file,
        ZipArchiveEntry? entry,
        List<InputProblem> faults,
        CancellationToken stop
    )
    {
        stop.ThrowIfCancellationRequested();
        if (entry is null)
        {
            faults.Add(Problem(path, file.Path, "nothing", "the file that the manifest lists"));
            return;
        }
        using var stream = entry.Open();
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[1 << 16];
        var left = file.Bytes;
        for (int read; left >= 0 && (read = stream.Read(buffer)) > 0; left -= read)
            hash.AppendData(buffer, 0, read);
        var found = Convert.ToHexStringLower(hash.GetHashAndReset());
        if (left != 0 || found != file.Sha256)
            faults.Add(
                Problem(
                    path,
                    file.Path,
                    left != 0 ? "a file of another length" : $"a file that was changed (its SHA-256 is {found})",
                    $"the file that the manifest lists, with the SHA-256 {file.Sha256}"
                )
            );
    }

    private static LedgerFindings Ledger(
        string path,
        Dictionary<string, ZipArchiveEntry> packed,
        BundleManifest manifest
    )
    {
        if (manifest.Files.FirstOrDefault(file => file.Path == BundleNames.Ledger) is not { } listed)
            throw Refused(path, BundleNames.Ledger, "no ledger");
        var text = Encoding.UTF8.GetString(Small(path, packed, BundleNames.Ledger, (int)listed.Bytes));
        var entries = new List<KeptEntry>();
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            entries.Add(LedgerJson.OfLine(line) ?? throw Refused(path, BundleNames.Ledger, "a line that is no entry"));
        var findings = LedgerCheck.OfCase(
            path,
            entries,
            [
                .. manifest
                    .Files.Where(file => file.Path != BundleNames.Ledger)
                    .Select(file => new HeldSum(file.Path, file.Sha256)),
            ]
        );
        return findings.Head == manifest.Head && findings.Entries == manifest.Entries
            ? findings
            : findings with
            {
                Faults =
                [
                    .. findings.Faults,
                    Problem(
                        path,
                        BundleNames.Ledger,
                        $"{findings.Entries} entries, the last with the hash {findings.Head}",
                        $"{manifest.Entries}, the last with the hash {manifest.Head}, as the manifest says"
                    ),
                ],
            };
    }

    private static byte[] Small(string path, Dictionary<string, ZipArchiveEntry> packed, string name, int mostBytes)
    {
        if (!packed.TryGetValue(name, out var entry))
            throw Refused(path, name, "nothing");
        using var stream = entry.Open();
        using var held = new MemoryStream();
        var buffer = new byte[1 << 14];
        for (int read; (read = stream.Read(buffer)) > 0; )
        {
            held.Write(buffer, 0, read);
            if (held.Length > mostBytes)
                throw Refused(path, name, "a file that is too large");
        }
        return held.ToArray();
    }

    private static InputRefusedException Refused(string path, string row, string found, string expected = Expected) =>
        new(Problem(path, row, found, expected));

    private static InputProblem Problem(string path, string row, string found, string expected) =>
        new(path, 0, row, "", found, expected);
}

/// <summary>What a bundle was found to be.</summary>
/// <param name="Ledger">What its ledger was found to be.</param>
/// <param name="CaseNumber">Number of the case in the store that it comes from.</param>
/// <param name="MadeAt">When it was made, UTC, as the manifest says.</param>
/// <param name="Program">What made it, as the manifest says.</param>
/// <param name="Fingerprint">Fingerprint of the key that signed it.</param>
public sealed record BundleFindings(
    LedgerFindings Ledger,
    int CaseNumber,
    DateTime MadeAt,
    string Program,
    string Fingerprint
);

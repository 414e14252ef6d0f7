using System.Security.Cryptography;

namespace Alburnum.Records.Store;

/// <summary>A photograph exactly as it arrived. Its bytes and their SHA-256 travel together and cannot disagree.</summary>
public sealed record Photograph
{
    private Photograph(string fileName, ReadOnlyMemory<byte> bytes, string sha256) =>
        (FileName, Bytes, Sha256) = (fileName, bytes, sha256);

    /// <summary>Name under which it arrived.</summary>
    public string FileName { get; init; }

    /// <summary>The file's bytes, unchanged.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>SHA-256 of the bytes (FIPS 180-4), 64 lower-case hexadecimal digits.</summary>
    public string Sha256 { get; }

    /// <summary>SHA-256 of a file that is too large to be taken in, hashed as it is read.</summary>
    /// <param name="file">The file, from where it stands to its end.</param>
    public static string HashOf(Stream file) => Convert.ToHexStringLower(SHA256.HashData(file));

    /// <summary>A photograph, hashed here and nowhere else.</summary>
    public static Photograph Of(string fileName, ReadOnlyMemory<byte> bytes) =>
        new(fileName, bytes, Sha256Of.Bytes(bytes.Span));
}

using System.Security.Cryptography;
using System.Text;

namespace Alburnum.Records;

/// <summary>SHA-256 (FIPS 180-4) as 64 lower-case hexadecimal digits.</summary>
internal static class Sha256Of
{
    public static string Bytes(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public static string Text(string text) => Bytes(Encoding.UTF8.GetBytes(text));
}

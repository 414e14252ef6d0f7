using System.Security.Cryptography;
using System.Text;

namespace Alburnum.Records.Ledger;

/// <summary>
/// A text under a seal. The entry's hash covers the seal and not the text, so that the text can be removed and the chain still holds. Without the salt nobody
/// finds the text again by trying names.
/// </summary>
/// <param name="Seal">SHA-256 of salt and text, 64 lower-case hexadecimal digits.</param>
/// <param name="Salt">32 random bytes, hexadecimal; null where the text was removed.</param>
/// <param name="Text">The text; null where it was removed.</param>
public sealed record SealedText(string Seal, string? Salt, string? Text)
{
    private const int SaltBytes = 32;

    /// <summary>True where the text was removed.</summary>
    internal bool IsRemoved => Text is null;

    /// <summary>True where the text is the one that was sealed, or was removed.</summary>
    internal bool Holds => Text is null || (Salt is not null && SealOf(Salt, Text) == Seal);

    /// <summary>Seals a text with a new salt; null for null.</summary>
    internal static SealedText? Of(string? text)
    {
        if (text is null)
            return null;
        // Half a letter, which a file may hold, has no bytes of its own: what is sealed is what is written.
        text = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));
        var salt = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SaltBytes));
        return new(SealOf(salt, text), salt, text);
    }

    private static string SealOf(string salt, string text)
    {
        byte[] bytes;
        try
        {
            bytes = Convert.FromHexString(salt);
        }
        catch (FormatException)
        {
            return "";
        }
        return Sha256Of.Bytes([.. bytes, .. Encoding.UTF8.GetBytes(text)]);
    }
}

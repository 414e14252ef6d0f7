namespace Alburnum.Cli;

/// <summary>Hashes and fingerprints as people type them: copied in groups, in capitals.</summary>
internal static class Hashes
{
    private const int Digits = 64;

    /// <summary>The 64 lower-case digits.</summary>
    /// <param name="option">The option that holds it, for messages.</param>
    /// <param name="text">What was typed.</param>
    public static string Of(string option, string text)
    {
        var digits = string.Concat(text.Where(letter => letter is not (' ' or ':' or '-'))).ToLowerInvariant();
        return digits.Length == Digits && digits.All(char.IsAsciiHexDigitLower)
            ? digits
            : throw Options.Refused(option, $"\"{text}\"", $"{Digits} hexadecimal digits");
    }
}

namespace Alburnum.Cli;

/// <summary>Texts that a person gives for the ledger.</summary>
internal static class Reasons
{
    private const int Longest = 2000;

    /// <summary>The option that says why something is removed.</summary>
    public const string Because = "--because";

    /// <summary>The text; refuses an empty one.</summary>
    /// <param name="option">The option that holds it, for messages.</param>
    /// <param name="text">What was typed.</param>
    public static string Of(string option, string? text) =>
        text?.Trim() is { Length: > 0 and <= Longest } given
            ? given
            : throw Options.Refused(
                option,
                string.IsNullOrWhiteSpace(text) ? "nothing" : $"{text.Length} letters",
                $"a text of at most {Longest} letters; the ledger keeps it"
            );
}

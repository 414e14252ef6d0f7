using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>The colour of a verdict on the terminal; the word always stands beside it.</summary>
internal static class VerdictColour
{
    public static Color Of(string verdict) =>
        verdict switch
        {
            "conforms" => Color.Green,
            "does not conform" => Color.Red,
            _ => Color.Yellow,
        };
}

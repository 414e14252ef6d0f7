using Alburnum.Penetration;
using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>The colour of a verdict on the terminal; the word always stands beside it.</summary>
internal static class VerdictColour
{
    public static Color Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.Conforms => Color.Green,
            Verdict.DoesNotConform => Color.Red,
            _ => Color.Yellow,
        };
}

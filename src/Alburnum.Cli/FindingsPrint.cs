using Alburnum.Reports.Documents;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli;

/// <summary>What was found of a batch on the terminal: the headline, in the colour of the weakest finding, and the three lines under it.</summary>
internal static class FindingsPrint
{
    public static void Print(IAnsiConsole console, FindingsDocument findings)
    {
        console.WriteLine();
        console.Write(
            new Text(findings.Headline, new Style(VerdictColour.Of(findings.Weakest), decoration: Decoration.Bold))
        );
        console.WriteLine();
        foreach (var (name, says) in FindingsMapping.Lines(findings))
            console.WriteLine(Said("sheet.named", ("name", name), ("says", says)));
    }
}

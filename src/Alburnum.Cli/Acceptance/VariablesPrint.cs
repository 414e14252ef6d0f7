using Alburnum.Reports.Acceptance;
using Spectre.Console;

namespace Alburnum.Cli.Acceptance;

/// <summary>A verdict by variables on the terminal, what was found last.</summary>
internal static class VariablesPrint
{
    public static void Print(IAnsiConsole console, VariablesDocument document)
    {
        console.WriteLine();
        foreach (var reason in document.Reasons)
            console.WriteLine(reason);
        FindingsPrint.Print(console, document.Findings);
    }
}

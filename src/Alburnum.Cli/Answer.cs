using Alburnum.Reports.Json;
using Spectre.Console;

namespace Alburnum.Cli;

/// <summary>How a command answers: its document as JSON and nothing else, or in words.</summary>
internal static class Answer
{
    /// <summary>Shows what was found, in words that are laid out for the terminal.</summary>
    /// <param name="console">Where it goes.</param>
    /// <param name="document">What was found.</param>
    /// <param name="asJson">Whether JSON is asked for.</param>
    /// <param name="inWords">Says it in words.</param>
    /// <returns>The exit status of what was done.</returns>
    public static int Show<T>(this IAnsiConsole console, T document, bool asJson, Action inWords)
    {
        if (asJson)
            console.WriteAsIs(DocumentJson.Write(document));
        else
            inWords();
        return CommandLine.Done;
    }

    /// <summary>The same, in lines that stay as they are.</summary>
    public static int Show<T>(this IAnsiConsole console, T document, bool asJson, IEnumerable<string> lines) =>
        console.Show(document, asJson, () => console.WriteAsIs(string.Join('\n', lines)));

    // Past the console, which would break lines at the width of the terminal.
    private static void WriteAsIs(this IAnsiConsole console, string text) =>
        console.Profile.Out.Writer.WriteLine(ShownConsole.Shown(text));
}

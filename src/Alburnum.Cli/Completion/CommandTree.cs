using System.Xml.Linq;
using Alburnum.Records.Facts;
using Spectre.Console;

namespace Alburnum.Cli.Completion;

/// <summary>One command as a shell needs to know it.</summary>
/// <param name="Path">The words that lead to it, empty for the program itself.</param>
/// <param name="Description">What it does, in a line.</param>
/// <param name="Options">Its options, such as <c>--lot</c>.</param>
/// <param name="Commands">The commands below it.</param>
internal sealed record CommandTree(
    IReadOnlyList<string> Path,
    string Description,
    IReadOnlyList<string> Options,
    IReadOnlyList<CommandTree> Commands
)
{
    /// <summary>All commands of this program.</summary>
    public static async Task<CommandTree> OfProgramAsync(FactLibrary facts, CancellationToken stop)
    {
        using var text = new StringWriter();
        var plain = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(text) });
        // No line may break inside a name.
        plain.Profile.Width = 100_000;
        await CommandLine.RunAsync(["cli", "xmldoc"], facts, plain, TextWriter.Null, stop);
        return Read(text.ToString());
    }

    /// <summary>Reads the parser's own description of all commands, so that no second list has to be kept.</summary>
    /// <param name="xml">What the parser's command <c>cli xmldoc</c> prints.</param>
    public static CommandTree Read(string xml) => new([], "", [], Below(XDocument.Parse(xml).Root!, []));

    /// <summary>This command and all below it.</summary>
    public IEnumerable<CommandTree> All => [this, .. Commands.SelectMany(command => command.All)];

    private static List<CommandTree> Below(XElement parent, IReadOnlyList<string> path) =>
        [.. parent.Elements("Command").Select(element => Of(element, [.. path, element.Attribute("Name")!.Value]))];

    private static CommandTree Of(XElement element, IReadOnlyList<string> path) =>
        new(
            path,
            string.Join(' ', (element.Element("Description")?.Value ?? "").Split((char[]?)null, NoEmpty)),
            [
                .. element
                    .Elements("Parameters")
                    .Elements("Option")
                    .Select(option => "--" + option.Attribute("Long")!.Value)
                    .Append("--help")
                    .Order(StringComparer.Ordinal),
            ],
            Below(element, path)
        );

    private const StringSplitOptions NoEmpty = StringSplitOptions.RemoveEmptyEntries;
}

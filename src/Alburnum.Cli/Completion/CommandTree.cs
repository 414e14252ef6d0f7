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
    /// <summary>How it is called: its words, the names of its arguments, and that options may follow.</summary>
    public required string Usage { get; init; }

    /// <summary>Reads the parser's own description of all commands, so that no second list has to be kept.</summary>
    /// <param name="facts">The facts that the program is started with.</param>
    /// <param name="stop">Signalled when the user wants to stop.</param>
    public static async Task<CommandTree> OfProgramAsync(FactLibrary facts, CancellationToken stop)
    {
        using var text = new StringWriter();
        var plain = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(text) });
        // No line may break inside a name.
        plain.Profile.Width = 100_000;
        await CommandLine.RunAsync(["cli", "xmldoc"], facts, plain, TextWriter.Null, stop);
        return new([], "", [], Below(XDocument.Parse(text.ToString()).Root!, [])) { Usage = ProgramWord };
    }

    /// <summary>The command that a line names: the deepest one whose words it begins with.</summary>
    /// <param name="args">Words after the program's name.</param>
    public CommandTree Named(IReadOnlyList<string> args) =>
        Commands.FirstOrDefault(command => args.Count >= command.Path.Count && args[Path.Count] == command.Path[^1])
            is { } below
            ? below.Named(args)
            : this;

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
        )
        {
            Usage = string.Join(
                ' ',
                [
                    ProgramWord,
                    .. path,
                    .. element
                        .Elements("Parameters")
                        .Elements("Argument")
                        .OrderBy(argument => (int)argument.Attribute("Position")!)
                        .Select(Written),
                    "[OPTIONS]",
                ]
            ),
        };

    private static string Written(XElement argument)
    {
        var (name, isOne) = (argument.Attribute("Name")!.Value, argument.Attribute("Kind")!.Value == "scalar");
        var word = (bool)argument.Attribute("Required")! ? $"<{name}>" : $"[{name}]";
        return isOne ? word : $"{word} ...";
    }

    private const string ProgramWord = "alburnum";
    private const StringSplitOptions NoEmpty = StringSplitOptions.RemoveEmptyEntries;
}

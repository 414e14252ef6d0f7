using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>The documents that the facts are taken from.</summary>
internal sealed class SourcesCommand(IAnsiConsole console, FactLibrary facts) : Command<SourcesCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "[WORDS]")]
        [Description("Words of a title, publisher or id; default: all sources")]
        public string? Words { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        IReadOnlyList<SourceDocument> documents =
        [
            .. ListSources.Run(settings.Words, facts).Select(SourceDocument.From),
        ];
        return console.Show(documents, settings.Json, SourceText.Lines(documents));
    }
}

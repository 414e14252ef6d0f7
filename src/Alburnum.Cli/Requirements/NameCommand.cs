using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Requirements;

/// <summary>What is known under a word.</summary>
internal sealed class NameCommand(IAnsiConsole console, FactLibrary facts) : Command<NameCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<WORD>")]
        [Description("Name of a timber, a component or a preservative, or a mark (whitewood, arris rail, boron, H4)")]
        public required string Word { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = NameMapping.From(LookUpName.Run(settings.Word, facts));
        return console.Show(document, settings.Json, NameText.Lines(document));
    }
}

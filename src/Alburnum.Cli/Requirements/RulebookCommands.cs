using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Requirements;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Requirements;

/// <summary>Names the rulebooks that ship.</summary>
internal sealed class RulebookListCommand(IAnsiConsole console, FactLibrary facts) : Command<JsonSettings>
{
    public override int Execute(CommandContext context, JsonSettings settings, CancellationToken cancellationToken)
    {
        IReadOnlyList<RulebookDocument> documents = [.. ListRulebooks.Run(facts).Select(RulebookMapping.From)];
        return console.Show(
            documents,
            settings.Json,
            documents.Select(each => $"{each.Name, -28} {RulebookText.Line(each)}")
        );
    }
}

/// <summary>Reports what does not hold together in a rulebook.</summary>
internal sealed class RulebookCheckCommand(IAnsiConsole console, FactLibrary facts)
    : Command<RulebookCheckCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<FILE|NAME>")]
        [Description("A rulebook file of your own, or the name of one supplied")]
        public required string Rulebook { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = RulebookMapping.From(CheckRulebook.Run(settings.Rulebook, facts, cancellationToken));
        var status = console.Show(document, settings.Json, RulebookText.Lines(document, Options.Json));
        return document.Faults == 0 ? status : CommandLine.Refused;
    }
}

/// <summary>Lists, case by case, what changes between two rulebooks.</summary>
internal sealed class RulebookCompareCommand(IAnsiConsole console, FactLibrary facts)
    : Command<RulebookCompareCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<BEFORE>")]
        [Description("File or name of the first rulebook")]
        public required string Before { get; init; }

        [CommandArgument(1, "<AFTER>")]
        [Description("File or name of the second rulebook")]
        public required string After { get; init; }

        [CommandOption("--cases <FILE>")]
        [Description(
            "Table (CSV or .xlsx) of archived enquiries to put to both; default: every usual component, life and form"
        )]
        public string? Cases { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var archive = settings.Cases is { } path
            ? EnquiryTable.Read(
                Table.Open(path, settings.Sheet),
                facts,
                RulebookFile.Named(settings.Before, facts),
                RulebookFile.Named(settings.After, facts)
            )
            : null;
        var document = RulebookMapping.From(
            CompareRulebooks.Run(settings.Before, settings.After, archive, facts, cancellationToken)
        );
        return console.Show(document, settings.Json, RulebookText.Lines(document, Options.Json));
    }
}

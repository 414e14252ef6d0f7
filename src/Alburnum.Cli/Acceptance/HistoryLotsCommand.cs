using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Acceptance;

/// <summary>Follows a plant's lots through the switching rules.</summary>
internal sealed class HistoryLotsCommand(IAnsiConsole console, FactLibrary facts) : Command<HistoryLotsCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<LOTS>")]
        [Description(
            "Table (CSV or .xlsx), oldest lot first: lot, pieces, cut, failures, and reduction_agreed, production_steady, "
                + "begins_again (yes or no) where they apply"
        )]
        public required string Lots { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--aql <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Aql))]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
        public string Level { get; init; } = AcceptanceFields.Level.Default;
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var table = Table.Open(settings.Lots, settings.Sheet);
        var standard = facts.Sampling;
        var lots = LotsMapping.Of(
            WatchPlant.Lots(
                table,
                new(
                    standard.Tables,
                    standard.Switching,
                    Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
                    TablesFit.Aql(standard.Tables, Options.Number(AcceptanceFields.Aql, settings.Aql))
                )
            )
        );
        return console.Show(lots, settings.Json, () => LotsPrint.Print(console, lots));
    }
}

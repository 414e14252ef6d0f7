using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records;
using Alburnum.Records.Charges;
using Alburnum.Records.Tables;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Drawings;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;
using Table = Alburnum.Records.Tables.Table;

namespace Alburnum.Cli.Acceptance;

/// <summary>Watches a plant over its charges.</summary>
internal sealed class HistoryChargesCommand(IAnsiConsole console) : AsyncCommand<HistoryChargesCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<CHARGES>")]
        [Description(
            "Table (CSV or .xlsx), oldest charge first: charge, and any of mean_depth_mm, minimum_depth_mm, retention_kg_per_m3, "
                + "uptake_l_per_m3, strength_percent"
        )]
        public required string Charges { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--baseline <CHARGES>")]
        [Description("Charges at the start that set the mean and spread; default: 25")]
        public int Baseline { get; init; } = 25;

        [CommandOption("--depth <MM>")]
        [HelpOf(
            typeof(TreatmentFields),
            nameof(TreatmentFields.Depth),
            Note = "the lower limit of mean and minimum depth"
        )]
        public double? Depth { get; init; }

        [CommandOption("--retention <KG_PER_M3>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.Retention), Note = "the lower limit of retention")]
        public double? Retention { get; init; }

        [CommandOption("--chart <FOLDER>")]
        [Description("Also draw a run chart of each measure into SVG files in this folder")]
        public string? Chart { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var table = ChargeTable.Of(Table.Open(settings.Charges, settings.Sheet));
        if (settings.Chart is { } place)
            OutFolder.Examine(place);
        var request = new WatchRequest(
            Options.Whole("--baseline", settings.Baseline, Ranges.BaselineCharges),
            Options.OptionalNumber(TreatmentFields.Depth, settings.Depth),
            Options.OptionalNumber(TreatmentFields.Retention, settings.Retention)
        );
        var history = HistoryMapping.Of(WatchPlant.Charges(table, request, cancellationToken));
        if (settings.Chart is { } folder)
            await WriteChartsAsync(folder, history, cancellationToken);
        return console.Show(history, settings.Json, () => HistoryPrint.Print(console, history));
    }

    private static async Task WriteChartsAsync(string folder, HistoryDocument history, CancellationToken stop)
    {
        OutFolder.Make(folder);
        foreach (var measure in history.Measures.Where(measure => measure.Charges > 0))
            await WholeFile.WriteAsync(
                Path.Combine(folder, measure.Name.Replace(' ', '-') + ".svg"),
                Svg.Write(RunChartDrawing.Of(measure)),
                stop
            );
    }
}

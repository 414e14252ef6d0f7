using System.ComponentModel;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Reports.Drawings;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Watches a plant over its charges, or follows its lots through the switching rules.</summary>
internal sealed class HistoryCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<HistoryCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<CHARGES>")]
        [Description(
            "Table (CSV or .xlsx), oldest first. Charges: charge, and any of mean_depth_mm, minimum_depth_mm, retention_kg_m3, "
                + "uptake_l_m3, strength_percent. Or lots: lot, pieces, cut, failures"
        )]
        public required string Charges { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--aql <PERCENT>")]
        [Description("Lots: the AQL by which they are sampled")]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("Lots: inspection level; II unless said")]
        public string? Level { get; init; }

        [CommandOption("--baseline <CHARGES>")]
        [Description("Charges at the start that fix mean and spread; 25 unless said")]
        public int? Baseline { get; init; }

        [CommandOption("--least-depth <MM>")]
        [Description("Lower limit of mean and minimum depth, mm")]
        public double? LeastDepth { get; init; }

        [CommandOption("--required <KG_PER_M3>")]
        [Description("Lower limit of retention, kg/m³")]
        public double? Required { get; init; }

        [CommandOption("--chart <FOLDER>")]
        [Description("Also draw a run chart of each measure into SVG files in this folder")]
        public string? Chart { get; init; }

        [CommandOption("--json")]
        [Description("Print the history as JSON")]
        public bool Json { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var text = TableText.Open(settings.Charges, settings.Sheet);
        if (LotTable.IsOne(text))
        {
            Show(settings, LotsSheet.Of(text, Lots(settings)), LotsPrint.Print);
            return CommandLine.Done;
        }
        Options.RefuseGiven(
            "no such option for a table of charges",
            ("--aql", settings.Aql is not null),
            ("--level", settings.Level is not null)
        );
        var table = ChargeTable.Open(text);
        if (settings.Chart is { } place)
            OutFolder.Examine(place);
        var history = HistoryFold.Follow(
            table,
            [.. table.Measures.Select(measure => Rules(measure, settings))],
            cancellationToken
        );
        if (settings.Chart is { } folder)
            await WriteChartsAsync(folder, history, cancellationToken);
        Show(settings, history, HistoryPrint.Print);
        return CommandLine.Done;
    }

    private void Show<T>(Settings settings, T document, Action<IAnsiConsole, T> print)
    {
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            print(console, document);
    }

    private LotSequence Lots(Settings settings)
    {
        Options.RefuseGiven(
            "no such option for a table of lots",
            ("--baseline", settings.Baseline is not null),
            ("--least-depth", settings.LeastDepth is not null),
            ("--required", settings.Required is not null),
            ("--chart", settings.Chart is not null)
        );
        var standard = facts.Sampling;
        return new(
            standard.Tables,
            standard.Switching,
            SamplingOptions.Level(settings.Level ?? "II"),
            SamplingOptions.Aql(standard.Tables, Options.Number("--aql", settings.Aql, 0.01, 1000, "(an AQL)"))
        );
    }

    private static WatchRules Rules(Measure measure, Settings settings)
    {
        var baseline = Options.Whole("--baseline", settings.Baseline ?? 25, 5, 100_000, "charges");
        var depth = Options.OptionalNumber("--least-depth", settings.LeastDepth, 0.1, 1000, "mm");
        var retention = Options.OptionalNumber("--required", settings.Required, 0.001, 2000, "kg/m³");
        return WatchRules.Usual with
        {
            BaselineCharges = baseline,
            LowerLimit = measure.Unit switch
            {
                "mm" => depth,
                "kg/m³" => retention,
                _ => null,
            },
        };
    }

    private static async Task WriteChartsAsync(string folder, HistoryDocument history, CancellationToken stop)
    {
        OutFolder.Make(folder);
        foreach (var measure in history.Measures.Where(measure => measure.Charges > 0))
        {
            var drawing = RunChartDrawing.Draw(
                $"{char.ToUpperInvariant(measure.Name[0])}{measure.Name[1..]}, {measure.Unit}",
                [
                    .. measure.Chart.Select(mark => new RunChartPoint(
                        mark.Charges,
                        mark.Mean,
                        mark.Least,
                        mark.Greatest,
                        mark.Signalled > 0
                    )),
                ],
                measure.BaselineSpread > 0 ? (measure.BaselineMean, measure.BaselineSpread) : null,
                measure.LowerLimit
            );
            await TextFile.WriteAsync(
                Path.Combine(folder, measure.Name.Replace(' ', '-') + ".svg"),
                Svg.Write(drawing),
                stop
            );
        }
    }
}

using System.ComponentModel;
using Alburnum.Acceptance.History;
using Alburnum.Records.Tables;
using Alburnum.Reports.Drawings;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Watches a plant's charges.</summary>
internal sealed class HistoryCommand(IAnsiConsole console) : AsyncCommand<HistoryCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<CHARGES>")]
        [Description(
            "Table in CSV, oldest charge first: charge, and any of mean_depth_mm, minimum_depth_mm, retention_kg_m3, uptake_l_m3, strength_percent"
        )]
        public required string Charges { get; init; }

        [CommandOption("--baseline <CHARGES>")]
        [Description("Charges at the start that fix mean and spread")]
        [DefaultValue(25)]
        public int Baseline { get; init; } = 25;

        [CommandOption("--least-depth <MM>")]
        [Description("Lower limit of mean and minimum depth, mm")]
        public double? LeastDepth { get; init; }

        [CommandOption("--required <KG_PER_M3>")]
        [Description("Lower limit of retention, kg/m³")]
        public double? Required { get; init; }

        [CommandOption("--chart <FOLDER>")]
        [Description("Writes a run chart of each measure as SVG")]
        public string? Chart { get; init; }

        [CommandOption("--json")]
        [Description("Prints JSON")]
        public bool Json { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var table = ChargeTable.Open(settings.Charges);
        var history = HistoryFold.Follow(
            table,
            [.. table.Measures.Select(measure => Rules(measure, settings))],
            cancellationToken
        );
        if (settings.Chart is { } folder)
            await WriteChartsAsync(folder, history, cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(history));
        else
            HistoryPrint.Print(console, history);
        return CommandLine.Done;
    }

    private static WatchRules Rules(Measure measure, Settings settings)
    {
        var baseline = Options.Whole("--baseline", settings.Baseline, 5, 100_000, "charges");
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
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            throw Options.Refused("--chart", broken.Message, "a folder that can be written to");
        }
        foreach (var measure in history.Measures.Where(measure => measure.Charges > 0))
        {
            var drawing = RunChartDrawing.Draw(
                $"{measure.Name}, {measure.Unit}, over {measure.Charges} charges",
                [.. measure.Chart.Select(mark => (mark.Charges, mark.Mean, mark.Least, mark.Greatest))],
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

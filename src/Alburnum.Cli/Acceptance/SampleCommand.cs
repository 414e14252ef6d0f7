using System.ComponentModel;
using System.Security.Cryptography;
using Alburnum.Acceptance;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>Says what to cut from a lot, how to pick it and what passes.</summary>
internal sealed class SampleCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<SampleCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandOption("--lot <PIECES>")]
        [Description("Pieces in the lot")]
        public int? Lot { get; init; }

        [CommandOption("--plan <KIND>")]
        [Description(
            "attributes (a standard's tables; unless said), share, smallest, double, sequential, variables or show"
        )]
        public string Plan { get; init; } = "attributes";

        [CommandOption("--aql <PERCENT>")]
        [Description("attributes: the AQL that indexes the plan")]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("attributes, share: inspection level, S-1 to S-4, I, II or III; II unless said")]
        public string? Level { get; init; }

        [CommandOption("--severity <SEVERITY>")]
        [Description("attributes: normal, tightened or reduced; normal unless said")]
        public string? Severity { get; init; }

        [CommandOption("--must-pass <PERCENT>")]
        [Description("share: share of the pieces cut that must pass")]
        public double? MustPass { get; init; }

        [CommandOption("--cut <PIECES>")]
        [Description("share: pieces to cut")]
        public int? Cut { get; init; }

        [CommandOption("--accept <PERCENT>")]
        [Description("smallest, double, sequential, variables: failing share to accept")]
        public double? Accept { get; init; }

        [CommandOption("--producer-risk <PERCENT>")]
        [Description(
            "smallest, double, sequential, variables: risk of rejecting a lot at the share to accept; 5 unless said"
        )]
        public double? ProducerRisk { get; init; }

        [CommandOption("--reject <PERCENT>")]
        [Description("smallest, double, sequential, variables: failing share to reject")]
        public double? Reject { get; init; }

        [CommandOption("--consumer-risk <PERCENT>")]
        [Description(
            "smallest, double, sequential, variables: risk of accepting a lot at the share to reject; 10 unless said"
        )]
        public double? ConsumerRisk { get; init; }

        [CommandOption("--conforming <PERCENT>")]
        [Description("show: conforming share to be shown")]
        public double? Conforming { get; init; }

        [CommandOption("--confidence <PERCENT>")]
        [Description("show: one-sided confidence; 95 unless said")]
        public double? Confidence { get; init; }

        [CommandOption("--failures <COUNT>")]
        [Description("show: failures to be borne; none unless said")]
        public int? Failures { get; init; }

        [CommandOption("--seed <NUMBER>")]
        [Description("Seed of the random positions; a new one is drawn and printed unless said")]
        public ulong? Seed { get; init; }

        [CommandOption("--chart <FILE>")]
        [Description("Also draw the operating characteristic into an SVG file")]
        public string? Chart { get; init; }

        [CommandOption("--json")]
        [Description("Print the plan as JSON")]
        public bool Json { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var sheet = Sheet(settings);
        if (settings.Chart is { } chart)
            await TextFile.WriteAsync(chart, Chart(sheet), cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(sheet));
        else
            SamplePrint.Print(console, sheet);
        return CommandLine.Done;
    }

    private SampleDocument Sheet(Settings settings)
    {
        var seed = settings.Seed ?? (ulong)RandomNumberGenerator.GetInt32(1, int.MaxValue);
        var lot = Options.OptionalWhole("--lot", settings.Lot, 1, 100_000_000, "pieces");
        RiskPoints Risks() =>
            SamplingOptions.Risks(
                settings.Accept,
                settings.ProducerRisk ?? 5,
                settings.Reject,
                settings.ConsumerRisk ?? 10
            );
        PlanOptions.RefuseOthers(settings);
        switch (settings.Plan)
        {
            case "attributes":
                return SampleSheet.Indexed(
                    SamplingOptions.Indexed(
                        facts.Sampling.Tables,
                        Options.Whole("--lot", lot, 1, 100_000_000, "pieces"),
                        settings.Level ?? "II",
                        Options.Number("--aql", settings.Aql, 0.01, 1000, "(an AQL)"),
                        settings.Severity ?? "normal"
                    ),
                    seed
                );
            case "share":
                var share = new ShareMustPass(Options.Number("--must-pass", settings.MustPass, 1, 100, "%") / 100);
                return SampleSheet.Share(
                    share,
                    Options.Whole("--cut", settings.Cut, 1, lot ?? 1_000_000, "pieces"),
                    lot,
                    lot is { } known
                        ? SamplingOptions.OtherReading(facts.Sampling.Tables, share, known, settings.Level ?? "II")
                        : null,
                    seed
                );
            case "smallest":
                return SampleSheet.Smallest(Risks(), lot, seed);
            case "double":
                return SampleSheet.Double(Risks(), lot, seed);
            case "sequential":
                return SampleSheet.Sequential(Risks(), lot, seed);
            case "variables":
                return SampleSheet.Variables(Risks(), lot, seed);
            case "show":
                return SampleSheet.Show(
                    Options.Number("--conforming", settings.Conforming, 0.1, 99.99, "%") / 100,
                    Options.Number("--confidence", settings.Confidence ?? 95, 50, 99.999, "%") / 100,
                    Options.Whole("--failures", settings.Failures ?? 0, 0, 100_000, "failures"),
                    lot,
                    seed
                );
            default:
                throw PlanOptions.NoSuchPlan(settings.Plan);
        }
    }

    private static string Chart(SampleDocument sheet) =>
        Svg.Write(
            CharacteristicDrawing.Draw(
                Capital(sheet.Plan),
                [
                    .. sheet.Readings.Select(reading => new Characteristic(
                        $"{reading.Name}: 95 % at {Percent(reading.Landmarks.ProducerShare)}, "
                            + $"10 % at {Percent(reading.Landmarks.ConsumerShare)}",
                        [.. reading.Curve.Select(point => (point.FailingShare, point.Acceptance))]
                    )),
                ]
            )
        );

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}

using System.ComponentModel;
using System.Security.Cryptography;
using Alburnum.Acceptance;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Figures;

namespace Alburnum.Cli;

/// <summary>Says what to cut from a lot, how to pick it and what passes.</summary>
internal sealed class SampleCommand(IAnsiConsole console) : AsyncCommand<SampleCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandOption("--lot <PIECES>")]
        [Description("Pieces in the lot")]
        public int? Lot { get; init; }

        [CommandOption("--plan <KIND>")]
        [Description("attributes (a standard's tables), share, smallest, double, sequential, variables or show")]
        [DefaultValue("attributes")]
        public string Plan { get; init; } = "attributes";

        [CommandOption("--aql <PERCENT>")]
        [Description("attributes: the AQL that indexes the plan")]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("attributes: inspection level, S-1 to S-4, I, II or III")]
        [DefaultValue("II")]
        public string Level { get; init; } = "II";

        [CommandOption("--severity <SEVERITY>")]
        [Description("attributes: normal, tightened or reduced")]
        [DefaultValue("normal")]
        public string Severity { get; init; } = "normal";

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
        [Description("Risk of rejecting a lot at the share to accept")]
        [DefaultValue(5.0)]
        public double ProducerRisk { get; init; } = 5;

        [CommandOption("--reject <PERCENT>")]
        [Description("smallest, double, sequential, variables: failing share to reject")]
        public double? Reject { get; init; }

        [CommandOption("--consumer-risk <PERCENT>")]
        [Description("Risk of accepting a lot at the share to reject")]
        [DefaultValue(10.0)]
        public double ConsumerRisk { get; init; } = 10;

        [CommandOption("--conforming <PERCENT>")]
        [Description("show: conforming share to be shown")]
        public double? Conforming { get; init; }

        [CommandOption("--confidence <PERCENT>")]
        [Description("show: one-sided confidence")]
        [DefaultValue(95.0)]
        public double Confidence { get; init; } = 95;

        [CommandOption("--failures <COUNT>")]
        [Description("show: failures to be borne")]
        [DefaultValue(0)]
        public int Failures { get; init; }

        [CommandOption("--seed <NUMBER>")]
        [Description("Seed of the random positions; a new one is drawn and printed where none is given")]
        public ulong? Seed { get; init; }

        [CommandOption("--chart <FILE>")]
        [Description("Writes the operating characteristic as SVG")]
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
        var sheet = Sheet(settings);
        if (settings.Chart is { } chart)
            await TextFile.WriteAsync(chart, Chart(sheet), cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(sheet));
        else
            SamplePrint.Print(console, sheet);
        return CommandLine.Done;
    }

    private static SampleDocument Sheet(Settings settings)
    {
        var seed = settings.Seed ?? (ulong)RandomNumberGenerator.GetInt32(1, int.MaxValue);
        var lot = Options.OptionalWhole("--lot", settings.Lot, 1, 100_000_000, "pieces");
        RiskPoints Risks() =>
            SamplingOptions.Risks(settings.Accept, settings.ProducerRisk, settings.Reject, settings.ConsumerRisk);
        switch (settings.Plan)
        {
            case "attributes":
                return SampleSheet.Indexed(
                    SamplingOptions.Indexed(
                        AttributeTableFile.Load(FactLibrary.DefaultFolder).Tables,
                        Options.Whole("--lot", lot, 1, 100_000_000, "pieces"),
                        settings.Level,
                        Options.Number("--aql", settings.Aql, 0.01, 1000, ""),
                        settings.Severity
                    ),
                    seed
                );
            case "share":
                var share = new ShareMustPass(Options.Number("--must-pass", settings.MustPass, 1, 100, "%") / 100);
                return SampleSheet.Share(
                    share,
                    Options.Whole("--cut", settings.Cut, 1, lot ?? 1_000_000, "pieces"),
                    lot,
                    lot is { } known ? SamplingOptions.OtherReading(share, known, settings.Level) : null,
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
                    Options.Number("--confidence", settings.Confidence, 50, 99.999, "%") / 100,
                    Options.Whole("--failures", settings.Failures, 0, 100_000, "failures"),
                    lot,
                    seed
                );
            default:
                throw Options.Refused(
                    "--plan",
                    settings.Plan,
                    "attributes, share, smallest, double, sequential, variables or show"
                );
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

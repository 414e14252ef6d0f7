using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Samples a stated number of pieces, of which a share must pass.</summary>
internal sealed class SampleShareCommand(IAnsiConsole console, FactLibrary facts)
    : SampleCommand<SampleShareCommand.Settings>(console, facts)
{
    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--must-pass <PERCENT>")]
        [Description("Share of the pieces cut that must pass")]
        public double? MustPass { get; init; }

        [CommandOption("--cut <PIECES>")]
        [Description("Pieces to cut")]
        public int? Cut { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("Inspection level of the plan indexed at the same figure, which is shown alongside; default: II")]
        public string Level { get; init; } = "II";
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings)
    {
        var lot = settings.Pieces;
        return new SampleByShare(
            new ShareMustPass(Options.Number("--must-pass", settings.MustPass, Ranges.MustPassPercent) / 100),
            Options.Whole("--cut", settings.Cut, Ranges.Pieces with { High = lot ?? Ranges.Pieces.High }),
            SamplingOptions.Level(settings.Level),
            lot,
            settings.DrawnSeed
        );
    }
}

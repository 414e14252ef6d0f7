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
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.MustPass))]
        public double? MustPass { get; init; }

        [CommandOption("--cut <PIECES>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Cut))]
        public int? Cut { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level), Note = "that plan is shown for comparison")]
        public string Level { get; init; } = AcceptanceFields.Level.Default;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings)
    {
        var lot = settings.Pieces;
        return new SampleByShare(
            new ShareMustPass(Options.Number(AcceptanceFields.MustPass, settings.MustPass) / 100),
            Options.Whole(
                AcceptanceFields.Cut.Option,
                settings.Cut,
                Ranges.Pieces with
                {
                    High = lot ?? Ranges.Pieces.High,
                }
            ),
            Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
            lot,
            settings.DrawnSeed
        );
    }
}

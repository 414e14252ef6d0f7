using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Samples so that a conforming share is shown.</summary>
internal sealed class SampleShowCommand(IAnsiConsole console, FactLibrary facts)
    : SampleCommand<SampleShowCommand.Settings>(console, facts)
{
    // Above it the search for a sample would take too long to wait for.
    private const int FailuresMost = 100_000;

    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--conforming <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Conforming))]
        public double? Conforming { get; init; }

        [CommandOption("--confidence <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Confidence))]
        public double Confidence { get; init; } = 95;

        [CommandOption("--failures <COUNT>")]
        [Description("Failures to allow for; default: none")]
        public int Failures { get; init; }
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleToShow(
            Options.Number(AcceptanceFields.Conforming, settings.Conforming) / 100,
            Options.Number(AcceptanceFields.Confidence, settings.Confidence) / 100,
            Options.Whole(
                AcceptanceFields.Failures.Option,
                settings.Failures,
                Ranges.Failures with
                {
                    High = FailuresMost,
                }
            ),
            settings.Pieces,
            settings.DrawnSeed
        );
}

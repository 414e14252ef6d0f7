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
    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--conforming <PERCENT>")]
        [Description("Conforming share to show")]
        public double? Conforming { get; init; }

        [CommandOption("--confidence <PERCENT>")]
        [Description("One-sided confidence; default: 95")]
        public double Confidence { get; init; } = 95;

        [CommandOption("--failures <COUNT>")]
        [Description("Failures to allow for; default: none")]
        public int Failures { get; init; }
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleToShow(
            Options.Number("--conforming", settings.Conforming, Ranges.ConformingPercent) / 100,
            Options.Number("--confidence", settings.Confidence, Ranges.ConfidencePercent) / 100,
            Options.Whole("--failures", settings.Failures, NumberRange.Whole(0, 100_000, "failures")),
            settings.Pieces,
            settings.DrawnSeed
        );
}

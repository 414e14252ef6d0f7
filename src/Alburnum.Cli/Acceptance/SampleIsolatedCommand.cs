using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Samples one lot that stands alone, by its limiting quality.</summary>
internal sealed class SampleIsolatedCommand(IAnsiConsole console, FactLibrary facts)
    : SampleCommand<SampleIsolatedCommand.Settings>(console, facts)
{
    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--limiting <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Limiting))]
        public double? Limiting { get; init; }

        [CommandOption("--consumer-risk <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.ConsumerRisk))]
        public double ConsumerRisk { get; init; } = 10;

        [CommandOption("--failures <COUNT>")]
        [Description("Failures to allow for; default: none")]
        public int Failures { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
        public string Level { get; init; } = AcceptanceFields.Level.Default;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleIsolated(
            Options.Whole(AcceptanceFields.Lot, settings.Lot),
            Options.Number(AcceptanceFields.Limiting, settings.Limiting) / 100,
            Options.Number(AcceptanceFields.ConsumerRisk, settings.ConsumerRisk) / 100,
            Options.Whole(AcceptanceFields.Failures.Option, settings.Failures, Ranges.Failures),
            Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
            settings.DrawnSeed
        );
}

using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Samples by the plan of a standard's tables.</summary>
internal sealed class SampleAttributesCommand(IAnsiConsole console, FactLibrary facts)
    : SampleCommand<SampleAttributesCommand.Settings>(console, facts)
{
    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--aql <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Aql))]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
        public string Level { get; init; } = AcceptanceFields.Level.Default;

        [CommandOption("--severity <SEVERITY>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Severity))]
        public string Severity { get; init; } = AcceptanceFields.Severity.Default;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleByTables(
            Options.Whole(AcceptanceFields.Lot, settings.Lot),
            Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
            Options.Number(AcceptanceFields.Aql, settings.Aql),
            Options.Word(AcceptanceFields.Severity, settings.Severity, InspectionKeys.ReadSeverity),
            settings.DrawnSeed
        );
}

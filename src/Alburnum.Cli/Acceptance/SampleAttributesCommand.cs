using System.ComponentModel;
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

        [CommandOption("--rulebook <FILE|NAME>")]
        [Description("Code of practice whose AQL for the timber is taken where none is given")]
        public string? Rulebook { get; init; }

        [CommandOption("--species <NAME>")]
        [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Species), Note = "with a rulebook")]
        public string? Species { get; init; }

        [CommandOption("--form <FORM>")]
        [HelpOf(typeof(EnquiryFields), nameof(EnquiryFields.Form), Note = "with a rulebook")]
        public string? Form { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
        public string Level { get; init; } = AcceptanceFields.Level.Default;

        [CommandOption("--severity <SEVERITY>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Severity))]
        public string Severity { get; init; } = AcceptanceFields.Severity.Default;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings)
    {
        var code = settings is { Aql: null, Rulebook: { } rulebook }
            ? CodeAql.Find(rulebook, Options.Timber(settings, Facts), Facts)
            : null;
        return new SampleByTables(
            Options.Whole(AcceptanceFields.Lot, settings.Lot),
            Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
            Options.Number(AcceptanceFields.Aql, settings.Aql ?? code?.Value),
            Options.Word(AcceptanceFields.Severity, settings.Severity, InspectionKeys.ReadSeverity),
            settings.DrawnSeed
        )
        {
            AqlFrom = code?.Provenance,
        };
    }
}

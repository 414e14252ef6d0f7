using System.ComponentModel;
using Alburnum.Facts;
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
        [Description("The AQL that indexes the plan")]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("Inspection level, S-1 to S-4, I, II or III; default: II")]
        public string Level { get; init; } = "II";

        [CommandOption("--severity <SEVERITY>")]
        [Description("normal (default), tightened or reduced")]
        public string Severity { get; init; } = "normal";
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings)
    {
        var tables = Facts.Sampling.Tables;
        var lot = Options.Whole("--lot", settings.Pieces, Ranges.Pieces);
        var aql = SamplingOptions.Aql(tables, settings.Aql);
        return new SampleByTables(
            TablesFit.Lot(tables, lot, "--lot"),
            SamplingOptions.Level(settings.Level),
            aql,
            SamplingOptions.Severity(settings.Severity),
            settings.DrawnSeed
        );
    }
}

using Alburnum.Acceptance.Indexed;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Cli.Acceptance;

/// <summary>What indexes a plan in a standard's tables, from options as people write them.</summary>
internal static class SamplingOptions
{
    public static InspectionLevel Level(string level) =>
        InspectionKeys.ReadLevel(level) ?? throw Options.Refused("--level", level, "S-1, S-2, S-3, S-4, I, II or III");

    public static Severity Severity(string severity) =>
        InspectionKeys.ReadSeverity(severity)
        ?? throw Options.Refused("--severity", severity, "normal, tightened or reduced");

    public static double Aql(double? given) =>
        Options.Number("--aql", given, NumberRange.Within(0.01, 1000, "(an AQL)"));

    /// <summary>An AQL that the tables have a column for.</summary>
    public static double Aql(AttributeTables tables, double? given) => TablesFit.Aql(tables, Aql(given), "--aql");
}

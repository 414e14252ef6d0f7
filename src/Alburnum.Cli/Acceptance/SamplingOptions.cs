using Alburnum.Acceptance.Indexed;
using Alburnum.Facts;

namespace Alburnum.Cli.Acceptance;

/// <summary>What indexes a plan in a standard's tables, from options as people write them.</summary>
internal static class SamplingOptions
{
    public static InspectionLevel Level(string level) =>
        InspectionWords.ReadLevel(level) ?? throw Options.Refused("--level", level, "S-1, S-2, S-3, S-4, I, II or III");

    public static Severity Severity(string severity) =>
        InspectionWords.ReadSeverity(severity)
        ?? throw Options.Refused("--severity", severity, "normal, tightened or reduced");

    /// <summary>A lot that the tables have plans for.</summary>
    public static int Lot(AttributeTables tables, int lot) =>
        lot >= tables.LotSizes[0].From
            ? lot
            : throw Options.Refused("--lot", Options.Digits(lot), $"{tables.LotSizes[0].From} pieces or more");

    /// <summary>An AQL that the tables have a column for.</summary>
    public static double Aql(AttributeTables tables, double? given)
    {
        var aql = Options.Number("--aql", given, NumberRange.Within(0.01, 1000, "(an AQL)"));
        return tables.AqlsPercent.Any(column => Math.Abs(column - aql) < 1e-9)
            ? aql
            : throw Options.Refused(
                "--aql",
                Options.Digits(aql),
                $"an AQL of {tables.Source.Document}: {string.Join(", ", tables.AqlsPercent.Select(Options.Digits))}"
            );
    }
}

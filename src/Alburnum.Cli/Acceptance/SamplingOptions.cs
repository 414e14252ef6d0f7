using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Cli.Acceptance;

/// <summary>Finds a plan in a standard's tables from options as people write them.</summary>
internal static class SamplingOptions
{
    public static IndexedPlan Indexed(AttributeTables tables, int lot, string level, double aql, string severity)
    {
        Aql(tables, aql);
        if (lot < tables.LotSizes[0].From)
            throw Options.Refused("--lot", Options.Digits(lot), $"{tables.LotSizes[0].From} pieces or more");
        return tables.Find(
            lot,
            Level(level),
            aql,
            InspectionWords.ReadSeverity(severity)
                ?? throw Options.Refused("--severity", severity, "normal, tightened or reduced")
        );
    }

    /// <summary>The plan indexed at what a share lets fail; null where the tables have no such AQL or lot.</summary>
    public static IndexedPlan? OtherReading(AttributeTables tables, ShareMustPass share, int lot, string level)
    {
        var aql = Math.Round((1 - share.Share) * 100, 6);
        return lot >= tables.LotSizes[0].From && tables.AqlsPercent.Contains(aql)
            ? tables.Find(lot, Level(level), aql)
            : null;
    }

    public static InspectionLevel Level(string level) =>
        InspectionWords.ReadLevel(level) ?? throw Options.Refused("--level", level, "S-1, S-2, S-3, S-4, I, II or III");

    /// <summary>An AQL that the tables have a column for.</summary>
    public static double Aql(AttributeTables tables, double aql) =>
        tables.AqlsPercent.Any(column => Math.Abs(column - aql) < 1e-9)
            ? aql
            : throw Options.Refused(
                "--aql",
                Options.Digits(aql),
                $"an AQL of {tables.Source.Document}: {string.Join(", ", tables.AqlsPercent.Select(Options.Digits))}"
            );

    /// <summary>Two shares with their risks, in per cent.</summary>
    public static RiskPoints Risks(double? accept, double? producerRisk, double? reject, double? consumerRisk)
    {
        var (p1, p2) = (
            Options.Number("--accept", accept, 0.01, 90, "% failing"),
            Options.Number("--reject", reject, 0.02, 99, "% failing")
        );
        if (p2 <= p1)
            throw Options.Refused(
                "--reject",
                Options.Digits(p2),
                $"more than --accept, which is {Options.Digits(p1)} % failing"
            );
        return new(
            p1 / 100,
            Options.Number("--producer-risk", producerRisk, 0.1, 50, "%") / 100,
            p2 / 100,
            Options.Number("--consumer-risk", consumerRisk, 0.1, 50, "%") / 100
        );
    }
}

using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;

namespace Alburnum.Cli;

/// <summary>Finds a plan in a standard's tables from options as people write them.</summary>
internal static class SamplingOptions
{
    public static IndexedPlan Indexed(AttributeTables tables, int lot, string level, double aql, string severity)
    {
        var known = string.Join(", ", tables.AqlsPercent.Select(Options.Digits));
        if (!tables.AqlsPercent.Any(column => Math.Abs(column - aql) < 1e-9))
            throw Options.Refused("--aql", Options.Digits(aql), $"an AQL of {tables.Source.Document}: {known}");
        if (lot < tables.LotSizes[0].From)
            throw Options.Refused("--lot", Options.Digits(lot), $"{tables.LotSizes[0].From} pieces or more");
        return tables.Find(
            lot,
            InspectionWords.ReadLevel(level)
                ?? throw Options.Refused("--level", level, "S-1, S-2, S-3, S-4, I, II or III"),
            aql,
            InspectionWords.ReadSeverity(severity)
                ?? throw Options.Refused("--severity", severity, "normal, tightened or reduced")
        );
    }

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

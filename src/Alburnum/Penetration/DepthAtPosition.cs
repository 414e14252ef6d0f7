using MathNet.Numerics.Distributions;

namespace Alburnum.Penetration;

/// <summary>What one position along a face must show, and the probability that it does.</summary>
/// <param name="Face">Face number.</param>
/// <param name="PositionMm">Distance along the face, mm.</param>
/// <param name="DepthMm">Depth read, mm.</param>
/// <param name="StandardUncertaintyMm">Standard uncertainty of that depth, mm.</param>
/// <param name="RequiredMm">Required depth here, mm.</param>
/// <param name="ZoneEndMm">Depth at which the zone ends here, mm; at least the required depth.</param>
/// <param name="InZone">False where the sapwood boundary is unknown, so that the position may not count at all.</param>
internal readonly record struct DepthAtPosition(
    int Face,
    double PositionMm,
    double DepthMm,
    double StandardUncertaintyMm,
    double RequiredMm,
    double ZoneEndMm,
    bool InZone
)
{
    /// <summary>Belief, before reading, that the front stopped at the end of the zone rather than somewhere short of it: our choice, from no source.</summary>
    public const double FrontAtZoneEnd = 0.5;

    /// <summary>True where the whole depth of the zone is required, so that no reading can show more than enough.</summary>
    public bool AsksForWholeZone => RequiredMm >= ZoneEndMm;

    /// <summary>How far the depth lies above what is required; null where the whole zone is, since a front stops at its end.</summary>
    public Estimate? MarginMm(double standardUncertaintyMm) =>
        AsksForWholeZone ? null : new Estimate(DepthMm - RequiredMm, standardUncertaintyMm);

    /// <summary>Probability that the required depth is reached, with at least the given standard uncertainty, mm.</summary>
    public double Probability(double leastUncertaintyMm)
    {
        var u = Math.Max(StandardUncertaintyMm, leastUncertaintyMm);
        var margin = DepthMm - RequiredMm;
        if (u <= 0)
            return margin >= 0 ? 1 : 0;
        return AsksForWholeZone ? ReachesEnd(-margin, u) : Normal.CDF(0, 1, margin / u);
    }

    // A front that fills a zone stops at its border, so the reading scatters about the border and a plain normal margin
    // would call every filled zone undecided. Two states are weighed instead: filled (gap 0) against a gap anywhere in the zone.
    private double ReachesEnd(double gapMm, double u)
    {
        var x = gapMm / u;
        // Density over distribution, written for the far side so that neither underflows to 0/0.
        var ratio = x < -30 ? -x : Normal.PDF(0, 1, x) / Normal.CDF(0, 1, x);
        var odds = FrontAtZoneEnd / (1 - FrontAtZoneEnd) * ratio * ZoneEndMm / u;
        return odds / (1 + odds);
    }
}

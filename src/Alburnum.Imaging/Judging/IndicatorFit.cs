using Alburnum.Imaging.Colour;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Judging;

/// <summary>Whether the colours found are those of the indicator named.</summary>
internal static class IndicatorFit
{
    /// <summary>Logarithm of the likelihood ratio from which another indicator is clearly the better explanation. Our own choice.</summary>
    private const double Clearly = 8;

    /// <summary>The indicator that explains the two zones clearly better than the one named; null where none does.</summary>
    public static Indicator? Better(TwoZones zones, Indicator named, IReadOnlyList<Indicator> candidates)
    {
        var own = LogFit(zones, named);
        var best = candidates
            .Where(other => other.Key != named.Key)
            .Select(other => (Indicator: other, Fit: LogFit(zones, other)))
            .OrderByDescending(other => other.Fit)
            .FirstOrDefault();
        return best.Indicator is not null && best.Fit - own > Clearly ? best.Indicator : null;
    }

    private static double LogFit(TwoZones zones, Indicator indicator) =>
        new IndicatorPrior(indicator).LogFit(Mean(zones.Treated), Mean(zones.Untreated));

    /// <summary>Mean brightness and colour of a zone.</summary>
    public static double[] Mean(IReadOnlyList<Gaussian3> zone)
    {
        var mean = new double[3];
        var weight = zone.Sum(bell => bell.Weight);
        foreach (var bell in zone)
            for (var k = 0; k < 3; k++)
                mean[k] += bell.Weight / weight * bell.Mean[k];
        return mean;
    }
}

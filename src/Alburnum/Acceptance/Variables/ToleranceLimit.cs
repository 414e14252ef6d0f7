using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Alburnum.Acceptance.Variables;

/// <summary>The value that a stated share of all pieces exceeds, with a stated confidence, from a sample of measurements.</summary>
/// <remarks>
/// One-sided tolerance limit of a normal (or log-normal) population, mean − k·s with the exact factor
/// k = t⁻¹(γ; n − 1, z·√n)/√n of the non-central t distribution: the quantity that ISO 16269-6 tabulates.
/// </remarks>
public static class ToleranceLimit
{
    /// <summary>The factor k.</summary>
    /// <param name="n">Measurements, 2 to 100 000.</param>
    /// <param name="share">Share of the population that is to exceed the limit, above 0.5, below 1.</param>
    /// <param name="confidence">One-sided confidence, above 0, below 1.</param>
    public static double Factor(int n, double share, double confidence)
    {
        Require.InRange(n, 2, 100_000, "measurements");
        Require.InRange(share, 0.5, 1 - 1e-9, "(share)");
        var root = Math.Sqrt(n);
        return NonCentralT.Quantile(confidence, n - 1, Normal.InvCDF(0, 1, share) * root) / root;
    }

    /// <summary>How many standard deviations the mean lies above a limit, on the scale on which the population is normal.</summary>
    internal static double Distance(IReadOnlyList<double> values, double limit, Population population)
    {
        var scale = population.Scaled(values);
        return (scale.Mean() - population.Scaled([limit])[0]) / scale.StandardDeviation();
    }
}

using MathNet.Numerics;

namespace Alburnum.Acceptance;

/// <summary>Number of defects in a sample where a piece may carry several: defects per hundred units.</summary>
public static class Poisson
{
    /// <summary>Probability of at most k defects.</summary>
    /// <param name="k">Defects.</param>
    /// <param name="mean">Mean number of defects in the sample, 0 or more.</param>
    public static double AtMost(int k, double mean)
    {
        Require.InRange(mean, 0, double.MaxValue, "defects");
        if (k < 0)
            return 0;
        return mean <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(k + 1, mean);
    }
}

using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>Exact confidence bounds on a share, from a count in a sample drawn from an endless supply.</summary>
/// <remarks>Clopper and Pearson 1934: quantiles of beta distributions. Never less sure than stated.</remarks>
public static class ClopperPearson
{
    /// <summary>Lower one-sided bound on the share.</summary>
    /// <param name="count">Pieces counted, 0 to n.</param>
    /// <param name="n">Pieces in the sample, 1 or more.</param>
    /// <param name="confidence">One-sided confidence, above 0, below 1.</param>
    public static double Lower(int count, int n, double confidence)
    {
        Check(count, n, confidence);
        return count == 0 ? 0 : Beta.InvCDF(count, n - count + 1, 1 - confidence);
    }

    private static void Check(int count, int n, double confidence)
    {
        Require.InRange(n, 1, int.MaxValue, "pieces");
        Require.InRange(count, 0, n, "pieces");
        Require.InRange(confidence, 1e-12, 1 - 1e-12, "(confidence)");
    }
}

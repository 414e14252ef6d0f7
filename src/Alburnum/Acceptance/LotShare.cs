namespace Alburnum.Acceptance;

/// <summary>Exact confidence bound on the conforming share of a lot, from a sample drawn without putting back.</summary>
public static class LotShare
{
    /// <summary>Lower one-sided bound on the share of the lot that conforms.</summary>
    /// <param name="conforming">Pieces of the sample that conform, 0 to n.</param>
    /// <param name="n">Pieces in the sample, 1 to the lot.</param>
    /// <param name="lot">Pieces in the lot; null for a supply without end (Clopper–Pearson).</param>
    /// <param name="confidence">One-sided confidence, above 0, below 1.</param>
    /// <returns>
    /// The least share that does not make a sample this good less likely than 1 − confidence: the exact hypergeometric
    /// bound, a whole number of pieces over the lot.
    /// </returns>
    public static double LowerBound(int conforming, int n, int? lot, double confidence)
    {
        if (lot is not { } pieces)
            return ClopperPearson.Lower(conforming, n, confidence);
        Require.InRange(n, 1, pieces, "pieces");
        Require.InRange(conforming, 0, n, "pieces");
        Require.InRange(confidence, 1e-12, 1 - 1e-12, "(confidence)");
        // Few failures are likelier the fewer the lot holds: find the most failing pieces that still allow the sample.
        var failures = n - conforming;
        int low = failures,
            high = pieces - conforming;
        while (low < high)
        {
            var middle = low + (high - low + 1) / 2;
            if (Hypergeometric.AtMost(failures, pieces, middle, n) > 1 - confidence)
                low = middle;
            else
                high = middle - 1;
        }
        return (double)(pieces - low) / pieces;
    }
}

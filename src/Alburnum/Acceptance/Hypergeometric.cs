namespace Alburnum.Acceptance;

/// <summary>Number of failing pieces in a sample drawn without putting back from a lot that holds a known number of them.</summary>
public static class Hypergeometric
{
    /// <summary>Probability of exactly k failing pieces in the sample.</summary>
    /// <param name="k">Failing pieces in the sample.</param>
    /// <param name="lot">Pieces in the lot, 0 or more.</param>
    /// <param name="failing">Failing pieces in the lot, 0 to the lot.</param>
    /// <param name="n">Pieces in the sample, 0 to the lot.</param>
    public static double Probability(int k, int lot, int failing, int n)
    {
        Check(lot, failing, n);
        if (k < Math.Max(0, n - (lot - failing)) || k > Math.Min(n, failing))
            return 0;
        if (n == 0 || n == lot)
            return 1;
        // The product of three binomial terms at p = n/lot, whose powers of p cancel (Loader 2000).
        double p = (double)n / lot,
            q = (double)(lot - n) / lot;
        return Binomial.Term(k, failing, p, q)
            * Binomial.Term(n - k, lot - failing, p, q)
            / Binomial.Term(n, lot, p, q);
    }

    /// <summary>Probability of at most k failing pieces in the sample.</summary>
    public static double AtMost(int k, int lot, int failing, int n)
    {
        Check(lot, failing, n);
        var least = Math.Max(0, n - (lot - failing));
        var most = Math.Min(n, failing);
        if (k < least)
            return 0;
        if (k >= most)
            return 1;
        // Sum the tail that does not hold the mean: it is the shorter one and loses no digits.
        var mean = (double)n * failing / lot;
        return k < mean ? Tail(k, least, -1) : 1 - Tail(k + 1, most, 1);

        double Tail(int from, int to, int step)
        {
            var term = Probability(from, lot, failing, n);
            var sum = term;
            for (var i = from; i != to && term > sum * 1e-17; i += step)
            {
                // Ratio of neighbouring terms.
                term *=
                    step < 0
                        ? (double)i * (lot - failing - n + i) / ((double)(failing - i + 1) * (n - i + 1))
                        : (double)(failing - i) * (n - i) / ((double)(i + 1) * (lot - failing - n + i + 1));
                sum += term;
            }
            return Math.Min(1, sum);
        }
    }

    private static void Check(int lot, int failing, int n)
    {
        Require.InRange(lot, 0, int.MaxValue, "pieces");
        Require.InRange(failing, 0, lot, "pieces");
        Require.InRange(n, 0, lot, "pieces");
    }
}

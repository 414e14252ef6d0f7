using MathNet.Numerics;

namespace Alburnum.Acceptance;

/// <summary>Number of pieces that fail among n, each failing with the same probability.</summary>
/// <remarks>
/// The probability is taken from its saddle-point form (Loader 2000, "Fast and accurate computation of binomial
/// probabilities"), which keeps about 14 digits at any n; sums run outwards from the term nearest the mean.
/// </remarks>
public static class Binomial
{
    /// <summary>Probability of exactly k failures among n.</summary>
    /// <param name="k">Failures.</param>
    /// <param name="n">Pieces, 0 or more.</param>
    /// <param name="p">Probability that a piece fails, 0 to 1.</param>
    public static double Probability(int k, int n, double p)
    {
        Require.InRange(n, 0, int.MaxValue, "pieces");
        Require.InRange(p, 0, 1, "(probability)");
        return k < 0 || k > n ? 0 : Term(k, n, p, 1 - p);
    }

    /// <summary>Probability of at most k failures among n.</summary>
    public static double AtMost(int k, int n, double p)
    {
        Require.InRange(n, 0, int.MaxValue, "pieces");
        Require.InRange(p, 0, 1, "(probability)");
        if (k < 0)
            return 0;
        if (k >= n || p <= 0)
            return 1;
        if (p >= 1)
            return 0;
        // Sum the tail that does not hold the mean: it is the shorter one and loses no digits.
        return k < n * p ? Tail(k, 0, -1) : 1 - Tail(k + 1, n, 1);

        double Tail(int from, int to, int step)
        {
            var term = Term(from, n, p, 1 - p);
            var sum = term;
            for (var i = from; i != to && term > sum * 1e-17; i += step)
            {
                term *= step < 0 ? i * (1 - p) / ((n - i + 1) * p) : (n - i) * p / ((i + 1) * (1 - p));
                sum += term;
            }
            return Math.Min(1, sum);
        }
    }

    /// <summary>The term with p and q = 1 − p given apart, so that neither loses digits near 0.</summary>
    internal static double Term(double k, double n, double p, double q)
    {
        if (p <= 0)
            return k <= 0 ? 1 : 0;
        if (q <= 0)
            return k >= n ? 1 : 0;
        if (k <= 0)
            return n <= 0 ? 1 : Math.Exp(p < 0.1 ? -Deviance(n, n * q) - n * p : n * Math.Log(q));
        if (k >= n)
            return Math.Exp(q < 0.1 ? -Deviance(n, n * p) - n * q : n * Math.Log(p));
        var log =
            StirlingError(n) - StirlingError(k) - StirlingError(n - k) - Deviance(k, n * p) - Deviance(n - k, n * q);
        return Math.Exp(log) * Math.Sqrt(n / (2 * Math.PI * k * (n - k)));
    }

    /// <summary>ln x! less Stirling's formula.</summary>
    internal static double StirlingError(double n)
    {
        if (n < 16)
            return SpecialFunctions.FactorialLn((int)n) - (n + 0.5) * Math.Log(n) + n - 0.5 * Math.Log(2 * Math.PI);
        var s = 1 / (n * n);
        return (1.0 / 12 - (1.0 / 360 - (1.0 / 1260 - (1.0 / 1680 - s / 1188) * s) * s) * s) / n;
    }

    /// <summary>x·ln(x/m) + m − x, without loss where x is near m.</summary>
    internal static double Deviance(double x, double m)
    {
        var difference = x - m;
        if (Math.Abs(difference) >= 0.1 * (x + m))
            return x * Math.Log(x / m) - difference;
        var v = difference / (x + m);
        var sum = difference * v;
        var term = 2 * x * v;
        for (var j = 1; j < 1000; j++)
        {
            term *= v * v;
            var next = sum + term / (2 * j + 1);
            if (next == sum)
                return next;
            sum = next;
        }
        return sum;
    }
}

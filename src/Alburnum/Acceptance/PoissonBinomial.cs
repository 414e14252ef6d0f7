namespace Alburnum.Acceptance;

/// <summary>Number of failures among pieces that each fail with a probability of their own.</summary>
public static class PoissonBinomial
{
    /// <summary>Probabilities of 0, 1, … n failures.</summary>
    /// <param name="failing">Probability that each piece fails, 0 to 1.</param>
    public static double[] Probabilities(IReadOnlyList<double> failing)
    {
        var probabilities = new double[failing.Count + 1];
        probabilities[0] = 1;
        for (var piece = 0; piece < failing.Count; piece++)
        {
            var p = Require.InRange(failing[piece], 0, 1, "(probability)");
            for (var k = piece + 1; k > 0; k--)
                probabilities[k] = probabilities[k] * (1 - p) + probabilities[k - 1] * p;
            probabilities[0] *= 1 - p;
        }
        return probabilities;
    }

    /// <summary>Probability of at most k failures.</summary>
    public static double AtMost(int k, IReadOnlyList<double> failing) =>
        k < 0 ? 0 : Math.Min(1, Probabilities(failing).Take(k + 1).Sum());
}

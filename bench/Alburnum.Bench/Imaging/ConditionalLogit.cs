using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Alburnum.Bench.Imaging;

/// <summary>One choice: what could be chosen, and which of it is right. None may be right.</summary>
/// <param name="Terms">The terms of each alternative.</param>
/// <param name="IsRight">Whether each alternative is right.</param>
internal sealed record Choice(IReadOnlyList<double[]> Terms, IReadOnlyList<bool> IsRight);

/// <summary>
/// A conditional logit (McFadden, 1974) with an alternative "none of these", fitted by greatest likelihood. Several alternatives of a choice may be right:
/// the chance that counts is that of any of them.
/// </summary>
internal static class ConditionalLogit
{
    /// <summary>Holds each weight, in standard deviations of its term, towards nothing: a term that says little shall not count.</summary>
    private const double Ridge = 0.0005;

    /// <summary>The likeliest weights, one for each term, and last the score of "none of these".</summary>
    public static double[] Fit(IReadOnlyList<Choice> choices)
    {
        var spread = Spread(choices);
        var start = Vector<double>.Build.Dense(spread.Length + 1);
        var objective = ObjectiveFunction.Gradient(weights => Loss(choices, spread, weights));
        var found = new BfgsMinimizer(1e-5, 1e-7, 1e-9, 2000).FindMinimum(objective, start).MinimizingPoint;
        return [.. spread.Select((s, k) => found[k] / s), found[spread.Length]];
    }

    // Mean of minus the logarithm of the chance of what is right, and its slope.
    private static (double, Vector<double>) Loss(IReadOnlyList<Choice> choices, double[] spread, Vector<double> weights)
    {
        var n = spread.Length;
        double loss = 0;
        var slope = Vector<double>.Build.Dense(n + 1);
        foreach (var choice in choices)
        {
            var scores = choice.Terms.Select(t => Score(t, spread, weights)).ToArray();
            var most = Math.Max(weights[n], scores.DefaultIfEmpty(double.MinValue).Max());
            var none = Math.Exp(weights[n] - most);
            double all = none;
            double right = 0;
            for (var i = 0; i < scores.Length; i++)
            {
                scores[i] = Math.Exp(scores[i] - most);
                all += scores[i];
                right += choice.IsRight[i] ? scores[i] : 0;
            }
            var noneIsRight = !choice.IsRight.Contains(true);
            if (noneIsRight)
                right = none;
            right = Math.Max(right, 1e-12);
            loss -= Math.Log(right / all);
            slope[n] += (none / all) - (noneIsRight ? 1 : 0);
            for (var i = 0; i < scores.Length; i++)
            {
                var pull = (scores[i] / all) - (choice.IsRight[i] ? scores[i] / right : 0);
                for (var k = 0; k < n; k++)
                    slope[k] += pull * choice.Terms[i][k] / spread[k];
            }
        }
        loss /= choices.Count;
        slope /= choices.Count;
        for (var k = 0; k < n; k++)
        {
            loss += Ridge * weights[k] * weights[k];
            slope[k] += 2 * Ridge * weights[k];
        }
        return (loss, slope);
    }

    private static double Score(double[] terms, double[] spread, Vector<double> weights)
    {
        double score = 0;
        for (var k = 0; k < terms.Length; k++)
            score += weights[k] * terms[k] / spread[k];
        return score;
    }

    private static double[] Spread(IReadOnlyList<Choice> choices)
    {
        var all = choices.SelectMany(c => c.Terms).ToList();
        return
        [
            .. Enumerable
                .Range(0, all[0].Length)
                .Select(k =>
                {
                    var mean = all.Average(t => t[k]);
                    return Math.Max(1e-9, Math.Sqrt(all.Average(t => (t[k] - mean) * (t[k] - mean))));
                }),
        ];
    }
}

using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace Alburnum.Acceptance.Risk;

/// <summary>What wrong decisions a guard band costs, over the whole production.</summary>
/// <param name="ConsumerRisk">Probability that a piece fails in truth and is accepted.</param>
/// <param name="ProducerRisk">Probability that a piece conforms in truth and is rejected.</param>
public sealed record GlobalRisk(double ConsumerRisk, double ProducerRisk);

/// <summary>Risks of a wrong verdict on a value with a lower limit, in the words of JCGM 106:2012.</summary>
/// <remarks>
/// Specific risk speaks of the one piece that was read; global risk of any piece that the process might send. Both take the error of
/// reading to be normal; the process is normal too.
/// </remarks>
public static class ConformityRisk
{
    /// <summary>Consumer's and producer's risk over the whole process.</summary>
    /// <param name="process">Mean and spread of the true values; spread above 0.</param>
    /// <param name="readingUncertainty">Standard uncertainty of a reading, above 0.</param>
    /// <param name="lowerLimit">Least value that conforms.</param>
    /// <param name="guardBand">How far above the limit a reading must lie to be accepted; below 0 gives the benefit of the doubt.</param>
    public static GlobalRisk Global(Estimate process, double readingUncertainty, double lowerLimit, double guardBand)
    {
        var spread = Require.Positive(process.StandardUncertainty, "");
        Require.Positive(readingUncertainty, "");
        var accept = lowerLimit + Require.InRange(guardBand, -1e9, 1e9, "");
        double Density(double value) => Normal.PDF(process.Value, spread, value);
        double Accepted(double value) => Normal.CDF(0, 1, (value - accept) / readingUncertainty);
        return new(
            Integral(
                value => Density(value) * Accepted(value),
                process.Value - 12 * spread,
                lowerLimit,
                accept,
                readingUncertainty
            ),
            Integral(
                value => Density(value) * (1 - Accepted(value)),
                lowerLimit,
                process.Value + 12 * spread,
                accept,
                readingUncertainty
            )
        );
    }

    /// <summary>Two independent estimates of one value, weighed by their uncertainties.</summary>
    internal static Estimate Combine(Estimate one, Estimate other)
    {
        double w1 = 1 / (one.StandardUncertainty * one.StandardUncertainty),
            w2 = 1 / (other.StandardUncertainty * other.StandardUncertainty);
        if (double.IsInfinity(w1))
            return one;
        return double.IsInfinity(w2)
            ? other
            : new((one.Value * w1 + other.Value * w2) / (w1 + w2), 1 / Math.Sqrt(w1 + w2));
    }

    private static double Integral(Func<double, double> f, double from, double to, double turn, double width)
    {
        if (from >= to)
            return 0;
        double[] cuts =
        [
            .. new[] { -8.0, -3, 0, 3, 8 }
                .Select(step => Math.Clamp(turn + step * width, from, to))
                .Append(from)
                .Append(to)
                .Order(),
        ];
        var sum = 0.0;
        for (var i = 1; i < cuts.Length; i++)
        {
            const int panels = 8;
            var step = (cuts[i] - cuts[i - 1]) / panels;
            for (var panel = 0; panel < panels && step > 0; panel++)
                sum += GaussLegendreRule.Integrate(f, cuts[i - 1] + panel * step, cuts[i - 1] + (panel + 1) * step, 20);
        }
        return sum;
    }
}

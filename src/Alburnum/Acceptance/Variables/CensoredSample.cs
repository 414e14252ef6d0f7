using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance.Variables;

/// <summary>What a reading says of the value.</summary>
public enum Censoring
{
    /// <summary>The value itself.</summary>
    Exact,

    /// <summary>The value is this or less: below a detection limit.</summary>
    AtMost,

    /// <summary>The value is this or more: penetrated to the end of the wood that could be penetrated.</summary>
    AtLeast,
}

/// <summary>One reading that may be cut off.</summary>
/// <param name="Value">The value or the cut, in the sample's unit.</param>
/// <param name="Censoring">What it says.</param>
public readonly record struct CensoredReading(double Value, Censoring Censoring);

/// <summary>Mean and spread of a population fitted to readings of which some are cut off.</summary>
/// <param name="Mean">Mean; of the logarithms for a log-normal population.</param>
/// <param name="StandardDeviation">Standard deviation; of the logarithms for a log-normal population.</param>
public sealed record CensoredFit(Estimate Mean, Estimate StandardDeviation);

/// <summary>Fits a population to cut-off readings by maximum likelihood.</summary>
/// <remarks>
/// Expectation–maximisation for the censored normal (Dempster, Laird and Rubin 1977), uncertainties from the curvature of the
/// likelihood at its top. A cut-off reading is neither thrown away nor put at its cut: both would bias the answer.
/// </remarks>
public static class CensoredSample
{
    private const int IterationsMax = 5000;

    /// <summary>Fits mean and spread.</summary>
    /// <param name="readings">Readings in one unit; at least two different exact ones.</param>
    /// <param name="population">Shape of the population.</param>
    /// <exception cref="ArgumentException">Fewer than two different exact readings: nothing fixes the spread.</exception>
    public static CensoredFit Fit(IReadOnlyList<CensoredReading> readings, Population population)
    {
        CensoredReading[] scaled =
        [
            .. readings.Select(reading => reading with { Value = population.Scaled([reading.Value])[0] }),
        ];
        var exact = scaled
            .Where(reading => reading.Censoring == Censoring.Exact)
            .Select(reading => reading.Value)
            .ToList();
        if (exact.Distinct().Count() < 2)
            throw new ArgumentException("At least two different exact readings are needed.", nameof(readings));
        var mean = exact.Average();
        var variance = exact.Sum(value => (value - mean) * (value - mean)) / exact.Count;
        for (var i = 0; i < IterationsMax; i++)
        {
            var sd = Math.Sqrt(variance);
            var expected = scaled.Select(reading => Expected(reading, mean, sd)).ToList();
            var nextMean = expected.Average(e => e.Mean);
            var nextVariance = expected.Average(e => e.Variance + (e.Mean - nextMean) * (e.Mean - nextMean));
            var moved = Math.Abs(nextMean - mean) + Math.Abs(nextVariance - variance);
            (mean, variance) = (nextMean, nextVariance);
            if (moved < 1e-13 * (1 + Math.Abs(mean) + variance))
                break;
        }
        return WithUncertainty(scaled, mean, Math.Sqrt(variance));
    }

    /// <summary>Mean and variance of a reading's value, given what it says.</summary>
    private static (double Mean, double Variance) Expected(CensoredReading reading, double mean, double sd)
    {
        if (reading.Censoring == Censoring.Exact)
            return (reading.Value, 0);
        var z = (reading.Value - mean) / sd;
        // Seen from the other side, "at most" is "at least".
        var sign = reading.Censoring == Censoring.AtLeast ? 1 : -1;
        var hazard = Hazard(sign * z);
        return (mean + sign * sd * hazard, sd * sd * (1 + sign * z * hazard - hazard * hazard));
    }

    /// <summary>Density over the tail above z; goes over into z for a far tail.</summary>
    private static double Hazard(double z) => z > 30 ? z + 1 / z : Normal.PDF(0, 1, z) / Normal.CDF(0, 1, -z);

    private static CensoredFit WithUncertainty(CensoredReading[] readings, double mean, double sd)
    {
        double LogLikelihood(double m, double s) =>
            readings.Sum(reading =>
            {
                var z = (reading.Value - m) / s;
                return reading.Censoring switch
                {
                    Censoring.Exact => -z * z / 2 - Math.Log(s),
                    Censoring.AtMost => Math.Log(Math.Max(Normal.CDF(0, 1, z), 1e-300)),
                    _ => Math.Log(Math.Max(Normal.CDF(0, 1, -z), 1e-300)),
                };
            });
        var h = 1e-3 * sd;
        var top = LogLikelihood(mean, sd);
        double mm = (LogLikelihood(mean + h, sd) - 2 * top + LogLikelihood(mean - h, sd)) / (h * h),
            ss = (LogLikelihood(mean, sd + h) - 2 * top + LogLikelihood(mean, sd - h)) / (h * h),
            ms =
                (
                    LogLikelihood(mean + h, sd + h)
                    - LogLikelihood(mean + h, sd - h)
                    - LogLikelihood(mean - h, sd + h)
                    + LogLikelihood(mean - h, sd - h)
                ) / (4 * h * h);
        var determinant = mm * ss - ms * ms;
        return new(new(mean, Math.Sqrt(-ss / determinant)), new(sd, Math.Sqrt(-mm / determinant)));
    }
}

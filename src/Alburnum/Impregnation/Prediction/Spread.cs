using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Three points of a distribution.</summary>
/// <param name="Low">A twentieth lies below.</param>
/// <param name="Middle">Half lies below.</param>
/// <param name="High">A twentieth lies above.</param>
public readonly record struct Spread(double Low, double Middle, double High)
{
    /// <summary>What lies below <see cref="Low"/>, and above <see cref="High"/>, as a share.</summary>
    private const double Tail = 0.05;

    /// <summary>How far a normal distribution's twentieth lies from its middle, in standard deviations: its 0.95 quantile.</summary>
    internal const double NormalDeviations = 1.645;

    /// <summary>Standard deviation, were the distribution normal.</summary>
    public double NormalDeviation() => (High - Low) / (2 * NormalDeviations);

    internal static Spread Of(double[] values)
    {
        Array.Sort(values);
        return new(Quantiles.Of(values, Tail), Quantiles.Of(values, 0.5), Quantiles.Of(values, 1 - Tail));
    }
}

using Alburnum.Acceptance.Variables;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance.History;

/// <summary>How far a plant's mean lies above a lower limit, in units of three standard deviations.</summary>
/// <param name="Index">(mean − limit)/(3·s), the one-sided capability index.</param>
/// <param name="LowerBound">Lower 95 % confidence bound on the index.</param>
/// <param name="ShareBelow">Share of charges expected below the limit if normal, 0 to 1.</param>
public sealed record Capability(double Index, double LowerBound, double ShareBelow)
{
    private const int ExactUpTo = 2000;
    private const double Confidence = 0.95;

    /// <summary>Capability of a measure against a lower limit.</summary>
    /// <param name="count">Charges, 2 or more.</param>
    /// <param name="mean">Their mean.</param>
    /// <param name="standardDeviation">Their standard deviation, above 0.</param>
    /// <param name="lowerLimit">Least value that conforms, same unit.</param>
    /// <remarks>The bound is exact (non-central t) up to 2000 charges, beyond them from the large-sample variance of the index.</remarks>
    public static Capability Of(long count, double mean, double standardDeviation, double lowerLimit)
    {
        Require.InRange(count, 2, long.MaxValue, "charges");
        var distance = (mean - lowerLimit) / Require.Positive(standardDeviation, "");
        var root = Math.Sqrt(count);
        var exact = count <= ExactUpTo && Math.Abs(distance * root) < 900;
        var bound = exact
            ? NonCentralT.ShiftFor(Confidence, distance * root, count - 1) / root
            : distance - Normal.InvCDF(0, 1, Confidence) * Math.Sqrt(1.0 / count + distance * distance / (2.0 * count));
        return new(distance / 3, bound / 3, Normal.CDF(0, 1, -distance));
    }
}

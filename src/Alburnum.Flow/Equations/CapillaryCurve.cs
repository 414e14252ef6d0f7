namespace Alburnum.Flow.Equations;

/// <summary>Pull of the liquid into the smaller voids: air pressure less liquid pressure, by saturation.</summary>
/// <remarks>
/// pc(S) = s·(S^−½ − 1), continued as a straight line below S = 0.05. One parameter, because no more is known: the scale s
/// is of the order 2γ/r of the cavities (9.7 kPa for a radius of 15 µm and water that wets fully).
/// </remarks>
public sealed record CapillaryCurve
{
    private const double Floor = 0.05;

    /// <summary>Checks the scale.</summary>
    /// <param name="scaleKPa">The scale s, kPa. 0 (no capillarity) to 1000.</param>
    public CapillaryCurve(double scaleKPa) => ScaleKPa = Require.InRange(scaleKPa, 0, 1000, "kPa");

    /// <summary>The scale s, kPa.</summary>
    public double ScaleKPa { get; }

    /// <summary>Capillary pressure at a saturation of 0 to 1, and its slope by saturation, kPa.</summary>
    internal (double KPa, double Slope) At(double saturation)
    {
        var s = Math.Max(saturation, Floor);
        var root = 1 / Math.Sqrt(s);
        var slope = -0.5 * ScaleKPa * root / s;
        return (ScaleKPa * (root - 1) + slope * (saturation - s), slope);
    }
}

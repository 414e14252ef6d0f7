using Alburnum.Facts;

namespace Alburnum.Impregnation;

/// <summary>The share of wood's volume that liquid can still enter.</summary>
public static class VoidFraction
{
    /// <summary>Void share of the volume, at most 1; below 0 where wood so dense holds no such moisture.</summary>
    /// <param name="specificGravity">Ovendry mass over volume at that moisture content. 0.05 to 1.4.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 250.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    /// <remarks>1 − G·(0.667 + 0.01·M): Siau's form, remembered. What remains is air.</remarks>
    public static double Of(double specificGravity, double moisturePercent)
    {
        Require.InRange(specificGravity, 0.05, 1.4, "(ratio)");
        Require.Within(moisturePercent, Ranges.MoisturePercent);
        return 1 - specificGravity * (0.667 + 0.01 * moisturePercent);
    }
}

using Alburnum.Facts;

namespace Alburnum.Impregnation;

/// <summary>The share of wood's volume that liquid can still enter.</summary>
public static class VoidFraction
{
    /// <summary>Void share of the volume, 0 to 1.</summary>
    /// <param name="specificGravity">Ovendry mass over volume at that moisture content. 0.05 to 1.4.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 250.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or more water than the cavities hold.</exception>
    /// <remarks>1 − G·(0.667 + 0.01·M): Siau's form, remembered. What remains is air.</remarks>
    public static double Of(double specificGravity, double moisturePercent)
    {
        Require.InRange(specificGravity, 0.05, 1.4, "(ratio)");
        Require.Within(moisturePercent, Ranges.MoisturePercent);
        return Require.InRange(
            Left(specificGravity, moisturePercent),
            0,
            1,
            "(share of the volume; the moisture is above saturation)",
            nameof(moisturePercent)
        );
    }

    /// <summary>The same; below 0 where the wood is so dense or so wet that nothing is left.</summary>
    internal static double Left(double specificGravity, double moisturePercent) =>
        1 - specificGravity * (0.667 + 0.01 * moisturePercent);
}

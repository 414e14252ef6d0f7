namespace Alburnum.Impregnation;

/// <summary>The share of wood's volume that liquid can still enter.</summary>
public static class VoidFraction
{
    /// <summary>Specific gravity of the cell wall used here, so that 1/1.5 = 0.667.</summary>
    public const double WallSpecificGravity = 1.5;

    /// <summary>Void share of the volume, 0 to 1.</summary>
    /// <param name="specificGravity">Ovendry mass over volume at that moisture content. 0.05 to 1.4.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 300.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or more water than the cavities hold.</exception>
    /// <remarks>1 − G·(0.667 + 0.01·M): Siau's form, remembered. What remains is air.</remarks>
    public static double Of(double specificGravity, double moisturePercent)
    {
        Require.InRange(specificGravity, 0.05, 1.4, "(ratio)");
        Require.InRange(moisturePercent, 0, 300, "%");
        var air = 1 - specificGravity * (0.667 + 0.01 * moisturePercent);
        return Require.InRange(
            air,
            0,
            1,
            "(share of the volume; the moisture is above saturation)",
            nameof(moisturePercent)
        );
    }

    /// <summary>The same with a wall specific gravity of one's own, for comparing the two values in use (1.50 and 1.53).</summary>
    /// <param name="specificGravity">Ovendry mass over volume at that moisture content. 0.05 to 1.4.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 300.</param>
    /// <param name="wallSpecificGravity">Specific gravity of the wall, 1.4 to 1.6.</param>
    public static double Of(double specificGravity, double moisturePercent, double wallSpecificGravity)
    {
        Require.InRange(wallSpecificGravity, 1.4, 1.6, "(ratio)");
        var air = 1 - specificGravity * (1 / wallSpecificGravity + 0.01 * moisturePercent);
        return Require.InRange(
            air,
            0,
            1,
            "(share of the volume; the moisture is above saturation)",
            nameof(moisturePercent)
        );
    }

    /// <summary>Most solution the voids could take, L/m³ of wood, with a share of them filled.</summary>
    /// <param name="voidFraction">Void share of the volume, 0 to 1.</param>
    /// <param name="filled">Share of the voids that fills, 0 to 1.</param>
    /// <remarks>A bound, not a prediction: resistant wood takes far less.</remarks>
    public static double GreatestUptakeLPerM3(double voidFraction, double filled = 1) =>
        1000 * Require.InRange(voidFraction, 0, 1, "(share)") * Require.InRange(filled, 0, 1, "(share)");
}

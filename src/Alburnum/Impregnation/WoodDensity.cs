using Alburnum.Facts;

namespace Alburnum.Impregnation;

/// <summary>Mass and volume of wood at a moisture content, from its basic specific gravity.</summary>
/// <remarks>
/// Definitions as in the Wood Handbook (FPL-GTR-190, 2010), chapter 4: basic specific gravity is ovendry mass over green
/// volume, against water at 1000 kg/m³. Derivations in docs/science/flow.md.
/// </remarks>
public static class WoodDensity
{
    /// <summary>Fibre saturation taken for the shrinkage line, %. Wood Handbook eq. 4-7 uses 30 %.</summary>
    public const double FibreSaturationPercent = 30;

    /// <summary>Volumetric shrinkage from green to a moisture content, %.</summary>
    /// <param name="greenToOvendryPercent">Shrinkage from green to ovendry, %. 0 to 40.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 250.</param>
    /// <remarks>Linear below fibre saturation, 0 above (Wood Handbook eq. 4-7).</remarks>
    public static double ShrinkagePercent(double greenToOvendryPercent, double moisturePercent)
    {
        Require.InRange(greenToOvendryPercent, 0, 40, "%");
        Require.Within(moisturePercent, Ranges.MoisturePercent);
        return greenToOvendryPercent * Math.Max(0, 1 - moisturePercent / FibreSaturationPercent);
    }

    /// <summary>Volumetric shrinkage from green to ovendry where the species' own is not known, %.</summary>
    /// <remarks>26.5·Gb, remembered from the Wood Handbook (eq. 4-10).</remarks>
    public static double UsualShrinkagePercent(double basicSpecificGravity) =>
        26.5 * Require.InRange(basicSpecificGravity, 0.05, 1.2, "(ratio)");

    /// <summary>Specific gravity (ovendry mass over volume) at a moisture content.</summary>
    /// <param name="basicSpecificGravity">Ovendry mass over green volume. 0.05 to 1.2.</param>
    /// <param name="greenToOvendryPercent">Volumetric shrinkage from green to ovendry, %. 0 to 40.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 250.</param>
    public static double SpecificGravity(
        double basicSpecificGravity,
        double greenToOvendryPercent,
        double moisturePercent
    ) =>
        Require.InRange(basicSpecificGravity, 0.05, 1.2, "(ratio)")
        / (1 - ShrinkagePercent(greenToOvendryPercent, moisturePercent) / 100);

    /// <summary>Density with its water, kg/m³: mass and volume both at the moisture content.</summary>
    /// <param name="specificGravity">Ovendry mass over volume at that moisture content. 0.05 to 1.4.</param>
    /// <param name="moisturePercent">Moisture content, %. 0 to 250.</param>
    public static double KgPerM3(double specificGravity, double moisturePercent) =>
        1000
        * Require.InRange(specificGravity, 0.05, 1.4, "(ratio)")
        * (1 + Require.Within(moisturePercent, Ranges.MoisturePercent) / 100);

    /// <summary>Greatest moisture content wood can hold, %: walls saturated and every cavity full.</summary>
    /// <param name="basicSpecificGravity">Ovendry mass over green volume. 0.05 to 1.2.</param>
    /// <remarks>100·(1.54 − Gb)/(1.54·Gb), remembered from the Wood Handbook; 1.54 is the specific gravity of the wall.</remarks>
    public static double GreatestMoisturePercent(double basicSpecificGravity)
    {
        const double wall = 1.54;
        Require.InRange(basicSpecificGravity, 0.05, 1.2, "(ratio)");
        return 100 * (wall - basicSpecificGravity) / (wall * basicSpecificGravity);
    }

    /// <summary>Basic specific gravity from a density at 12 % moisture, with the usual shrinkage.</summary>
    /// <param name="kgPerM3At12">Density at 12 % moisture, kg/m³. 80 to 1400.</param>
    /// <remarks>G12 = ρ12/1120 and Gb = G12/(1 + 0.159·G12), which undoes <see cref="SpecificGravity"/> with 26.5·Gb.</remarks>
    public static double BasicFrom12(double kgPerM3At12)
    {
        var at12 = Require.Within(kgPerM3At12, Ranges.DensityKgPerM3) / 1120;
        return at12 / (1 + 0.265 * (1 - 12 / FibreSaturationPercent) * at12);
    }
}

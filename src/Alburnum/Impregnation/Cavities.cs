namespace Alburnum.Impregnation;

/// <summary>The cavities of wood at a moisture content, and the free water in them.</summary>
/// <param name="Share">Share of the volume that is cavity, air and free water together.</param>
/// <param name="WaterShare">Share of the cavities that holds free water, 0 below fibre saturation.</param>
/// <param name="OverSaturated">The share over that of the same wood at fibre saturation, 1 or more: walls that dry leave wider ways.</param>
public sealed record Cavities(double Share, double WaterShare, double OverSaturated)
{
    /// <summary>The cavities of wood at a moisture content.</summary>
    /// <param name="basicSpecificGravity">Ovendry mass over green volume. 0.05 to 1.2.</param>
    /// <param name="greenToOvendryPercent">Volumetric shrinkage from green to ovendry, %. 0 to 40.</param>
    /// <param name="moisturePercent">Moisture content, %; below saturation.</param>
    /// <remarks>Walls take up water to fibre saturation; what comes after lies free in the cavities. <see cref="VoidFraction"/> is what of them holds air.</remarks>
    public static Cavities Of(double basicSpecificGravity, double greenToOvendryPercent, double moisturePercent)
    {
        // In very dense wood the cavities are full before the walls are.
        var walls = Math.Min(
            WoodDensity.FibreSaturationPercent,
            Most * WoodDensity.GreatestMoisturePercent(basicSpecificGravity)
        );
        var bound = Math.Min(moisturePercent, walls);
        var gravity = WoodDensity.SpecificGravity(basicSpecificGravity, greenToOvendryPercent, bound);
        var saturated = VoidFraction.Left(
            WoodDensity.SpecificGravity(basicSpecificGravity, greenToOvendryPercent, walls),
            walls
        );
        var share = Math.Max(0, VoidFraction.Left(gravity, bound));
        // Next to no cavities, dry or saturated: there are no ways to be wide.
        if (saturated < LeastShare || share < LeastShare)
            return new(Math.Min(share, Math.Max(0, saturated)), 0, 1);
        return new(share, gravity * (moisturePercent - bound) / 100 / share, share / saturated);
    }

    /// <summary>Wood with less cavity than this share of its volume has no room for solution. Our own choice.</summary>
    public const double LeastShare = 0.02;

    /// <summary>Wood as wet as this share of saturation has next to no room left for solution. Our own choice.</summary>
    public const double Most = 0.9;
}

namespace Alburnum.Timber;

/// <summary>A border of even depth around a section.</summary>
public static class SectionBorder
{
    /// <summary>Share of a section's area within the border, 0 to 1.</summary>
    /// <param name="section">The section.</param>
    /// <param name="depthMm">Depth of the border, mm. 0 or more; the whole section where fronts from all faces meet.</param>
    public static double Share(Section section, double depthMm) =>
        section switch
        {
            RectangularSection sawn => 1
                - Math.Max(0, sawn.WidthMm - 2 * depthMm) * Math.Max(0, sawn.HeightMm - 2 * depthMm) / sawn.AreaMm2,
            RoundSection round => 1 - Math.Pow(Math.Max(0, 1 - 2 * depthMm / round.DiameterMm), 2),
            HalfRoundSection half => 1 - 2 * Corner(half.DiameterMm / 2 - depthMm, depthMm, 0) / half.AreaMm2,
            QuarteredSection quarter => 1
                - Corner(quarter.DiameterMm / 2 - depthMm, depthMm, depthMm) / quarter.AreaMm2,
            _ => throw new ArgumentOutOfRangeException(nameof(section), section, "Not a section."),
        };

    /// <summary>Depth of the place that lies farthest from every face, mm: where fronts from all faces meet.</summary>
    /// <param name="section">The section.</param>
    public static double DeepestMm(Section section) =>
        section is QuarteredSection quarter ? quarter.DiameterMm / 2 / (1 + Math.Sqrt(2)) : section.ThicknessMm / 2;

    /// <summary>Area of a disc's quarter beyond two lines parallel to its straight sides, mm².</summary>
    private static double Corner(double radiusMm, double fromXMm, double fromYMm)
    {
        if (double.Hypot(fromXMm, fromYMm) >= radiusMm)
            return 0;
        // ∫ (√(r² − x²) − y₀) dx from x₀ to where the arc meets y₀.
        double Below(double x) =>
            (x * Math.Sqrt(radiusMm * radiusMm - x * x) + radiusMm * radiusMm * Math.Asin(x / radiusMm)) / 2;
        var toXMm = Math.Sqrt(radiusMm * radiusMm - fromYMm * fromYMm);
        return Below(toXMm) - Below(fromXMm) - fromYMm * (toXMm - fromXMm);
    }
}

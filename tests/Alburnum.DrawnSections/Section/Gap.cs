namespace Alburnum.DrawnSections;

/// <summary>Where a check gapes at the rim: a wedge, open outwards.</summary>
/// <param name="Tip">Where it closes.</param>
/// <param name="Angle">Direction in which it opens, radians.</param>
/// <param name="LengthMm">From the tip to the rim.</param>
/// <param name="WidthMm">Its width at the rim.</param>
public readonly record struct Gap(Point Tip, double Angle, double LengthMm, double WidthMm)
{
    /// <summary>How far outside the wedge a point lies, mm; below 0 in it.</summary>
    public double OutsideMm(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var (dx, dy) = (x - Tip.X, y - Tip.Y);
        var along = dx * cos + dy * sin;
        return along < 0
            ? Math.Sqrt(dx * dx + dy * dy)
            : Math.Abs(dy * cos - dx * sin) - along / LengthMm * WidthMm / 2;
    }
}

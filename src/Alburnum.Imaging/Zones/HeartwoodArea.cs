using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Zones;

/// <summary>The heartwood on the section, with what else it could be: each alternative has one of its causes moved by a standard uncertainty.</summary>
internal sealed record HeartwoodArea(Func<PointMm, bool> Contains, IReadOnlyList<Func<PointMm, bool>> Alternatives)
{
    /// <summary>Standard uncertainty of a border or point shown by hand, mm: a growth ring is not told closer by eye.</summary>
    public const double ByHandMm = 0.7;

    /// <summary>From what the user showed; null where it cannot be a border.</summary>
    public static HeartwoodArea? Of(HeartwoodBorder border, Homography pxToMm)
    {
        PointMm Mm(PointPx p)
        {
            var at = pxToMm.Map(p);
            return new(at.X, at.Y);
        }
        return border switch
        {
            OutlinedHeartwood outlined => Outlined([.. outlined.PolygonPx.Select(Mm)]),
            RingOfHeartwood ring => Ring([.. ring.PointsPx.Select(Mm)]),
            HeartwoodAboutPith about => AboutPith(Mm(about.PithPx), about.RadiusMm),
            _ => throw new ArgumentOutOfRangeException(nameof(border), border, "Not a border."),
        };
    }

    private static HeartwoodArea? Outlined(PointMm[] corners)
    {
        if (corners.Length < 3)
            return null;
        var (mx, my) = (corners.Average(p => p.X), corners.Average(p => p.Y));
        var radius = corners.Average(p => double.Hypot(p.X - mx, p.Y - my));
        if (!(radius > 1))
            return null;
        Func<PointMm, bool> Grown(double byMm)
        {
            var k = 1 + (byMm / radius);
            PointMm[] grown = [.. corners.Select(p => new PointMm(mx + (k * (p.X - mx)), my + (k * (p.Y - my))))];
            return p => Inside(grown, p);
        }
        return new(Grown(0), [Grown(ByHandMm)]);
    }

    private static HeartwoodArea? Ring(PointMm[] points)
    {
        if (points.Length < 3 || Circle.Through(points) is not { } circle)
            return null;
        var alternatives = new List<Func<PointMm, bool>>();
        for (var i = 0; i < points.Length; i++)
        {
            // Only a step across the ring changes it.
            var (x, y) = ((points[i].X - circle.X) / circle.RadiusMm, (points[i].Y - circle.Y) / circle.RadiusMm);
            PointMm[] moved = [.. points];
            moved[i] = new(points[i].X + (ByHandMm * x), points[i].Y + (ByHandMm * y));
            if (Circle.Through(moved) is not { } other)
                return null;
            alternatives.Add(other.Contains);
        }
        return new(circle.Contains, alternatives);
    }

    private static HeartwoodArea AboutPith(PointMm pith, double radiusMm)
    {
        var circle = new Circle(pith.X, pith.Y, radiusMm);
        return new(
            circle.Contains,
            [
                (circle with { X = circle.X + ByHandMm }).Contains,
                (circle with { Y = circle.Y + ByHandMm }).Contains,
                (circle with { RadiusMm = circle.RadiusMm + ByHandMm }).Contains,
            ]
        );
    }

    private static bool Inside(PointMm[] corners, PointMm p)
    {
        var inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var (a, b) = (corners[i], corners[j]);
            if (a.Y > p.Y != b.Y > p.Y && p.X < ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)) + a.X)
                inside = !inside;
        }
        return inside;
    }
}

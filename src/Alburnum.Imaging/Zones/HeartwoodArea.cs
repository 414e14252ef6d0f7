using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Zones;

/// <summary>The heartwood on the section, with what else it could be: each alternative has one of its causes moved by a standard uncertainty.</summary>
/// <param name="Contains">Whether a place is heartwood.</param>
/// <param name="Alternatives">The same, moved.</param>
/// <param name="BorderMm">Standard uncertainty of the border at a place of it, mm.</param>
internal sealed record HeartwoodArea(
    Func<PointMm, bool> Contains,
    IReadOnlyList<Func<PointMm, bool>> Alternatives,
    double BorderMm
)
{
    /// <summary>Standard uncertainty of a border or point shown by hand, mm: a growth ring is not seen closer by eye. Our own choice.</summary>
    public const double ByHandMm = 0.7;

    /// <summary>Corners nearer to their middle than this, on the mean, enclose nothing, mm. Our own choice.</summary>
    private const double LeastRadiusMm = 1;

    /// <summary>Distance between the points of a circle at which its uncertainty is taken, mm. Our own choice.</summary>
    private const double StationMm = 1;

    /// <summary>From what the user showed, where it can be a border.</summary>
    /// <param name="border">What was shown.</param>
    /// <param name="mm">From upright pixels to mm.</param>
    /// <param name="plan">The section that it lies on.</param>
    public static Outcome<HeartwoodArea, HeartwoodFault> Of(
        HeartwoodBorder border,
        Func<PointPx, PointMm> mm,
        SectionPlan plan
    )
    {
        return border switch
        {
            OutlinedHeartwood outlined => Outlined([.. outlined.PolygonPx.Select(mm)]),
            RingOfHeartwood ring => Ring([.. ring.PointsPx.Select(mm)], plan),
            HeartwoodAboutPith about => AboutPith(mm(about.PithPx), about.RadiusMm, plan),
            _ => throw new ArgumentOutOfRangeException(nameof(border), border, "Not a border."),
        };
    }

    /// <summary>From a circle seen in the photograph.</summary>
    public static HeartwoodArea Of(BorderFit seen, SectionPlan plan) =>
        OfCircle(seen.Circle, seen.Moved, seen.StrayMm, plan);

    private static Outcome<HeartwoodArea, HeartwoodFault> Outlined(PointMm[] corners)
    {
        if (corners.Length < 3)
            return HeartwoodFault.NoBorderShown;
        var (mx, my) = (corners.Average(p => p.X), corners.Average(p => p.Y));
        var radius = corners.Average(p => double.Hypot(p.X - mx, p.Y - my));
        if (!(radius > LeastRadiusMm))
            return HeartwoodFault.NoBorderShown;
        Func<PointMm, bool> Grown(double byMm)
        {
            var k = 1 + (byMm / radius);
            PointMm[] grown = [.. corners.Select(p => new PointMm(mx + (k * (p.X - mx)), my + (k * (p.Y - my))))];
            return p => Inside(grown, p);
        }
        return new HeartwoodArea(Grown(0), [Grown(ByHandMm)], ByHandMm);
    }

    private static Outcome<HeartwoodArea, HeartwoodFault> Ring(PointMm[] points, SectionPlan plan)
    {
        if (points.Length < 3 || Circle.Through(points) is not { } circle)
            return HeartwoodFault.NoBorderShown;
        var alternatives = new List<Circle>();
        for (var i = 0; i < points.Length; i++)
        {
            // Only a step across the ring changes it.
            var (x, y) = ((points[i].X - circle.X) / circle.RadiusMm, (points[i].Y - circle.Y) / circle.RadiusMm);
            PointMm[] moved = [.. points];
            moved[i] = new(points[i].X + (ByHandMm * x), points[i].Y + (ByHandMm * y));
            if (Circle.Through(moved) is not { } other)
                return HeartwoodFault.NoBorderShown;
            alternatives.Add(other);
        }
        return OfCircle(circle, alternatives, _ => 0, plan);
    }

    private static HeartwoodArea AboutPith(PointMm pith, double radiusMm, SectionPlan plan)
    {
        var circle = new Circle(pith.X, pith.Y, radiusMm);
        return OfCircle(
            circle,
            [
                new(circle.X + ByHandMm, circle.Y, radiusMm),
                new(circle.X, circle.Y + ByHandMm, radiusMm),
                new(circle.X, circle.Y, radiusMm + ByHandMm),
            ],
            _ => 0,
            plan
        );
    }

    private static HeartwoodArea OfCircle(
        Circle circle,
        IReadOnlyList<Circle> moved,
        Func<PointMm, double> strayMm,
        SectionPlan plan
    )
    {
        var inside = circle.Line(StationMm).Where(p => plan.InwardMm(p) > 0).ToList();
        var squares = inside.Select(p =>
            (strayMm(p) * strayMm(p)) + moved.Sum(other => other.OutsideMm(p) * other.OutsideMm(p))
        );
        return new(
            circle.Contains,
            [.. moved.Select(other => (Func<PointMm, bool>)other.Contains)],
            Math.Sqrt(squares.DefaultIfEmpty(0).Average())
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

using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Zones;

/// <summary>A growth ring as a circle in mm.</summary>
internal readonly record struct Circle(double X, double Y, double RadiusMm)
{
    /// <summary>Points drawn of a circle: no fewer, and no more however large it is. Our own choice.</summary>
    private static readonly (int Least, int Most) LinePoints = (12, 20_000);

    /// <summary>Points within a hair of a line put the centre nowhere: a determinant below this share of the squared sum of squares. Our own choice.</summary>
    private const double LeastSpread = 1e-6;

    public bool Contains(PointMm p) => OutsideMm(p) < 0;

    /// <summary>Distance outside the circle, mm; negative inside.</summary>
    public double OutsideMm(PointMm p) => double.Hypot(p.X - X, p.Y - Y) - RadiusMm;

    /// <summary>Points all round, about a step apart.</summary>
    public IEnumerable<PointMm> Line(double stepMm)
    {
        var count = (int)Math.Clamp(2 * Math.PI * RadiusMm / stepMm, LinePoints.Least, LinePoints.Most);
        for (var k = 0; k <= count; k++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * k / count);
            yield return new(X + (RadiusMm * cos), Y + (RadiusMm * sin));
        }
    }

    /// <summary>The circle nearest to some points (I. Kåsa, IEEE Transactions on Instrumentation and Measurement 25, 1976); null where they lie on a line.</summary>
    public static Circle? Through(IReadOnlyList<PointMm> points)
    {
        var (mx, my) = (points.Average(p => p.X), points.Average(p => p.Y));
        double xx = 0,
            xy = 0,
            yy = 0,
            xr = 0,
            yr = 0,
            rr = 0;
        foreach (var p in points)
        {
            var (x, y) = (p.X - mx, p.Y - my);
            var r = (x * x) + (y * y);
            (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
            (xr, yr, rr) = (xr + (x * r), yr + (y * r), rr + r);
        }
        var determinant = (xx * yy) - (xy * xy);
        if (!(determinant > LeastSpread * (xx + yy) * (xx + yy)))
            return null;
        var (a, b) = (((xr * yy) - (yr * xy)) / determinant / 2, ((yr * xx) - (xr * xy)) / determinant / 2);
        return new(mx + a, my + b, Math.Sqrt((rr / points.Count) + (a * a) + (b * b)));
    }
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Draws a rough outline to the true edge, to a fraction of a pixel.</summary>
internal static class OutlineSnap
{
    /// <summary>Straight sides: on each, the line along which most of the picture changes.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="corners">Rough corners, clockwise.</param>
    /// <param name="reachPx">How far a side may move.</param>
    public static FoundOutline Sides(Photograph photo, IReadOnlyList<PointPx> corners, double reachPx)
    {
        var n = corners.Count;
        var lines = Enumerable
            .Range(0, n)
            .Select(k => SideLine.Near(photo, corners[k], corners[(k + 1) % n], reachPx, most: 1)[0])
            .ToArray();
        var points = SideLine.Corners(lines);
        for (var k = 0; k < n; k++)
            if (double.Hypot(points[k].X - corners[k].X, points[k].Y - corners[k].Y) > 3 * reachPx)
                points[k] = corners[k];
        return new(points, null, lines.Min(l => l.Support), lines.Average(l => l.SpreadPx));
    }

    /// <summary>A round rim: the ellipse that lies on most of the picture's change near a rough one.</summary>
    public static FoundOutline? Rim(Photograph photo, Ellipse rough, double reachPx)
    {
        var ellipse = rough;
        double support = 0;
        double spread = 0;
        Span<double> ofSixth = stackalloc double[6];
        var step = Math.Max(1, 0.8 / photo.StoredPerUpright);
        for (var turn = 0; turn < 3; turn++)
        {
            var reach = reachPx / (1 << turn);
            var count = 180;
            var stations = ellipse.Stations(count);
            var profile = EdgeProfile.Across(photo, stations, reach, step);
            var points = new PointPx[count];
            var weights = new double[count];
            var offsets = new double[count];
            for (var i = 0; i < count; i++)
            {
                var (peak, strength) = Peak(profile, i, (profile.Steps - 1) / 2.0, reach * 0.6 / step);
                offsets[i] = profile.OffsetPx(peak);
                var (at, nx, ny) = stations[i];
                points[i] = new(at.X + (offsets[i] * nx), at.Y + (offsets[i] * ny));
                weights[i] = Math.Min(1, strength / SideLine.Plain);
            }
            var fit = ellipse;
            var tolerance = Math.Max(1.5, reach / 2);
            for (var again = 0; again < 6; again++)
            {
                var w = new double[count];
                support = 0;
                spread = 0;
                ofSixth.Clear();
                for (var i = 0; i < count; i++)
                {
                    var off = DistanceTo(fit, points[i]) / tolerance;
                    w[i] = weights[i] / (1 + (off * off * off * off));
                    if (Math.Abs(off * tolerance) < Math.Max(2.0, 0.004 * fit.Major))
                    {
                        support += weights[i] / count;
                        ofSixth[ofSixth.Length * i / count] += weights[i] * ofSixth.Length / count;
                    }
                    spread += w[i] * off * off;
                }
                spread = Math.Sqrt(spread / Math.Max(1e-6, w.Sum())) * tolerance;
                if (Ellipse.Fit(points, w) is not { } next)
                    return null;
                fit = next;
                tolerance = Math.Max(1.2, tolerance * 0.7);
            }
            ellipse = fit;
        }
        return new(
            RimPoints(ellipse),
            ellipse,
            Math.Min(1, support),
            spread / 6,
            LeastSupport: ofSixth.ToArray().Min()
        );
    }

    /// <summary>Twenty-four points of an ellipse, clockwise as displayed, from the top.</summary>
    public static IReadOnlyList<PointPx> RimPoints(Ellipse ellipse) =>
        [.. Enumerable.Range(0, 24).Select(i => ellipse.At((2 * Math.PI * i / 24) - (Math.PI / 2) - ellipse.Angle))];

    private static double DistanceTo(Ellipse e, PointPx p)
    {
        var (sin, cos) = Math.SinCos(e.Angle);
        var (x, y) = (p.X - e.Centre.X, p.Y - e.Centre.Y);
        var (u, v) = (((x * cos) + (y * sin)) / e.Major, ((y * cos) - (x * sin)) / e.Minor);
        var r = double.Hypot(u, v);
        // Distance along the ray from the centre, near enough to the true one for round sections.
        return r > 1e-9 ? double.Hypot(x, y) * (1 - (1 / r)) : -e.Minor;
    }

    private static (double Step, double Strength) Peak(EdgeProfile profile, int station, double about, double sigma)
    {
        var best = -1;
        double value = -1;
        for (var k = 1; k < profile.Steps - 1; k++)
        {
            var off = (k - about) / sigma;
            var v = profile[station, k] * Math.Exp(-0.5 * off * off);
            if (v > value)
                (value, best) = (v, k);
        }
        return (best + profile.SubStep(station, best), profile[station, best]);
    }
}

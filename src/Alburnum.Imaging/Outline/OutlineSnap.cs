using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Draws a rough outline to the true edge, to a fraction of a pixel.</summary>
internal static class OutlineSnap
{
    /// <summary>Strength at which an edge counts as plain.</summary>
    private const double Plain = 0.25;

    /// <summary>Straight sides: on each, the line along which most of the picture changes.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="corners">Rough corners, clockwise.</param>
    /// <param name="reachPx">How far a side may move.</param>
    public static FoundOutline Sides(Photograph photo, IReadOnlyList<PointPx> corners, double reachPx)
    {
        var lines = new (PointPx At, double Dx, double Dy)[corners.Count];
        var sure = 1.0;
        double spread = 0;
        for (var k = 0; k < corners.Count; k++)
        {
            var side = Side(photo, corners[k], corners[(k + 1) % corners.Count], reachPx);
            lines[k] = (side.At, side.Dx, side.Dy);
            sure = Math.Min(sure, side.Support);
            spread += side.SpreadPx / corners.Count;
        }
        var points = new PointPx[corners.Count];
        for (var k = 0; k < corners.Count; k++)
        {
            var meet = Meet(lines[(k + corners.Count - 1) % corners.Count], lines[k]);
            var moved = double.Hypot(meet.X - corners[k].X, meet.Y - corners[k].Y);
            points[k] = moved <= 3 * reachPx ? meet : corners[k];
        }
        return new(points, null, sure, spread);
    }

    /// <summary>A round rim: the ellipse that lies on most of the picture's change near a rough one.</summary>
    public static FoundOutline? Rim(Photograph photo, Ellipse rough, double reachPx)
    {
        var ellipse = rough;
        double support = 0;
        double spread = 0;
        var step = Math.Max(1, 0.8 / photo.StoredPerUpright);
        for (var turn = 0; turn < 3; turn++)
        {
            var reach = reachPx / (1 << turn);
            var count = 180;
            var stations = new (PointPx, double, double)[count];
            for (var i = 0; i < count; i++)
            {
                var a = 2 * Math.PI * i / count;
                var (nx, ny) = ellipse.Normal(a);
                stations[i] = (ellipse.At(a), nx, ny);
            }
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
                weights[i] = Math.Min(1, strength / Plain);
            }
            var fit = ellipse;
            var tolerance = Math.Max(1.5, reach / 2);
            for (var again = 0; again < 6; again++)
            {
                var w = new double[count];
                support = 0;
                spread = 0;
                for (var i = 0; i < count; i++)
                {
                    var off = DistanceTo(fit, points[i]) / tolerance;
                    w[i] = weights[i] / (1 + (off * off * off * off));
                    if (Math.Abs(off * tolerance) < Math.Max(2.0, 0.004 * fit.Major))
                        support += weights[i] / count;
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
        return new(RimPoints(ellipse), ellipse, Math.Min(1, support), spread / 6);
    }

    /// <summary>Twenty-four points of an ellipse, clockwise as displayed, from the topmost.</summary>
    public static IReadOnlyList<PointPx> RimPoints(Ellipse ellipse)
    {
        var points = Enumerable.Range(0, 24).Select(i => ellipse.At(2 * Math.PI * i / 24)).ToList();
        var top = points.IndexOf(points.MinBy(p => p.Y));
        return [.. points.Skip(top), .. points.Take(top)];
    }

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
        return (best + SubStep(profile, station, best), profile[station, best]);
    }

    private static double SubStep(EdgeProfile profile, int station, int k)
    {
        var (p, q, r) = (profile[station, k - 1], profile[station, k], profile[station, k + 1]);
        var bend = p - (2 * q) + r;
        return bend < -1e-6 ? Math.Clamp((p - r) / (2 * bend), -0.5, 0.5) : 0;
    }

    private static (PointPx At, double Dx, double Dy, double Support, double SpreadPx) Side(
        Photograph photo,
        PointPx from,
        PointPx to,
        double reachPx
    )
    {
        var length = double.Hypot(to.X - from.X, to.Y - from.Y);
        var (dx, dy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        // Clockwise as displayed: outward is to the left of the walk.
        var (nx, ny) = (dy, -dx);
        const int Count = 64;
        var stations = new (PointPx, double, double)[Count];
        var along = new double[Count];
        for (var i = 0; i < Count; i++)
        {
            along[i] = length * (0.04 + (0.92 * i / (Count - 1)));
            stations[i] = (new(from.X + (along[i] * dx), from.Y + (along[i] * dy)), nx, ny);
        }
        var step = Math.Max(1, 0.8 / photo.StoredPerUpright);
        var profile = EdgeProfile.Across(photo, stations, reachPx, step);
        // Every line by its distance at both ends, coarse first; each station counts up to a plain edge.
        var middle = (profile.Steps - 1) / 2.0;
        double best = -1;
        double bestA = middle;
        double bestB = middle;
        for (var a = 0.0; a < profile.Steps; a++)
        {
            for (var b = 0.0; b < profile.Steps; b++)
            {
                var score = Score(profile, a, b, middle);
                if (score > best)
                    (best, bestA, bestB) = (score, a, b);
            }
        }
        // Then a line through the peaks near it.
        for (var turn = 0; turn < 4; turn++)
        {
            double sw = 0,
                sx = 0,
                sxx = 0,
                sy = 0,
                sxy = 0;
            for (var i = 0; i < Count; i++)
            {
                var x = i / (Count - 1.0);
                var line = bestA + ((bestB - bestA) * x);
                var (peak, strength) = NearPeak(profile, i, line);
                if (strength <= 0)
                    continue;
                var off = (peak - line) / 1.0;
                var w = Math.Min(1, strength / Plain) / (1 + (off * off));
                (sw, sx, sxx, sy, sxy) = (
                    sw + w,
                    sx + (w * x),
                    sxx + (w * x * x),
                    sy + (w * peak),
                    sxy + (w * x * peak)
                );
            }
            var det = (sw * sxx) - (sx * sx);
            if (!(det > 1e-6))
                break;
            var slope = ((sw * sxy) - (sx * sy)) / det;
            var level = (sy - (slope * sx)) / sw;
            (bestA, bestB) = (level, level + slope);
        }
        double support = 0;
        double spread = 0;
        for (var i = 0; i < Count; i++)
        {
            var line = bestA + ((bestB - bestA) * i / (Count - 1.0));
            var (peak, strength) = NearPeak(profile, i, line);
            var w = Math.Min(1, strength / Plain);
            if (Math.Abs(peak - line) < 1.5)
                support += w / Count;
            spread += w * (peak - line) * (peak - line) / Count;
        }
        var (oa, ob) = (profile.OffsetPx(bestA), profile.OffsetPx(bestB));
        PointPx p = new(from.X + (along[0] * dx) + (oa * nx), from.Y + (along[0] * dy) + (oa * ny));
        PointPx q = new(from.X + (along[^1] * dx) + (ob * nx), from.Y + (along[^1] * dy) + (ob * ny));
        var l = double.Hypot(q.X - p.X, q.Y - p.Y);
        return (p, (q.X - p.X) / l, (q.Y - p.Y) / l, support, Math.Max(0.1, Math.Sqrt(spread) * step / 4));
    }

    private static double Score(EdgeProfile profile, double a, double b, double middle)
    {
        double score = 0;
        for (var i = 0; i < profile.Stations; i += 2)
            score += Math.Min(Plain, profile.At(i, a + ((b - a) * i / (profile.Stations - 1.0))));
        // The user pointed near the edge: a little is taken off for going far.
        var off = (Math.Abs(a - middle) + Math.Abs(b - middle)) / (2 * middle);
        return score * (1 - (0.25 * off * off));
    }

    private static (double Peak, double Strength) NearPeak(EdgeProfile profile, int station, double line)
    {
        var low = Math.Max(1, (int)Math.Ceiling(line - 2.5));
        var high = Math.Min(profile.Steps - 2, (int)Math.Floor(line + 2.5));
        var best = -1;
        for (var k = low; k <= high; k++)
            if (best < 0 || profile[station, k] > profile[station, best])
                best = k;
        return best < 0 ? (line, 0) : (best + SubStep(profile, station, best), profile[station, best]);
    }

    private static PointPx Meet((PointPx At, double Dx, double Dy) p, (PointPx At, double Dx, double Dy) q)
    {
        var cross = (p.Dx * q.Dy) - (p.Dy * q.Dx);
        if (Math.Abs(cross) < 1e-6)
            return q.At;
        var t = (((q.At.X - p.At.X) * q.Dy) - ((q.At.Y - p.At.Y) * q.Dx)) / cross;
        return new(p.At.X + (t * p.Dx), p.At.Y + (t * p.Dy));
    }
}

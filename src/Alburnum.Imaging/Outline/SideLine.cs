using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>A straight line along which the picture changes.</summary>
/// <param name="At">A point on it.</param>
/// <param name="Dx">Direction.</param>
/// <param name="Dy">Direction.</param>
/// <param name="Support">Share of the side along which a plain edge lies on the line, 0 to 1.</param>
/// <param name="SpreadPx">Standard uncertainty of its place, px.</param>
internal readonly record struct SideLine(PointPx At, double Dx, double Dy, double Support, double SpreadPx)
{
    /// <summary>Strength at which an edge counts as plain.</summary>
    public const double Plain = 0.25;

    private const int Stations = 64;

    /// <summary>The lines near a rough side, the best supported first, at most a number of them.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="from">Start of the rough side.</param>
    /// <param name="to">End of the rough side; the wood lies on the right of the walk.</param>
    /// <param name="reachPx">How far a line may lie from the rough side.</param>
    /// <param name="most">How many lines at most.</param>
    public static IReadOnlyList<SideLine> Near(Photograph photo, PointPx from, PointPx to, double reachPx, int most)
    {
        var length = double.Hypot(to.X - from.X, to.Y - from.Y);
        var (dx, dy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var (nx, ny) = (dy, -dx);
        var stations = new (PointPx, double, double)[Stations];
        var along = new double[Stations];
        for (var i = 0; i < Stations; i++)
        {
            along[i] = length * (0.04 + (0.92 * i / (Stations - 1)));
            stations[i] = (new(from.X + (along[i] * dx), from.Y + (along[i] * dy)), nx, ny);
        }
        // A wide search is made in coarser steps, some two hundred at most.
        var step = Math.Max(Math.Max(1, 0.8 / photo.StoredPerUpright), reachPx / 60);
        var profile = EdgeProfile.Across(photo, stations, reachPx, step);
        var found = new List<SideLine>();
        var seen = new List<(double A, double B)>();
        foreach (var (a, b) in Ridges(profile, most == 1 ? 1 : 2 * most))
        {
            var (bestA, bestB) = Settle(profile, a, b);
            var (support, spread) = Supported(profile, bestA, bestB);
            var (oa, ob) = (profile.OffsetPx(bestA), profile.OffsetPx(bestB));
            PointPx p = new(from.X + (along[0] * dx) + (oa * nx), from.Y + (along[0] * dy) + (oa * ny));
            PointPx q = new(from.X + (along[^1] * dx) + (ob * nx), from.Y + (along[^1] * dy) + (ob * ny));
            var l = double.Hypot(q.X - p.X, q.Y - p.Y);
            // Two rough lines may settle on the same edge.
            if (seen.Any(s => Math.Abs(s.A - bestA) + Math.Abs(s.B - bestB) < 1.5))
                continue;
            seen.Add((bestA, bestB));
            if (found.Count == most)
                break;
            found.Add(new(p, (q.X - p.X) / l, (q.Y - p.Y) / l, support, Math.Max(0.1, spread * step / 4)));
        }
        return found;
    }

    /// <summary>Where neighbouring lines meet: corner k is the start of side k.</summary>
    public static PointPx[] Corners(IReadOnlyList<SideLine> lines)
    {
        var corners = new PointPx[lines.Count];
        for (var k = 0; k < corners.Length; k++)
            corners[k] = Meet(lines[(k + corners.Length - 1) % corners.Length], lines[k]);
        return corners;
    }

    // Every line by its distance at both ends; the greatest scores that are not close to a greater one.
    private static List<(double A, double B)> Ridges(EdgeProfile profile, int most)
    {
        var n = profile.Steps;
        var middle = (n - 1) / 2.0;
        var scores = new float[n * n];
        // No side of a section that is photographed as advised turns by more than this between its ends.
        for (var a = 0; a < n; a++)
        for (var b = 0; b < n; b++)
            scores[(a * n) + b] = (float)Score(profile, a, b, middle);
        var ridges = new List<(double A, double B)>();
        var apart = Math.Max(3, n / 24);
        while (ridges.Count < most)
        {
            var best = 0;
            for (var i = 1; i < scores.Length; i++)
                if (scores[i] > scores[best])
                    best = i;
            if (scores[best] <= 0 && ridges.Count > 0)
                break;
            var (a, b) = (best / n, best % n);
            ridges.Add((a, b));
            for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                if (Math.Abs(i + j - a - b) < 2 * apart)
                    scores[(i * n) + j] = -1;
        }
        return ridges;
    }

    private static double Score(EdgeProfile profile, double a, double b, double middle)
    {
        double score = 0;
        for (var i = 0; i < profile.Stations; i += 2)
            score += Math.Min(Plain, profile.At(i, a + ((b - a) * i / (profile.Stations - 1.0))));
        // The rough side lies near the edge: a little is taken off for going far.
        var off = (Math.Abs(a - middle) + Math.Abs(b - middle)) / (2 * middle);
        return score * (1 - (0.25 * off * off));
    }

    // A straight line through the peaks near a rough one.
    private static (double A, double B) Settle(EdgeProfile profile, double a, double b)
    {
        for (var turn = 0; turn < 4; turn++)
        {
            double sw = 0;
            double sx = 0;
            double sxx = 0;
            double sy = 0;
            double sxy = 0;
            for (var i = 0; i < profile.Stations; i++)
            {
                var x = i / (profile.Stations - 1.0);
                var line = a + ((b - a) * x);
                var (peak, strength) = Peak(profile, i, line);
                if (strength <= 0)
                    continue;
                var off = peak - line;
                var w = Math.Min(1, strength / Plain) / (1 + (off * off));
                sw += w;
                sx += w * x;
                sxx += w * x * x;
                sy += w * peak;
                sxy += w * x * peak;
            }
            var det = (sw * sxx) - (sx * sx);
            if (!(det > 1e-6))
                break;
            var slope = ((sw * sxy) - (sx * sy)) / det;
            a = (sy - (slope * sx)) / sw;
            b = a + slope;
        }
        return (a, b);
    }

    private static (double Share, double SpreadSteps) Supported(EdgeProfile profile, double a, double b)
    {
        double support = 0;
        double spread = 0;
        for (var i = 0; i < profile.Stations; i++)
        {
            var line = a + ((b - a) * i / (profile.Stations - 1.0));
            var (peak, strength) = Peak(profile, i, line);
            var w = Math.Min(1, strength / Plain);
            if (Math.Abs(peak - line) < 1.5)
                support += w / profile.Stations;
            spread += w * (peak - line) * (peak - line) / profile.Stations;
        }
        return (support, Math.Sqrt(spread));
    }

    private static (double Step, double Strength) Peak(EdgeProfile profile, int station, double line)
    {
        var low = Math.Max(1, (int)Math.Ceiling(line - 2.5));
        var high = Math.Min(profile.Steps - 2, (int)Math.Floor(line + 2.5));
        var best = -1;
        for (var k = low; k <= high; k++)
            if (best < 0 || profile[station, k] > profile[station, best])
                best = k;
        return best < 0 ? (line, 0) : (best + profile.SubStep(station, best), profile[station, best]);
    }

    private static PointPx Meet(SideLine p, SideLine q)
    {
        var cross = (p.Dx * q.Dy) - (p.Dy * q.Dx);
        if (Math.Abs(cross) < 1e-6)
            return q.At;
        var t = (((q.At.X - p.At.X) * q.Dy) - ((q.At.Y - p.At.Y) * q.Dx)) / cross;
        return new(p.At.X + (t * p.Dx), p.At.Y + (t * p.Dy));
    }
}

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
    // All figures are our own choice.

    /// <summary>Places along a side where its edge is looked for; every so many-th of them is enough to find rough lines.</summary>
    private const int Stations = 64;

    private const int RoughEvery = 2;

    /// <summary>A wide search is made in coarser steps: so many each way at most.</summary>
    private const double MostReachSteps = 60;

    /// <summary>Lines whose ends differ by less than this together are the same, steps; a point farther than this from a line does not support it.</summary>
    private const double SameSteps = 1.5;

    /// <summary>Rough lines tried for each that is wanted: several may settle on the same edge.</summary>
    private const int RoughPerLine = 2;

    /// <summary>Rough lines lie apart by one in so many of all steps, and by so many steps at least.</summary>
    private const int ApartPart = 24;

    private const int LeastApartSteps = 3;

    /// <summary>What a line loses of its score for lying as far from the rough side as is searched, as a share.</summary>
    private const double FarCost = 0.25;

    /// <summary>A peak belongs to a line so many steps or less away.</summary>
    private const double PeakSteps = 2.5;

    /// <summary>Turns in which a rough line settles on the peaks near it.</summary>
    private const int Turns = 4;

    /// <summary>Below this a determinant is 0: too few peaks for a line, or lines that run the same way.</summary>
    private const double LeastDeterminant = 1e-6;

    /// <summary>
    /// A side's place is known this many times better than its points scatter: about sixteen of them stray each by itself. Never better than the least, px.
    /// </summary>
    private const int ScatterPerUncertainty = Reading.DepthCauses.SidePart;

    private const double LeastUncertaintyPx = 0.1;

    /// <summary>Standard uncertainty of a side's place from the scatter of its points, px.</summary>
    public static double UncertaintyPx(double scatterPx) =>
        Math.Max(LeastUncertaintyPx, scatterPx / ScatterPerUncertainty);

    /// <summary>The lines near a rough side, the best supported first, at most a number of them.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="from">Start of the rough side.</param>
    /// <param name="to">End of the rough side; the wood lies on the right of the walk.</param>
    /// <param name="reachPx">How far a line may lie from the rough side.</param>
    /// <param name="most">How many lines at most.</param>
    public static IReadOnlyList<SideLine> Near(Photograph photo, PointPx from, PointPx to, double reachPx, int most)
    {
        var stations = EdgeProfile.AlongSide(from, to, Stations);
        var step = Math.Max(EdgeProfile.FinestStepPx(photo), reachPx / MostReachSteps);
        var profile = EdgeProfile.Across(photo, stations, reachPx, step);
        var found = new List<SideLine>();
        var seen = new List<(double A, double B)>();
        foreach (var (a, b) in Ridges(profile, most == 1 ? 1 : RoughPerLine * most))
        {
            var (bestA, bestB) = Settle(profile, a, b);
            var (support, spread) = Supported(profile, bestA, bestB);
            var (oa, ob) = (profile.OffsetPx(bestA), profile.OffsetPx(bestB));
            var (start, nx, ny) = stations[0];
            var end = stations[^1].At;
            PointPx p = new(start.X + (oa * nx), start.Y + (oa * ny));
            PointPx q = new(end.X + (ob * nx), end.Y + (ob * ny));
            var l = double.Hypot(q.X - p.X, q.Y - p.Y);
            // Two rough lines may settle on the same edge.
            if (seen.Any(s => Math.Abs(s.A - bestA) + Math.Abs(s.B - bestB) < SameSteps))
                continue;
            seen.Add((bestA, bestB));
            if (found.Count == most)
                break;
            found.Add(new(p, (q.X - p.X) / l, (q.Y - p.Y) / l, support, UncertaintyPx(spread * step)));
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
        var apart = Math.Max(LeastApartSteps, n / ApartPart);
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
        for (var i = 0; i < profile.Stations; i += RoughEvery)
            score += Math.Min(EdgeProfile.Plain, profile.At(i, a + ((b - a) * i / (profile.Stations - 1.0))));
        // The rough side lies near the edge: a little is taken off for going far.
        var off = (Math.Abs(a - middle) + Math.Abs(b - middle)) / (2 * middle);
        return score * (1 - (FarCost * off * off));
    }

    // A straight line through the peaks near a rough one.
    private static (double A, double B) Settle(EdgeProfile profile, double a, double b)
    {
        for (var turn = 0; turn < Turns; turn++)
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
                var w = Math.Min(1, strength / EdgeProfile.Plain) / (1 + (off * off));
                sw += w;
                sx += w * x;
                sxx += w * x * x;
                sy += w * peak;
                sxy += w * x * peak;
            }
            var det = (sw * sxx) - (sx * sx);
            if (!(det > LeastDeterminant))
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
            var w = Math.Min(1, strength / EdgeProfile.Plain);
            if (Math.Abs(peak - line) < SameSteps)
                support += w / profile.Stations;
            spread += w * (peak - line) * (peak - line) / profile.Stations;
        }
        return (support, Math.Sqrt(spread));
    }

    private static (double Step, double Strength) Peak(EdgeProfile profile, int station, double line)
    {
        var low = Math.Max(1, (int)Math.Ceiling(line - PeakSteps));
        var high = Math.Min(profile.Steps - 2, (int)Math.Floor(line + PeakSteps));
        var best = -1;
        for (var k = low; k <= high; k++)
            if (best < 0 || profile[station, k] > profile[station, best])
                best = k;
        return best < 0 ? (line, 0) : (best + profile.SubStep(station, best), profile[station, best]);
    }

    private static PointPx Meet(SideLine p, SideLine q)
    {
        var cross = (p.Dx * q.Dy) - (p.Dy * q.Dx);
        if (Math.Abs(cross) < LeastDeterminant)
            return q.At;
        var t = (((q.At.X - p.At.X) * q.Dy) - ((q.At.Y - p.At.Y) * q.Dx)) / cross;
        return new(p.At.X + (t * p.Dx), p.At.Y + (t * p.Dy));
    }
}

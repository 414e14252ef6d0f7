using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Draws a rough outline to the true edge, to a fraction of a pixel.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class OutlineSnap
{
    /// <summary>A corner that moves by more than so many times what a side may is left where it was.</summary>
    private const double MostCornerReaches = 3;

    /// <summary>Places along a rim where its edge is looked for.</summary>
    private const int Stations = 180;

    /// <summary>A rim's edge must show in each of so many parts of it.</summary>
    private const int RimParts = 6;

    /// <summary>Turns in which the edge is looked for anew, each time half as far away, and fits in each turn.</summary>
    private const int Turns = 3;

    private const int Fits = 6;

    /// <summary>Standard deviation of the bell that prefers edges near the rim, as a share of the reach.</summary>
    private const double PeakShare = 0.6;

    /// <summary>
    /// A point this far from the rim counts half, px: half the reach in the first fit, and no less than the first figure; then smaller from fit to fit,
    /// and no less than the last.
    /// </summary>
    private const double FirstTolerancePx = 1.5;

    private const double ToleranceShrink = 0.7;
    private const double LastTolerancePx = 1.2;

    /// <summary>A point supports the rim within this of it, px, or within this share of its longer half axis.</summary>
    private const double SupportPx = 2;

    private const double SupportShare = 0.004;

    /// <summary>A point nearer to the centre than this share of the rim lies in it.</summary>
    private const double LeastShare = 1e-9;

    /// <summary>Sum of weights below which there are no points.</summary>
    private const double LeastWeight = 1e-6;

    /// <summary>A rim's place is known this many times better than its points scatter: about 36 of them stray each by itself.</summary>
    private const int ScatterPerUncertainty = Reading.DepthCauses.RimPart;

    /// <summary>Points in which a rim is given: a line through them strays from the curve by less than half a thousandth of its radius.</summary>
    public const int GivenPoints = 120;

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
        double[] support = [.. lines.Select(line => line.Support)];
        for (var k = 0; k < n; k++)
        {
            if (points[k].DistanceTo(corners[k]) <= MostCornerReaches * reachPx)
                continue;
            // Lines that meet so far away are not the sides that were meant.
            points[k] = corners[k];
            support[k] = support[(k + n - 1) % n] = 0;
        }
        return new(points, null, support.Min(), lines.Average(l => l.SpreadPx)) { SideSupport = support };
    }

    /// <summary>A rim that is an ellipse: the one that lies on most of the picture's change near a rough one.</summary>
    public static Outcome<FoundOutline, NoEllipse> Rim(Photograph photo, Ellipse rough, double reachPx)
    {
        var ellipse = rough;
        double support = 0;
        double spread = 0;
        Span<double> ofPart = stackalloc double[RimParts];
        var step = EdgeProfile.FinestStepPx(photo);
        for (var turn = 0; turn < Turns; turn++)
        {
            var reach = reachPx / (1 << turn);
            var stations = ellipse.Stations(Stations);
            var profile = EdgeProfile.Across(photo, stations, reach, step);
            var points = new PointPx[Stations];
            var weights = new double[Stations];
            for (var i = 0; i < Stations; i++)
            {
                var (peak, strength) = Peak(profile, i, (profile.Steps - 1) / 2.0, reach * PeakShare / step);
                var offset = profile.OffsetPx(peak);
                var (at, nx, ny) = stations[i];
                points[i] = new(at.X + (offset * nx), at.Y + (offset * ny));
                weights[i] = Math.Min(1, strength / EdgeProfile.Plain);
            }
            var fit = ellipse;
            var tolerance = Math.Max(FirstTolerancePx, reach / 2);
            for (var again = 0; again < Fits; again++)
            {
                var w = new double[Stations];
                support = 0;
                spread = 0;
                ofPart.Clear();
                for (var i = 0; i < Stations; i++)
                {
                    var off = DistanceTo(fit, points[i]) / tolerance;
                    w[i] = weights[i] / (1 + (off * off * off * off));
                    if (Math.Abs(off * tolerance) < Math.Max(SupportPx, SupportShare * fit.Major))
                    {
                        support += weights[i] / Stations;
                        ofPart[RimParts * i / Stations] += weights[i] * RimParts / Stations;
                    }
                    spread += w[i] * off * off;
                }
                spread = Math.Sqrt(spread / Math.Max(LeastWeight, w.Sum())) * tolerance;
                if (!Ellipse.Fit(points, w).Has(out var next, out var noEllipse))
                    return noEllipse;
                fit = next;
                tolerance = Math.Max(LastTolerancePx, tolerance * ToleranceShrink);
            }
            ellipse = fit;
        }
        return new FoundOutline(
            RimCurve.Of(ellipse).Points(GivenPoints),
            RimCurve.Of(ellipse),
            Math.Min(1, support),
            spread / ScatterPerUncertainty,
            LeastSupport: ofPart.ToArray().Min()
        );
    }

    // How far outside an ellipse a point lies, along the ray from its centre; below 0 within it.
    private static double DistanceTo(Ellipse e, PointPx p)
    {
        var (sin, cos) = Math.SinCos(e.Angle);
        var (x, y) = (p.X - e.Centre.X, p.Y - e.Centre.Y);
        var (u, v) = (((x * cos) + (y * sin)) / e.Major, ((y * cos) - (x * sin)) / e.Minor);
        var r = double.Hypot(u, v);
        // Near enough to the true distance for round sections.
        return r > LeastShare ? double.Hypot(x, y) * (1 - (1 / r)) : -e.Minor;
    }

    /// <summary>The strongest edge at a station, one about a step being preferred.</summary>
    public static (double Step, double Strength) Peak(EdgeProfile profile, int station, double about, double sigma)
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

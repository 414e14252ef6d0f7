using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Draws the three rough points of a half-round or quartered section to its true edge: the affine view whose flats and arc lie on most of the picture's change.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class PartOfRoundSnap
{
    /// <summary>Places along each face where its edge is looked for.</summary>
    private const int PerFace = 48;

    /// <summary>Left out at either end of a face, where the next one begins, as a share of it.</summary>
    private const double EndShare = 0.04;

    /// <summary>Turns in which the edge is looked for anew, each time half as far away.</summary>
    private const int Turns = 4;

    /// <summary>Standard deviation of the bell that prefers edges near the rough outline, as a share of the reach.</summary>
    private const double PeakShare = 0.6;

    /// <summary>A point so far from the outline counts half in the fit, as a share of the reach, and no less than so many px; one within the latter supports it.</summary>
    private const double ToleranceShare = 0.4;

    private const double LeastTolerancePx = 2;

    /// <summary>Three points, two coordinates each; each is held where it is by so much of a station's weight.</summary>
    private const int Unknowns = 6;

    private const double Hold = 0.02;

    private readonly record struct Station(PointPx At, double Nx, double Ny, double[] Shares, int Face);

    /// <summary>The outline near three rough points, with the support of its least supported face for its confidence.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="plan">The section in mm.</param>
    /// <param name="rough">Its three points as they are asked for.</param>
    /// <param name="reachPx">How far an edge may lie from the rough outline.</param>
    public static FoundOutline Near(Photograph photo, SectionPlan plan, IReadOnlyList<PointPx> rough, double reachPx)
    {
        var corners = plan.ThreePoints;
        var points = rough.ToArray();
        var support = new double[plan.Faces.Count];
        double spread = 0;
        for (var turn = 0; turn < Turns; turn++)
        {
            var reach = Math.Max(2 * LeastTolerancePx, reachPx / (1 << turn));
            var stations = Along(plan, corners, points);
            var (offsets, weights) = Edges(photo, stations, reach);
            var tolerance = Math.Max(LeastTolerancePx, ToleranceShare * reach);
            var moved = Fit(stations, offsets, weights, tolerance);
            Array.Clear(support);
            var (sum, all) = (0.0, 0.0);
            for (var i = 0; i < stations.Count; i++)
            {
                var off = offsets[i] - Moved(stations[i], moved);
                if (Math.Abs(off) < LeastTolerancePx)
                    support[stations[i].Face] += weights[i] / PerFace;
                var w = weights[i] / (1 + Math.Pow(off / tolerance, 4));
                (sum, all) = (sum + (w * off * off), all + w);
            }
            spread = Math.Sqrt(sum / Math.Max(1e-6, all));
            for (var k = 0; k < points.Length; k++)
                points[k] = new(points[k].X + moved[2 * k], points[k].Y + moved[(2 * k) + 1]);
        }
        return new(points, null, support.Min(), SideLine.UncertaintyPx(spread));
    }

    private static List<Station> Along(SectionPlan plan, IReadOnlyList<PointMm> corners, PointPx[] points)
    {
        var stations = new List<Station>();
        for (var f = 0; f < plan.Faces.Count; f++)
        {
            var face = plan.Faces[f];
            for (var i = 0; i < PerFace; i++)
            {
                var s = face.LengthMm * (EndShare + ((1 - (2 * EndShare)) * (i + 0.5) / PerFace));
                var shares = Shares(corners, face.At(s, 0));
                var (from, to) = (
                    Seen(Shares(corners, face.At(s - 0.5, 0)), points),
                    Seen(Shares(corners, face.At(s + 0.5, 0)), points)
                );
                var length = from.DistanceTo(to);
                // The wood lies on the right of the walk.
                stations.Add(new(Seen(shares, points), (to.Y - from.Y) / length, (from.X - to.X) / length, shares, f));
            }
        }
        return stations;
    }

    // How much of each of the three points a place is.
    private static double[] Shares(IReadOnlyList<PointMm> c, PointMm p)
    {
        var (ax, ay, bx, by) = (c[1].X - c[0].X, c[1].Y - c[0].Y, c[2].X - c[0].X, c[2].Y - c[0].Y);
        var (x, y, det) = (p.X - c[0].X, p.Y - c[0].Y, (ax * by) - (ay * bx));
        var (u, v) = (((x * by) - (y * bx)) / det, ((ax * y) - (ay * x)) / det);
        return [1 - u - v, u, v];
    }

    private static PointPx Seen(double[] shares, PointPx[] points) =>
        new(shares.Zip(points, (share, p) => share * p.X).Sum(), shares.Zip(points, (share, p) => share * p.Y).Sum());

    private static double Moved(Station station, double[] moved)
    {
        double sum = 0;
        for (var k = 0; k < station.Shares.Length; k++)
            sum += station.Shares[k] * ((station.Nx * moved[2 * k]) + (station.Ny * moved[(2 * k) + 1]));
        return sum;
    }

    private static (double[] OffsetsPx, double[] Weights) Edges(Photograph photo, List<Station> stations, double reach)
    {
        var step = EdgeProfile.FinestStepPx(photo);
        var profile = EdgeProfile.Across(photo, [.. stations.Select(s => (s.At, s.Nx, s.Ny))], reach, step);
        var (offsets, weights) = (new double[stations.Count], new double[stations.Count]);
        for (var i = 0; i < stations.Count; i++)
        {
            var (peak, strength) = OutlineSnap.Peak(profile, i, (profile.Steps - 1) / 2.0, reach * PeakShare / step);
            (offsets[i], weights[i]) = (profile.OffsetPx(peak), Math.Min(1, strength / EdgeProfile.Plain));
        }
        return (offsets, weights);
    }

    // How far each point moves, x and y in turn, so that the outline lies on most of the edges: least squares, reweighted.
    private static double[] Fit(List<Station> stations, double[] offsets, double[] weights, double tolerance)
    {
        var moved = new double[Unknowns];
        for (var again = 0; again < Turns; again++)
        {
            var normal = new double[Unknowns, Unknowns];
            var right = new double[Unknowns];
            for (var j = 0; j < Unknowns; j++)
                normal[j, j] = Hold;
            for (var i = 0; i < stations.Count; i++)
            {
                var off = (offsets[i] - Moved(stations[i], moved)) / tolerance;
                var w = weights[i] / (1 + (off * off * off * off));
                for (var j = 0; j < Unknowns; j++)
                {
                    right[j] += w * Slope(stations[i], j) * offsets[i];
                    for (var k = 0; k < Unknowns; k++)
                        normal[j, k] += w * Slope(stations[i], j) * Slope(stations[i], k);
                }
            }
            if (!LinearSystem.Solve(normal, right).Has(out var next, out _))
                return moved;
            moved = next;
        }
        return moved;
    }

    private static double Slope(Station station, int unknown) =>
        station.Shares[unknown / 2] * (unknown % 2 == 0 ? station.Nx : station.Ny);
}

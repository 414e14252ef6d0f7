using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rings;

namespace Alburnum.Imaging.Zones;

/// <summary>A circle through points of the heartwood's border about a pith that the rings tell of, with what it leaves in doubt.</summary>
/// <param name="Circle">The circle.</param>
/// <param name="ScatterMm">Standard deviation of the points about it.</param>
/// <param name="InSight">Places where it was seen.</param>
/// <param name="Moved">The circle moved along each independent direction of its doubt by a standard uncertainty.</param>
internal sealed record BorderFit(
    Circle Circle,
    double ScatterMm,
    IReadOnlyList<PointMm> InSight,
    IReadOnlyList<Circle> Moved
)
{
    /// <summary>Heartwood is not a circle about the pith: its middle strays by this share of its radius.</summary>
    private const double Eccentric = 0.04;

    /// <summary>Neighbouring points stray together, so that two tell no more than one.</summary>
    private const double Correlated = 2;

    /// <summary>Out of sight the border may leave the circle by this share of its radius besides.</summary>
    private const double StrayUnseen = 0.02;

    /// <summary>A place nearer than this to one where the border was seen is in sight.</summary>
    private const double SeenMm = 8;

    /// <summary>No border is told closer than this from its colour, mm.</summary>
    private const double LeastScatterMm = 0.5;

    /// <summary>Steps of the least squares: more change nothing.</summary>
    private const int Turns = 10;

    /// <summary>Points whose weights sum to less than this show no border.</summary>
    private const double LeastWeight = 1e-3;

    /// <summary>Radii that a border can have, mm.</summary>
    private static readonly (double Least, double Most) RadiusMm = (1, 1e5);

    /// <summary>Least squares, reweighted, from a rough circle; null where it goes astray.</summary>
    public static BorderFit? Of(IReadOnlyList<BorderPoint> points, Pith pith, StepCircle rough)
    {
        var circle = rough.Circle;
        var scatter = 2.0;
        var usual = Math.Max(1e-3, points.Select(point => point.Step).Order().ElementAt(points.Count / 2));
        double[,] normal = new double[3, 3];
        for (var turn = 0; turn < Turns; turn++)
        {
            (normal, var right, var square, var weights) = Sums(points, circle, usual, scatter);
            // Not one sector has a step towards heartwood.
            if (!(weights > LeastWeight))
                return null;
            scatter = Math.Max(LeastScatterMm, Math.Sqrt(square / weights));
            HoldToPith(normal, right, circle, pith, scatter);
            if (LinearSystem.Solve((double[,])normal.Clone(), right) is not { } step)
                return null;
            circle = new(circle.X + step[0], circle.Y + step[1], circle.RadiusMm + step[2]);
            if (!(circle.RadiusMm > RadiusMm.Least && circle.RadiusMm < RadiusMm.Most))
                return null;
        }
        if (LinearSystem.Inverse(normal) is not { } covariance)
            return null;
        return new(
            circle,
            scatter,
            [.. points.Select(point => point.At)],
            [
                .. Alternatives(circle, covariance, Math.Sqrt(Correlated) * scatter),
                circle with
                {
                    RadiusMm = circle.RadiusMm + rough.RadiusUncertaintyMm,
                },
            ]
        );
    }

    // The normal equations of centre and radius, each point weighed by its step and by how near it lies.
    private static (double[,] Normal, double[] Right, double Square, double Weights) Sums(
        IReadOnlyList<BorderPoint> points,
        Circle circle,
        double usual,
        double scatter
    )
    {
        var (normal, right) = (new double[3, 3], new double[3]);
        double square = 0,
            weights = 0;
        foreach (var point in points)
        {
            var (x, y) = (point.At.X - circle.X, point.At.Y - circle.Y);
            var far = Math.Max(1e-3, double.Hypot(x, y));
            var off = far - circle.RadiusMm;
            // A weak step may be anything: it counts for less.
            var w = Math.Clamp(point.Step / usual, 0, 1) / (1 + (off * off / (4 * scatter * scatter)));
            double[] row = [x / far, y / far, 1];
            (square, weights) = (square + (w * off * off), weights + w);
            for (var j = 0; j < 3; j++)
            {
                right[j] += w * row[j] * off;
                for (var k = 0; k < 3; k++)
                    normal[j, k] += w * row[j] * row[k];
            }
        }
        return (normal, right, square, weights);
    }

    // What the rings tell of the pith, as a prior; the points' own variance in its units.
    private static void HoldToPith(double[,] normal, double[] right, Circle circle, Pith pith, double scatter)
    {
        var stray = Eccentric * circle.RadiusMm;
        var (xx, xy, yy) = (pith.Xx + (stray * stray), pith.Xy, pith.Yy + (stray * stray));
        var determinant = (xx * yy) - (xy * xy);
        var unit = Correlated * scatter * scatter;
        var (px, py) = (pith.At.X - circle.X, pith.At.Y - circle.Y);
        var (a, b, c) = (unit * yy / determinant, -unit * xy / determinant, unit * xx / determinant);
        normal[0, 0] += a;
        normal[0, 1] += b;
        normal[1, 0] += b;
        normal[1, 1] += c;
        right[0] += (a * px) + (b * py);
        right[1] += (b * px) + (c * py);
    }

    /// <summary>How far the border strays from the circle at a place of it, mm: one standard deviation.</summary>
    public double StrayMm(PointMm place) =>
        InSight.Any(seen => double.Hypot(seen.X - place.X, seen.Y - place.Y) < SeenMm)
            ? ScatterMm
            : double.Hypot(ScatterMm, StrayUnseen * Circle.RadiusMm);

    // Columns of the covariance's root (Cholesky's, row by row): independent ways in which the circle may lie elsewhere.
    private static IEnumerable<Circle> Alternatives(Circle circle, double[,] root, double unit)
    {
        for (var k = 0; k < 3; k++)
        {
            // What rounding leaves below nothing is nothing.
            var length = Math.Sqrt(Math.Max(0, root[k, k]));
            for (var j = k; j < 3; j++)
                root[j, k] = length > 0 ? root[j, k] / length : 0;
            for (var m = k + 1; m < 3; m++)
            for (var j = m; j < 3; j++)
                root[j, m] -= root[j, k] * root[m, k];
            yield return new(
                circle.X + (k == 0 ? unit * root[0, 0] : 0),
                circle.Y + (k <= 1 ? unit * root[1, k] : 0),
                circle.RadiusMm + (unit * root[2, k])
            );
        }
    }
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rings;
using Alburnum.Measures;

namespace Alburnum.Imaging.Zones;

/// <summary>A circle through points of the heartwood's border about the pith of the growth rings, with its uncertainty.</summary>
/// <param name="Circle">The circle.</param>
/// <param name="ScatterMm">Standard deviation of the points about it.</param>
/// <param name="InSight">Places where it was seen.</param>
/// <param name="Moved">The circle moved along each independent direction of its uncertainty by a standard uncertainty.</param>
/// <remarks>Its figures are our own choice.</remarks>
internal sealed record BorderFit(
    Circle Circle,
    double ScatterMm,
    IReadOnlyList<PointMm> InSight,
    IReadOnlyList<Circle> Moved
)
{
    /// <summary>Heartwood is not a circle about the pith: its middle strays by this share of its radius.</summary>
    private const double Eccentric = 0.04;

    /// <summary>Neighbouring points stray together, so that two count for one.</summary>
    private const double Correlated = 2;

    /// <summary>Out of sight the border may leave the circle by this share of its radius besides.</summary>
    private const double StrayUnseen = 0.02;

    /// <summary>A place nearer than this to one where the border was seen is in sight.</summary>
    private const double SeenMm = 8;

    /// <summary>No border is seen closer than this by its colour, mm.</summary>
    private const double LeastScatterMm = 0.5;

    /// <summary>Standard deviation of the points about the circle to begin with, mm.</summary>
    private const double FirstScatterMm = 2;

    /// <summary>A point this many standard deviations from the circle counts half.</summary>
    private const double HalfAt = 2;

    /// <summary>No usual step is smaller than this, standard deviations of colour, and no point nearer to the middle than this, mm.</summary>
    private const double LeastStep = 1e-3;

    private const double LeastFarMm = 1e-3;

    /// <summary>Centre, across and down, and radius.</summary>
    private const int Unknowns = 3;

    /// <summary>Steps of the least squares: more change nothing.</summary>
    private const int Turns = 10;

    /// <summary>Points whose weights sum to less than this show no border.</summary>
    private const double LeastWeight = 1e-3;

    /// <summary>Radii that a border can have, mm.</summary>
    private static readonly (double Least, double Most) RadiusMm = (1, 1e5);

    /// <summary>Least squares, reweighted, from a rough circle; no clear arc where it goes astray.</summary>
    public static Outcome<BorderFit, HeartwoodFault> Of(IReadOnlyList<BorderPoint> points, Pith pith, StepCircle rough)
    {
        var circle = rough.Circle;
        var scatter = FirstScatterMm;
        var usual = Math.Max(LeastStep, Quantiles.UpperMedian(points.Select(point => point.Step)));
        var normal = new double[Unknowns, Unknowns];
        for (var turn = 0; turn < Turns; turn++)
        {
            (normal, var right, var square, var weights) = Sums(points, circle, usual, scatter);
            // Not one sector has a step towards heartwood.
            if (!(weights > LeastWeight))
                return HeartwoodFault.NoArc;
            scatter = Math.Max(LeastScatterMm, Math.Sqrt(square / weights));
            HoldToPith(normal, right, circle, pith, scatter);
            if (!LinearSystem.Solve((double[,])normal.Clone(), right).Has(out var step, out _))
                return HeartwoodFault.NoArc;
            circle = new(circle.X + step[0], circle.Y + step[1], circle.RadiusMm + step[2]);
            if (!(circle.RadiusMm > RadiusMm.Least && circle.RadiusMm < RadiusMm.Most))
                return HeartwoodFault.NoArc;
        }
        if (!LinearSystem.Inverse(normal).Has(out var covariance, out _))
            return HeartwoodFault.NoArc;
        return new BorderFit(
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
        var (normal, right) = (new double[Unknowns, Unknowns], new double[Unknowns]);
        double square = 0,
            weights = 0;
        foreach (var point in points)
        {
            var (x, y) = (point.At.X - circle.X, point.At.Y - circle.Y);
            var far = Math.Max(LeastFarMm, double.Hypot(x, y));
            var off = far - circle.RadiusMm;
            // A weak step may be anything: it counts for less.
            var w = Math.Clamp(point.Step / usual, 0, 1) / (1 + (off * off / (HalfAt * HalfAt * scatter * scatter)));
            double[] row = [x / far, y / far, 1];
            (square, weights) = (square + (w * off * off), weights + w);
            for (var j = 0; j < Unknowns; j++)
            {
                right[j] += w * row[j] * off;
                for (var k = 0; k < Unknowns; k++)
                    normal[j, k] += w * row[j] * row[k];
            }
        }
        return (normal, right, square, weights);
    }

    // The pith as the rings show it, as a prior; the points' own variance in its units.
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
        for (var k = 0; k < Unknowns; k++)
        {
            // What rounding leaves below nothing is nothing.
            var length = Math.Sqrt(Math.Max(0, root[k, k]));
            for (var j = k; j < Unknowns; j++)
                root[j, k] = length > 0 ? root[j, k] / length : 0;
            for (var m = k + 1; m < Unknowns; m++)
            for (var j = m; j < Unknowns; j++)
                root[j, m] -= root[j, k] * root[m, k];
            yield return new(
                circle.X + (k == 0 ? unit * root[0, 0] : 0),
                circle.Y + (k <= 1 ? unit * root[1, k] : 0),
                circle.RadiusMm + (unit * root[2, k])
            );
        }
    }
}

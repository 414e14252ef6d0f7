using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>The edge along one side of a sawn section, followed where it bows.</summary>
/// <param name="Points">Places of the steepest change, upright pixels, at even steps along the side.</param>
/// <param name="Weights">How plain the edge is at each and how near to a smooth bow, 0 to 1.</param>
internal sealed record BowedSide(PointPx[] Points, double[] Weights)
{
    private const int Stations = 48;

    /// <summary>Greatest bow followed, as a share of the side.</summary>
    private const double ReachShare = 0.02;

    /// <summary>Follows the edge near a straight side.</summary>
    public static BowedSide Near(Photograph photo, PointPx from, PointPx to)
    {
        var length = from.DistanceTo(to);
        var (dx, dy) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var (nx, ny) = (dy, -dx);
        var stations = new (PointPx At, double Nx, double Ny)[Stations];
        for (var i = 0; i < Stations; i++)
        {
            var along = length * (0.04 + (0.92 * i / (Stations - 1)));
            stations[i] = (new(from.X + (along * dx), from.Y + (along * dy)), nx, ny);
        }
        var step = Math.Max(1, 0.8 / photo.StoredPerUpright);
        var reach = Math.Max(4 * step, ReachShare * length);
        var profile = EdgeProfile.Across(photo, stations, reach, Math.Max(step, reach / 20));
        var (a, b, c) = (0.0, 0.0, 0.0);
        var offsets = new double[Stations];
        var weights = new double[Stations];
        // From far to near: first a peak anywhere within reach, at last one close to the bow.
        foreach (var spread in (double[])[reach / 2, reach / 4, reach / 8, reach / 8])
        {
            for (var i = 0; i < Stations; i++)
            {
                var u = U(i);
                var bow = a + (b * u) + (c * u * u);
                (offsets[i], var strength) = Peak(profile, i, bow, Math.Max(spread, 1.5 * profile.StepPx));
                var off = (offsets[i] - bow) / Math.Max(spread, 1.5 * profile.StepPx);
                weights[i] = Math.Min(1, strength / SideLine.Plain) / (1 + (off * off));
            }
            (a, b, c) = Parabola(offsets, weights);
        }
        for (var i = 0; i < Stations; i++)
        {
            var u = U(i);
            var off = (offsets[i] - a - (b * u) - (c * u * u)) / (1.5 * profile.StepPx);
            weights[i] = weights[i] / (1 + (off * off * off * off));
        }
        return new(
            [.. stations.Select((s, i) => new PointPx(s.At.X + (offsets[i] * s.Nx), s.At.Y + (offsets[i] * s.Ny)))],
            weights
        );
    }

    private static double U(int station) => (2.0 * station / (Stations - 1)) - 1;

    private static (double OffsetPx, double Strength) Peak(EdgeProfile profile, int station, double aboutPx, double px)
    {
        var best = 1;
        double value = -1;
        for (var k = 1; k < profile.Steps - 1; k++)
        {
            var off = (profile.OffsetPx(k) - aboutPx) / px;
            var v = profile[station, k] / (1 + (off * off));
            if (v > value)
                (value, best) = (v, k);
        }
        return (profile.OffsetPx(best + profile.SubStep(station, best)), profile[station, best]);
    }

    private static (double A, double B, double C) Parabola(double[] offsets, double[] weights)
    {
        var normal = new double[3, 3];
        var right = new double[3];
        for (var i = 0; i < offsets.Length; i++)
        {
            var u = U(i);
            double[] row = [1, u, u * u];
            for (var j = 0; j < 3; j++)
            {
                right[j] += weights[i] * row[j] * offsets[i];
                for (var k = 0; k < 3; k++)
                    normal[j, k] += weights[i] * row[j] * row[k];
            }
        }
        // Where no edge shows there is no bow to follow: the side stays straight.
        return LinearSystem.Solve(normal, right) is [var a, var b, var c] ? (a, b, c) : (0, 0, 0);
    }
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>No edge is seen along a side.</summary>
internal readonly record struct NoEdge;

/// <summary>The edge along one side of a sawn section, followed where it bows.</summary>
/// <param name="Points">Places of the steepest change, upright pixels, at even steps along the side.</param>
/// <param name="Weights">How plain the edge is at each and how near to a smooth bow, 0 to 1.</param>
/// <remarks>Its figures are our own choice.</remarks>
internal sealed record BowedSide(PointPx[] Points, double[] Weights)
{
    /// <summary>Places along a side where its edge is looked for.</summary>
    private const int Stations = 48;

    /// <summary>Greatest bow followed, as a share of the side, and no less than so many steps across it.</summary>
    private const double ReachShare = 0.02;

    private const double LeastReachSteps = 4;

    /// <summary>A wide search is made in coarser steps: so many each way at most.</summary>
    private const double MostReachSteps = 20;

    /// <summary>How near to the bow a peak is looked for, as a share of the reach: at first anywhere, at last close by.</summary>
    private static readonly double[] NearShares = [1.0 / 2, 1.0 / 4, 1.0 / 8, 1.0 / 8];

    /// <summary>No peak is looked for nearer to the bow than this, and none farther from it counts in the end, steps.</summary>
    private const double NearSteps = 1.5;

    /// <summary>Mean weight of a side's points below which its edge is not seen.</summary>
    private const double LeastSeen = 0.65;

    /// <summary>Follows the edge near a straight side.</summary>
    public static Outcome<BowedSide, NoEdge> Near(Photograph photo, PointPx from, PointPx to)
    {
        var stations = EdgeProfile.AlongSide(from, to, Stations);
        var step = EdgeProfile.FinestStepPx(photo);
        var reach = Math.Max(LeastReachSteps * step, ReachShare * from.DistanceTo(to));
        var profile = EdgeProfile.Across(photo, stations, reach, Math.Max(step, reach / MostReachSteps));
        var leastPx = NearSteps * profile.StepPx;
        var bow = new Bow(0, 0, 0);
        var offsets = new double[Stations];
        var weights = new double[Stations];
        foreach (var share in NearShares)
        {
            var near = Math.Max(share * reach, leastPx);
            for (var i = 0; i < Stations; i++)
            {
                (offsets[i], var strength) = Peak(profile, i, bow.At(i), near);
                var off = (offsets[i] - bow.At(i)) / near;
                weights[i] = Math.Min(1, strength / EdgeProfile.Plain) / (1 + (off * off));
            }
            if (!Bow.Through(offsets, weights).Has(out bow, out var noEdge))
                return noEdge;
        }
        for (var i = 0; i < Stations; i++)
        {
            var off = bow.Off(i, offsets[i]) / leastPx;
            weights[i] = weights[i] / (1 + (off * off * off * off));
        }
        if (weights.Average() < LeastSeen)
            return new NoEdge();
        return new BowedSide(
            [.. stations.Select((s, i) => new PointPx(s.At.X + (offsets[i] * s.Nx), s.At.Y + (offsets[i] * s.Ny)))],
            weights
        );
    }

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

    /// <summary>A parabola over the side, px: a + b·u + c·u² with u from −1 at its start to 1 at its end.</summary>
    private readonly record struct Bow(double A, double B, double C)
    {
        private const int Terms = 3;

        public double At(int station)
        {
            var u = U(station);
            return A + (B * u) + (C * u * u);
        }

        /// <summary>Distance of a point from it, px.</summary>
        public double Off(int station, double offsetPx)
        {
            var u = U(station);
            return offsetPx - A - (B * u) - (C * u * u);
        }

        /// <summary>Weighted least squares. Where no edge shows there is none to follow.</summary>
        public static Outcome<Bow, NoEdge> Through(double[] offsets, double[] weights)
        {
            var normal = new double[Terms, Terms];
            var right = new double[Terms];
            for (var i = 0; i < offsets.Length; i++)
            {
                var u = U(i);
                double[] row = [1, u, u * u];
                for (var j = 0; j < Terms; j++)
                {
                    right[j] += weights[i] * row[j] * offsets[i];
                    for (var k = 0; k < Terms; k++)
                        normal[j, k] += weights[i] * row[j] * row[k];
                }
            }
            return LinearSystem
                .Solve(normal, right)
                .Match<Outcome<Bow, NoEdge>>(x => new Bow(x[0], x[1], x[2]), _ => new NoEdge());
        }

        private static double U(int station) => (2.0 * station / (Stations - 1)) - 1;
    }
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Outline;

/// <summary>Follows a rim that is no ellipse: the closed path along most of the picture's change near a rough rim, and the smooth curve through it.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class RimTrace
{
    /// <summary>Places along a rim where its edge is looked for.</summary>
    private const int Stations = 360;

    /// <summary>The edge must show in each of so many parts of it.</summary>
    private const int Parts = 12;

    /// <summary>Turns in which the edge is looked for anew, each time half as far away, and fits in each turn.</summary>
    private const int Turns = 3;

    private const int Fits = 5;

    /// <summary>A rim is looked for no nearer than so many steps.</summary>
    private const int LeastSteps = 4;

    /// <summary>How far a rim may turn aside free of cost, what each step beyond costs, and what the whole reach costs, as shares of a plain edge.</summary>
    private const double FreeSlope = 0.15;

    private const float CostPerStep = 0.3f;

    private const float AsideCost = 0.3f;

    /// <summary>Waves of this harmonic and shorter are smoothed away by half.</summary>
    private const double SmoothFrom = 18;

    private static readonly double Stiffness = 0.5 / Math.Pow(SmoothFrom, 4);

    /// <summary>
    /// A point this far from the rim counts half, px: half the reach in the first fit, and no less than the first figure; then smaller from fit to fit,
    /// and no less than the last.
    /// </summary>
    private const double FirstTolerancePx = 1.5;

    private const double ToleranceShrink = 0.7;
    private const double LastTolerancePx = 1.2;

    /// <summary>A point supports the rim within this of it, px, or within this share of its mean half axis.</summary>
    private const double SupportPx = 2;

    private const double SupportShare = 0.004;

    /// <summary>Where for so many places running no edge half as plain as a plain one lies at a rim that is no ellipse, nothing is read: a tear, a stub, a gaping check.</summary>
    private const int BareRun = 3;

    private const double HalfPlain = 0.5;

    /// <summary>Sum of weights below which there are no points.</summary>
    private const double LeastWeight = 1e-6;

    /// <summary>A rim is borne out where a plain edge lies along so much of it, along so much of each of its parts, and along so much of both in sum.</summary>
    private const double ShowsAlong = 0.8;

    private const double ShowsInEachPart = 0.5;

    private const double ShowsInSum = 1.45;

    /// <summary>Whether the edge along a rim bears it out.</summary>
    public static bool IsBorneOut(FoundOutline traced) =>
        traced.Confidence >= ShowsAlong
        && traced.LeastSupport >= ShowsInEachPart
        && traced.Confidence + traced.LeastSupport >= ShowsInSum;

    /// <summary>The same near points that a hand gave, where nothing is known of the colours on both sides: an edge must show nearly all around.</summary>
    private const double ShowsNearPoints = 0.93;

    private const double ShowsNearPointsInEachPart = 0.75;

    /// <summary>Whether the edge along a rim near points that a hand gave bears it out by itself.</summary>
    public static bool IsBorneOutAlone(FoundOutline traced) =>
        traced.Confidence >= ShowsNearPoints && traced.LeastSupport >= ShowsNearPointsInEachPart;

    /// <summary>The rim near a rough one, with the share of it along which a plain edge lies for its confidence.</summary>
    /// <param name="photo">The photograph.</param>
    /// <param name="rough">A rough rim.</param>
    /// <param name="reachPx">How far from it the rim may lie.</param>
    public static Outcome<FoundOutline, NoEllipse> Near(Photograph photo, RimCurve rough, double reachPx)
    {
        var rim = rough;
        var step = EdgeProfile.FinestStepPx(photo);
        var (support, spread) = (new double[Parts], 0.0);
        bool[] bare = [];
        for (var turn = 0; turn < Turns; turn++)
        {
            var reach = Math.Max(LeastSteps * step, reachPx / (1 << turn));
            var (points, weights) = Edges(photo, rim, reach, step);
            if (!Fitted(rim, points, weights, reach).Has(out var fitted, out var none))
                return none;
            (rim, support, spread) = fitted;
            bare = rim.IsNearlyEllipse ? [] : Bare(photo, rim, points, weights);
        }
        return new FoundOutline(
            rim.Points(OutlineSnap.GivenPoints),
            rim,
            Math.Min(1, support.Average()),
            spread / Reading.DepthCauses.RimPart,
            LeastSupport: support.Min()
        )
        {
            Bare = bare,
        };
    }

    private static bool[] Bare(Photograph photo, RimCurve rim, PointPx[] points, double[] weights)
    {
        var near = NearPx(rim);
        bool IsBare(int i) =>
            IsShown(photo, points[i]) && (weights[i] < HalfPlain || Math.Abs(rim.DistanceTo(points[i])) > near);
        var bare = new bool[Stations];
        var run = 0;
        // Once more over the start, so that a run across it is whole.
        for (var i = 0; i < Stations + BareRun; i++)
        {
            run = IsBare(i % Stations) ? run + 1 : 0;
            // With one more to either side, where the edge leaves the rim.
            for (var k = -1; run >= BareRun && k <= BareRun; k++)
                bare[rim.StationOf(points[(i - k + Stations) % Stations], Stations)] = true;
        }
        return bare;
    }

    private static double NearPx(RimCurve rim) => Math.Max(SupportPx, SupportShare * rim.MeanRadius);

    // The closed path along the edges, and how plain the edge is at each of its places.
    private static (PointPx[] Points, double[] Weights) Edges(
        Photograph photo,
        RimCurve rim,
        double reachPx,
        double stepPx
    )
    {
        var stations = rim.Stations(Stations);
        var profile = EdgeProfile.Across(photo, stations, reachPx, stepPx);
        var middle = (profile.Steps - 1) / 2;
        var path = RimPath.Along(
            Stations,
            profile.Steps,
            (station, k) =>
                (float)(
                    Math.Min(1, profile[station, k] / EdgeProfile.Plain) - (AsideCost * Math.Abs(k - middle) / middle)
                ),
            (int)Math.Round(FreeSlope * 2 * Math.PI * rim.MeanRadius / Stations / stepPx),
            CostPerStep
        );
        var (points, weights) = (new PointPx[Stations], new double[Stations]);
        for (var i = 0; i < Stations; i++)
        {
            var k = Math.Clamp(path[i], 1, profile.Steps - 2);
            var offset = profile.OffsetPx(k + profile.SubStep(i, k));
            var (at, nx, ny) = stations[i];
            points[i] = new(at.X + (offset * nx), at.Y + (offset * ny));
            weights[i] = IsShown(photo, points[i]) ? Math.Min(1, profile[i, k] / EdgeProfile.Plain) : 0;
        }
        return (points, weights);
    }

    // At the picture's own border nothing is seen of what lies outside.
    private static bool IsShown(Photograph photo, PointPx p) =>
        p.X > LeastSteps && p.Y > LeastSteps && p.X < photo.WidthPx - LeastSteps && p.Y < photo.HeightPx - LeastSteps;

    private static Outcome<(RimCurve Rim, double[] Support, double Spread), NoEllipse> Fitted(
        RimCurve start,
        PointPx[] points,
        double[] weights,
        double reachPx
    )
    {
        var rim = start;
        var tolerance = Math.Max(FirstTolerancePx, reachPx / 2);
        var support = new double[Parts];
        double spread = 0;
        var w = new double[Stations];
        for (var again = 0; again < Fits; again++)
        {
            for (var i = 0; i < Stations; i++)
            {
                var off = again == 0 ? 0 : rim.DistanceTo(points[i]) / tolerance;
                w[i] = weights[i] / (1 + (off * off * off * off));
            }
            if (!RimCurve.Fit(points, w, Stiffness).Has(out var next, out var none))
                return none;
            rim = next;
            tolerance = Math.Max(LastTolerancePx, tolerance * ToleranceShrink);
        }
        var nearPx = NearPx(rim);
        for (var i = 0; i < Stations; i++)
        {
            var off = rim.DistanceTo(points[i]);
            if (Math.Abs(off) < nearPx)
                support[Parts * i / Stations] += weights[i] * Parts / Stations;
            spread += w[i] * off * off;
        }
        return (rim, support, Math.Sqrt(spread / Math.Max(LeastWeight, w.Sum())));
    }
}

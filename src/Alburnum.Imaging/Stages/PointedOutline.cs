using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Timber;

namespace Alburnum.Imaging.Stages;

/// <summary>The outline that a person pointed out, drawn to the edge at its points or near them; where no edge is sure, it stands as given and says so.</summary>
/// <remarks>Its figures are our own choice.</remarks>
internal static class PointedOutline
{
    /// <summary>Along more of a side, or of an ellipse, than this a plain edge must lie near the points given for it to be the one that was meant.</summary>
    private const double SideShows = 0.5;

    private const double EllipseShows = 0.7;

    private const double EllipseShowsInEachPart = 0.4;

    /// <summary>Rivals outside so many sides make an outline doubtful: one side alone often has a shadow or a bench's edge beside it.</summary>
    private const int RivalSides = 2;

    /// <summary>How far points given may lie from the edge at first: a share of a round's longer half axis, of the shortest side, and of a core's width.</summary>
    private const double RimReachShare = 0.04;

    private const double SideReachShare = 0.025;

    private const double CoreReachShare = 0.1;

    /// <summary>The outline found by itself is the one meant where no point of it lies farther from those given: a share of the shortest side or half axis.</summary>
    private const double MeantShare = 0.15;

    /// <summary>Points whose root mean square distance from the rim at which they lie is below this share of its mean half axis were set with care.</summary>
    private const double CarefulShare = 0.01;

    /// <summary>
    /// Root mean square distance of points from the rim at which they lie, as a share of its mean half axis; and the rim found by itself is not the one meant
    /// where they lie so much nearer to another, as to the wood's edge within bark.
    /// </summary>
    private const double MostOffNearRim = 0.025;

    private const double NearerPart = 0.4;

    /// <summary>Corners that enclose less than this, px², enclose nothing: 20 px square.</summary>
    private const double LeastAreaPx2 = 400;

    /// <summary>A rim so much narrower one way than the other is not seen by anyone who photographs a cut; rim points lie within this share of the ellipse.</summary>
    private const double LeastAxes = 0.5;

    private const double MostOffRim = 0.12;

    /// <summary>Sines of the angles at a corner below which it lies in line with its neighbours. No section that is photographed as advised comes near it.</summary>
    private const double LeastSine = 0.25;

    /// <summary>The outline.</summary>
    /// <exception cref="InputRefusedException">The points given cannot be an outline.</exception>
    public static FoundOutline Of(Scene scene, IReadOnlyList<PointPx> given)
    {
        var (least, words) = scene.Shape switch
        {
            SectionShape.Round => (5, "5 or more rim points"),
            SectionShape.HalfRound or SectionShape.Quartered => (3, "3 points"),
            _ => (4, "4 corners, one after the other around the section"),
        };
        if (given.Count < least || (scene.Shape != SectionShape.Round && given.Count != least))
            throw Refused(scene, $"{given.Count} points", words);
        if (!given.All(point => IsNear(point, scene.Photo)))
            throw Refused(scene, "a point far outside the photograph", "points on the photograph, in pixels");
        return scene.Shape == SectionShape.Round ? Rim(scene, given, words) : Corners(scene, given, words);
    }

    // Within a photograph's width and height of it; not a number is nowhere.
    private static bool IsNear(PointPx p, Photograph photo) =>
        p.X >= -photo.WidthPx && p.X <= 2.0 * photo.WidthPx && p.Y >= -photo.HeightPx && p.Y <= 2.0 * photo.HeightPx;

    private static FoundOutline Rim(Scene scene, IReadOnlyList<PointPx> given, string words)
    {
        var alike = new double[given.Count];
        Array.Fill(alike, 1);
        if (!Ellipse.Fit([.. given], alike).Has(out var ellipse, out _) || ellipse.Minor < LeastAxes * ellipse.Major)
            throw Refused(scene, "points that do not lie round a rim", words);
        var rough = RimCurve.Of(ellipse);
        for (var k = 0; k < given.Count; k++)
            if (Math.Abs(rough.DistanceTo(given[k])) > MostOffRim * ellipse.Major)
                throw Refused(scene, $"point {k + 1} far from the rim that the others lie on", words);
        var asGiven = AsGiven(scene, rough.Points(OutlineSnap.GivenPoints), rough);
        if (scene.Request.OutlineIsExact)
            return asGiven;
        var near = NearRim(scene, rough, given);
        if (near is not null && OffPx(near.Rim!, given) < CarefulShare * near.Rim!.MeanRadius)
            return near;
        var meant =
            OutlineFinder.Rim(scene.Photo).Has(out var found, out _)
            && IsSure(found)
            && given.All(point => Math.Abs(found.Rim!.DistanceTo(point)) < MeantShare * ellipse.Minor)
                ? found
                : null;
        return (near, meant) switch
        {
            ({ } at, { } by) => OffPx(at.Rim!, given) < NearerPart * OffPx(by.Rim!, given) ? at : by,
            (null, { } by) => by,
            ({ } at, null) => at,
            _ => asGiven with { Confidence = 0, OffEdge = new([]) },
        };
    }

    // The rim near the points, where its edge alone bears it out and the points lie about it.
    private static FoundOutline? NearRim(Scene scene, RimCurve rough, IReadOnlyList<PointPx> given)
    {
        var reachPx = RimReachShare * rough.Ellipse.Major;
        if (!RimTrace.Near(scene.Photo, rough, reachPx).Has(out var near, out _))
            return null;
        var isAlone = RimTrace.IsBorneOutAlone(near);
        if (near.Rim!.IsNearlyEllipse)
        {
            // An ellipse is found by less of its edge, near points set with care.
            if (
                !OutlineSnap.Rim(scene.Photo, rough.Ellipse, reachPx).Has(out near, out _)
                || near.Confidence < EllipseShows
                || near.LeastSupport < EllipseShowsInEachPart
                || !(isAlone || OffPx(near.Rim!, given) <= CarefulShare * rough.MeanRadius)
            )
                return null;
        }
        else if (!isAlone)
            return null;
        return
            OffPx(near.Rim!, given) < MostOffNearRim * rough.MeanRadius
            && !RivalEdge.IsOutsideRim(scene.Photo, near.Rim!)
            ? near with
            {
                Confidence = 1,
            }
            : null;
    }

    private static double OffPx(RimCurve rim, IReadOnlyList<PointPx> given) =>
        Math.Sqrt(given.Average(point => Math.Pow(rim.DistanceTo(point), 2)));

    private static FoundOutline Corners(Scene scene, IReadOnlyList<PointPx> given, string words)
    {
        if (given.Count > 3 && Wild(given) is { } wild)
            throw Refused(scene, wild, words);
        var isTurned = Polygon.Area(given) < 0;
        // Each of three points has a meaning of its own: only the two ends change places.
        IReadOnlyList<PointPx> clockwise = (isTurned, scene.Shape) switch
        {
            (false, _) => given,
            (_, SectionShape.HalfRound) => [given[1], given[0], given[2]],
            (_, SectionShape.Quartered) => [given[2], given[1], given[0]],
            _ => [given[0], .. given.Skip(1).Reverse()],
        };
        if (Math.Abs(Polygon.Area(clockwise)) < LeastAreaPx2)
            throw Refused(scene, "corners that enclose next to nothing", words);
        var asGiven = AsGiven(scene, clockwise, rim: null);
        if (scene.Request.OutlineIsExact)
            return asGiven;
        var shortestPx = Enumerable
            .Range(0, clockwise.Count)
            .Min(k => clockwise[k].DistanceTo(clockwise[(k + 1) % clockwise.Count]));
        var near = scene.Shape switch
        {
            SectionShape.HalfRound or SectionShape.Quartered => PartOfRoundSnap.Near(
                scene.Photo,
                SectionPlan.For(scene.Request.Section, scene.Shape, turned: false, 0),
                clockwise,
                SideReachShare * shortestPx
            ),
            SectionShape.CoreStrip => OutlineSnap.Sides(scene.Photo, clockwise, CoreReachShare * shortestPx),
            _ => OutlineSnap.Sides(scene.Photo, clockwise, SideReachShare * shortestPx),
        };
        List<int> unsure = [.. Unsure(near)];
        if (unsure.Count == 0 && scene.Shape == SectionShape.Rectangle)
        {
            var rivals = RivalEdge.OutsideSides(scene.Photo, near.Points);
            unsure.AddRange(rivals.Count < RivalSides ? [] : rivals);
        }
        if (unsure.Count == 0)
            return near with { Confidence = 1 };
        if (ByItself(scene, clockwise, MeantShare * shortestPx) is { } meant)
            return meant;
        return asGiven with
        {
            Confidence = 0,
            OffEdge = new([.. OffEdge(unsure, clockwise.Count).Select(k => 1 + IndexOf(given, clockwise[k])).Order()]),
        };
    }

    private static int IndexOf(IReadOnlyList<PointPx> given, PointPx corner) =>
        Enumerable.Range(0, given.Count).First(k => given[k] == corner);

    // Sides along which no edge shows; all of them where they are not told apart.
    private static IEnumerable<int> Unsure(FoundOutline near) =>
        near.SideSupport.Count > 0
            ? Enumerable.Range(0, near.SideSupport.Count).Where(side => near.SideSupport[side] <= SideShows)
            : Enumerable.Range(0, near.Confidence <= SideShows ? near.Points.Count : 0);

    private static FoundOutline AsGiven(Scene scene, IReadOnlyList<PointPx> points, RimCurve? rim) =>
        new(points, rim, 1, DepthCauses.GivenOutline.Of(scene.LongSidePx), IsAsGiven: true);

    private static bool IsSure(FoundOutline found) => found.Confidence >= OutlineFinder.SureEnough;

    // The outline that is found without any points, beginning at the first corner given, where it is sure and each corner near one given.
    private static FoundOutline? ByItself(Scene scene, IReadOnlyList<PointPx> given, double reachPx)
    {
        if (
            scene is not { Shape: SectionShape.Rectangle, Request.Section: RectangularSection sawn }
            || !OutlineFinder.Sides(scene.Photo, sawn.WidthMm, sawn.HeightMm).Has(out var found, out _)
            || !IsSure(found)
        )
            return null;
        var n = found.Points.Count;
        IReadOnlyList<PointPx> From(int first) => [.. found.Points.Skip(first).Concat(found.Points.Take(first))];
        double Farthest(IReadOnlyList<PointPx> points) => points.Zip(given, (p, q) => p.DistanceTo(q)).Max();
        var points = Enumerable.Range(0, n).Select(From).MinBy(Farthest)!;
        return Farthest(points) < reachPx ? found with { Points = points } : null;
    }

    // Corners between two sides that are unsure; where there is none, the ends of those that are.
    private static IReadOnlyList<int> OffEdge(IReadOnlyList<int> unsure, int corners)
    {
        bool IsUnsure(int side) => unsure.Contains((side + corners) % corners);
        List<int> off = [.. Enumerable.Range(0, corners).Where(k => IsUnsure(k) && IsUnsure(k - 1))];
        return off.Count > 0 ? off : [.. Enumerable.Range(0, corners).Where(k => IsUnsure(k) || IsUnsure(k - 1))];
    }

    // What is wrong with corners that cannot be those of a section, and at which; null where nothing is.
    private static string? Wild(IReadOnlyList<PointPx> given)
    {
        var n = given.Count;
        double Sine(int k)
        {
            var (a, b, c) = (given[(k + n - 1) % n], given[k], given[(k + 1) % n]);
            var (ux, uy, vx, vy) = (b.X - a.X, b.Y - a.Y, c.X - b.X, c.Y - b.Y);
            return ((ux * vy) - (uy * vx)) / Math.Max(double.Epsilon, double.Hypot(ux, uy) * double.Hypot(vx, vy));
        }
        double[] turns = [.. Enumerable.Range(0, n).Select(Sine)];
        var flat = Array.FindIndex(turns, turn => Math.Abs(turn) < LeastSine);
        if (flat >= 0)
            return $"corner {flat + 1} nearly in line with its neighbours";
        var right = turns.Count(turn => turn > 0);
        return (right, n - right) switch
        {
            (0, _) or (_, 0) => null,
            (1, _) => $"corner {Array.FindIndex(turns, turn => turn > 0) + 1} within the other three",
            (_, 1) => $"corner {Array.FindIndex(turns, turn => turn < 0) + 1} within the other three",
            _ => "corners whose sides cross: two of them have changed places",
        };
    }

    private static InputRefusedException Refused(Scene scene, string found, string expected) =>
        new(new InputProblem(scene.FileName, 0, "", "corners", found, expected));
}

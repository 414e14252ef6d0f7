using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Measures;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Stages;

/// <summary>The section in the photograph.</summary>
/// <param name="Outline">Its outline, as the photograph shows it.</param>
/// <param name="Lens">The lens, where the section's sides show one; null: none is assumed.</param>
internal sealed record LocatedSection(FoundOutline Outline, FoundLens? Lens)
{
    /// <summary>Standard uncertainty of each side's place, px, and where it comes from.</summary>
    public (double Px, UncertaintyCause Cause) Uncertainty =>
        Lens is not null ? (Lens.UncertaintyPx, DepthCauses.LensBow)
        : Outline.IsAsGiven ? (Outline.UncertaintyPx, DepthCauses.GivenOutline)
        : (Outline.UncertaintyPx, DepthCauses.Outline);

    /// <summary>The end of a reading that got as far as this.</summary>
    public NotDetermined Ended(ReadingStage stage, ReadingFault fault, Indicator? indicator) =>
        OutlineStage.Ended(stage, fault, indicator, Outline.InPhotograph);
}

/// <summary>First stage: finds the section in the photograph, by itself or from what is pointed out.</summary>
internal static class OutlineStage
{
    /// <summary>An outline less sure than this is not measured: the user is asked to point it out. A probability; our own choice.</summary>
    private const double SureEnough = 0.6;

    /// <summary>Surer than this, the edge near the points given is taken; the user's own points stand otherwise. A share of the side; our own choice.</summary>
    private const double EdgeShows = 0.3;

    /// <summary>How far points given may lie from the edge: a share of a round's longer half axis, and of the shortest side. Our own choice.</summary>
    private const double RimReachShare = 0.04;

    private const double SideReachShare = 0.025;

    /// <summary>Corners that enclose less than this, px², enclose nothing: 20 px square. Our own choice.</summary>
    private const double LeastAreaPx2 = 400;

    /// <summary>The section, where its outline is sure enough to be measured.</summary>
    /// <exception cref="InputRefusedException">The points given cannot be an outline.</exception>
    public static Outcome<LocatedSection, NotDetermined> Find(Scene scene, CancellationToken ct)
    {
        if (!Outline(scene).Has(out var outline, out var notFound))
            return Ended(ReadingStage.Outline, notFound, scene.Request.Indicator, outline: null);
        if (outline.Confidence < SureEnough)
            return Ended(ReadingStage.Outline, new OutlineNotFound(), scene.Request.Indicator, outline.InPhotograph);
        ct.ThrowIfCancellationRequested();
        return Locate(scene, outline);
    }

    /// <summary>The end of a reading before the photograph was judged.</summary>
    /// <param name="stage">Where it ended.</param>
    /// <param name="fault">Why.</param>
    /// <param name="indicator">As named by the user; null where none was.</param>
    /// <param name="outline">As far as it was found; null where nothing was.</param>
    internal static NotDetermined Ended(
        ReadingStage stage,
        ReadingFault fault,
        Indicator? indicator,
        OutlineInPhotograph? outline
    ) =>
        new(stage, fault)
        {
            Quality = new(QualityGrade.Unusable, []),
            Indicator = indicator,
            Outline = outline,
            Scale = null,
        };

    private static Outcome<FoundOutline, OutlineNotFound> Outline(Scene scene) =>
        scene.Request.OutlinePx is { } given
            ? FromPoints(scene, given)
            : (scene.Shape, scene.Request.Section) switch
            {
                (SectionShape.Rectangle, RectangularSection s) => OutlineFinder.Sides(
                    scene.Photo,
                    s.WidthMm,
                    s.HeightMm
                ),
                (SectionShape.Round, _) => OutlineFinder.Rim(scene.Photo),
                // No other shape is looked for by itself: it must be pointed out.
                _ => new OutlineNotFound(),
            };

    // Only four sawn sides are straight in the world; corners that the user holds exact are not moved.
    private static LocatedSection Locate(Scene scene, FoundOutline outline)
    {
        var isStraight = scene.Shape is SectionShape.Rectangle && !scene.Request.OutlineIsExact;
        var pxPerMm = Math.Sqrt(Math.Abs(Polygon.Area(outline.Points)) / scene.Request.Section.AreaMm2);
        return isStraight && LensFinder.Find(scene.Photo, outline.Points, pxPerMm).Has(out var lens, out _)
            ? new(outline with { Points = [.. lens.Straight.Select(lens.Lens.Drawn)] }, lens)
            : new(outline, null);
    }

    private static FoundOutline FromPoints(Scene scene, IReadOnlyList<PointPx> given)
    {
        var (least, words) = scene.Shape switch
        {
            SectionShape.Round => (5, "5 or more rim points"),
            SectionShape.HalfRound or SectionShape.Quartered => (3, "3 points"),
            _ => (4, "4 corners"),
        };
        if (given.Count < least || (scene.Shape != SectionShape.Round && given.Count != least))
            throw Refused(scene, $"{given.Count} points", words);
        if (!given.All(point => IsNear(point, scene.Photo)))
            throw Refused(scene, "a point far outside the photograph", "points on the photograph, in pixels");
        return scene.Shape == SectionShape.Round ? Rim(scene, given, words) : Sides(scene, given, words);
    }

    // Within a photograph's width and height of it; not a number is nowhere.
    private static bool IsNear(PointPx p, Photograph photo) =>
        p.X >= -photo.WidthPx && p.X <= 2.0 * photo.WidthPx && p.Y >= -photo.HeightPx && p.Y <= 2.0 * photo.HeightPx;

    private static FoundOutline Rim(Scene scene, IReadOnlyList<PointPx> given, string words)
    {
        var alike = new double[given.Count];
        Array.Fill(alike, 1);
        if (!Ellipse.Fit([.. given], alike).Has(out var rough, out _))
            throw Refused(scene, "points that do not lie round a rim", words);
        var asGiven = new FoundOutline(OutlineSnap.RimPoints(rough), rough, 1, DepthCauses.GivenRimPx, IsAsGiven: true);
        return scene.Request.OutlineIsExact
            ? asGiven
            : OutlineSnap
                .Rim(scene.Photo, rough, RimReachShare * rough.Major)
                .Match(snapped => Kept(snapped, asGiven), _ => asGiven);
    }

    private static FoundOutline Sides(Scene scene, IReadOnlyList<PointPx> given, string words)
    {
        IReadOnlyList<PointPx> clockwise = Polygon.Area(given) > 0 ? given : [given[0], .. given.Skip(1).Reverse()];
        if (Math.Abs(Polygon.Area(clockwise)) < LeastAreaPx2)
            throw Refused(scene, "corners that enclose next to nothing", words);
        var asGiven = new FoundOutline(clockwise, null, 1, DepthCauses.GivenCornerPx, IsAsGiven: true);
        if (scene.Request.OutlineIsExact || clockwise.Count == 3)
            return asGiven;
        var shortest = Enumerable.Range(0, 4).Min(k => clockwise[k].DistanceTo(clockwise[(k + 1) % 4]));
        return Kept(OutlineSnap.Sides(scene.Photo, clockwise, SideReachShare * shortest), asGiven);
    }

    private static FoundOutline Kept(FoundOutline snapped, FoundOutline given) =>
        snapped.Confidence > EdgeShows ? snapped with { Confidence = 1 } : given;

    private static InputRefusedException Refused(Scene scene, string found, string expected) =>
        new(new InputProblem(scene.FileName, 0, "", "corners", found, expected));
}

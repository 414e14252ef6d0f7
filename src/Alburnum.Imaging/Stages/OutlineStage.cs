using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Outline;
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
    internal const double SureEnough = 0.6;

    /// <summary>The section, where its outline is sure enough to be measured.</summary>
    /// <exception cref="InputRefusedException">The points given cannot be an outline.</exception>
    public static Outcome<LocatedSection, NotDetermined> Find(Scene scene, CancellationToken ct)
    {
        if (!Outline(scene).Has(out var outline, out var notFound))
            return Ended(ReadingStage.Outline, notFound, scene.Request.Indicator, outline: null);
        if (scene.Request.OutlinePx is null && (outline.Confidence < SureEnough || IsAgainstCard(scene, outline)))
            return Ended(ReadingStage.Outline, new OutlineNotFound(), scene.Request.Indicator, outline.InPhotograph);
        ct.ThrowIfCancellationRequested();
        return Locate(scene, outline);
    }

    /// <summary>One of several pieces, where its outline was sure enough to be measured. It fills so little of the picture that it shows nothing of the lens.</summary>
    public static Outcome<LocatedSection, NotDetermined> OfPiece(Scene scene, FoundPiece piece) =>
        piece.Outline is { } outline && !IsAgainstCard(scene, outline)
            ? new LocatedSection(outline, null)
            : Ended(ReadingStage.Outline, new OutlineNotFound(), scene.Request.Indicator, outline: null);

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

    // White and with four corners, a card may be taken for a section; and what is no circle in its plane took a part of the piece's side along.
    private static bool IsAgainstCard(Scene scene, FoundOutline outline) =>
        scene.Card is { } card
        && (
            Polygon.Holds(outline.Points, card.MiddlePx)
            || (outline.Rim is { } rim && DiscBesideCard.Circle(card, rim) is null)
        );

    private static Outcome<FoundOutline, OutlineNotFound> Outline(Scene scene) =>
        scene.Request.OutlinePx is { } given
            ? PointedOutline.Of(scene, given)
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

    // Only four sawn sides are straight in the world; corners that the user holds exact are not moved, and what lies on no edge shows no bow.
    private static LocatedSection Locate(Scene scene, FoundOutline outline)
    {
        var isStraight =
            scene.Shape is SectionShape.Rectangle && !scene.Request.OutlineIsExact && outline.OffEdge is null;
        var pxPerMm = Math.Sqrt(Math.Abs(Polygon.Area(outline.Points)) / scene.Request.Section.AreaMm2);
        return isStraight && LensFinder.Find(scene.Photo, outline.Points, pxPerMm).Has(out var lens, out _)
            ? new(outline with { Points = [.. lens.Straight.Select(lens.Lens.Drawn)] }, lens)
            : new(outline, null);
    }
}

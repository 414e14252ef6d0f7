using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Rectification;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Stages;

/// <summary>The section to scale, and drawn flat.</summary>
/// <param name="Located">The section in the photograph.</param>
/// <param name="Plan">Its faces in mm.</param>
/// <param name="Map">From mm to the photograph.</param>
/// <param name="Known">Its size.</param>
/// <param name="PxPerMm">Scale in the photograph.</param>
/// <param name="Drawn">The flat drawing.</param>
internal sealed record FlatSection(
    LocatedSection Located,
    SectionPlan Plan,
    SectionMap Map,
    KnownLength Known,
    double PxPerMm,
    RectifiedSection Drawn
)
{
    /// <summary>Its scale as a reading gives it.</summary>
    public SectionScale Scale => new(PxPerMm, Located.Lens?.Bow, Known.Basis, Known.Section);

    /// <summary>The end of a reading that got as far as this. A photograph that shows the section and still no depth is worth taking again.</summary>
    public NotDetermined Ended(ReadingStage stage, ReadingFault fault, Quality quality, Indicator? indicator) =>
        new(stage, fault)
        {
            Quality = quality.AtBest(QualityGrade.Poor),
            Indicator = indicator,
            Outline = Located.Outline.InPhotograph,
            Scale = Scale,
        };

    /// <summary>The same section drawn anew, as it lay before the camera.</summary>
    public FlatSection Seen(Photograph photo, SectionPlan plan, SectionMap map) =>
        this with
        {
            Plan = plan,
            Map = map,
            Drawn = RectifiedSection.From(photo, map, plan, Drawn.PxPerMm, Drawn.MarginMm),
        };
}

/// <summary>Second stage: takes the scale and draws the section flat.</summary>
internal static class FlatteningStage
{
    /// <summary>Most pixels in the flat drawing of the section, for the sake of time. Our own choice.</summary>
    private const double MostDrawnPixels = 1.2e6;

    /// <summary>Wood's surroundings drawn around the section, mm. Our own choice.</summary>
    private const double MarginMm = 2;

    /// <summary>The section drawn flat, where a known length does not contradict its size.</summary>
    public static Outcome<FlatSection, NotDetermined> Flatten(Scene scene, LocatedSection located)
    {
        var (plan, map) = Lay(located, scene.Request.Section, scene.Shape);
        if (!KnownLength.Of(scene.Request, map).Has(out var known, out var disagrees))
            return located.Ended(ReadingStage.Flattening, disagrees, scene.Request.Indicator);
        if (known.Basis != ScaleBasis.NominalSize)
            (plan, map) = Lay(located, known.Section, scene.Shape);
        if (scene is { Card: { } card, Shape: SectionShape.Rectangle or SectionShape.Round })
        {
            known = known.Beside(CardSize.Of(card, known.Section, plan, map, scene.Camera));
            (plan, map) = Lay(located, known.Section, scene.Shape);
        }
        var pxPerMm = map.ScaleAt(plan.WidthMm / 2, plan.HeightMm / 2);
        var drawnAt = Math.Min(
            Math.Min(Scene.ReadingPxPerMm, Math.Max(1, pxPerMm * scene.Photo.StoredPerUpright)),
            Math.Sqrt(MostDrawnPixels / (plan.WidthMm * plan.HeightMm))
        );
        return new FlatSection(
            located,
            plan,
            map,
            known,
            pxPerMm,
            RectifiedSection.From(scene.Photo, map, plan, drawnAt, MarginMm)
        );
    }

    /// <summary>The plan of a round section whose positions start at a point of the rim.</summary>
    public static SectionPlan RoundPlan(RoundSection round, SectionMap map, PointPx firstRimPoint)
    {
        var first = map.ToMm(firstRimPoint);
        var r = round.DiameterMm / 2;
        return SectionPlan.Round(round.DiameterMm, Math.Atan2(first.Y - r, first.X - r));
    }

    private static (SectionPlan Plan, SectionMap Map) Lay(LocatedSection located, Section section, SectionShape shape)
    {
        var (outline, lens) = located;
        PointPx[] p = [.. lens?.Straight ?? outline.Points];
        if (outline.Rim is { } rim && section is RoundSection round)
        {
            var seen = new SectionMap(rim.FromDisc(round.DiameterMm), null);
            return (RoundPlan(round, seen, p[0]), seen);
        }
        var isTurned = shape != SectionShape.CoreStrip && section is RectangularSection sawn && IsTurned(p, sawn);
        var plan = SectionPlan.For(section, shape, isTurned, 0);
        var (w, h) = (plan.WidthMm, plan.HeightMm);
        return (
            plan,
            shape switch
            {
                SectionShape.HalfRound or SectionShape.Quartered => new(
                    Homography.FromThree([.. plan.ThreePoints.Select(place => new PointPx(place.X, place.Y))], p),
                    null
                ),
                _ => new(Homography.FromFour([new(0, 0), new(w, 0), new(w, h), new(0, h)], p), lens?.Lens),
            }
        );
    }

    // Whether the first side shown is the section's height.
    private static bool IsTurned(PointPx[] p, RectangularSection sawn)
    {
        // Sides as good as equal are taken as they are shown.
        const double Even = 1e-9;
        var across = p[0].DistanceTo(p[1]) + p[2].DistanceTo(p[3]);
        var down = p[1].DistanceTo(p[2]) + p[3].DistanceTo(p[0]);
        return Math.Abs(Math.Log(across / down / (sawn.WidthMm / sawn.HeightMm)))
            > Math.Abs(Math.Log(across / down / (sawn.HeightMm / sawn.WidthMm))) + Even;
    }
}

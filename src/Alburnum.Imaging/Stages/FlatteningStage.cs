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

    /// <summary>Places by which a rim is drawn: of a round 120 mm wide, half a mm apart. Our own choice.</summary>
    private const int RimPlaces = 720;

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

    /// <summary>The plan of a round section, and the map to its photograph, as it lay before the camera.</summary>
    /// <param name="round">Its size: the diameter of a circle as long as its rim.</param>
    /// <param name="view">From a disc of that size, mm, to the photograph.</param>
    /// <param name="rim">The rim; positions start at its top.</param>
    public static (SectionPlan Plan, SectionMap Map) Round(RoundSection round, Homography view, RimCurve rim)
    {
        var back = new SectionMap(view, null);
        if (rim.Waves.Count == 0)
        {
            var first = back.ToMm(rim.Points(1)[0]);
            var r = round.DiameterMm / 2;
            return (SectionPlan.Round(round.DiameterMm, Math.Atan2(first.Y - r, first.X - r)), back);
        }
        PointMm[] seen = [.. rim.Points(RimPlaces).Select(back.ToMm)];
        var (left, top) = (seen.Min(p => p.X), seen.Min(p => p.Y));
        var scale = round.PerimeterMm / ClosedCurve.Length(seen);
        var curve = new ClosedCurve([.. seen.Select(p => new PointMm((p.X - left) * scale, (p.Y - top) * scale))]);
        return (SectionPlan.Rim(curve), new(view.After(new(1 / scale, 0, left, 0, 1 / scale, top, 0, 0, 1)), null));
    }

    private static (SectionPlan Plan, SectionMap Map) Lay(LocatedSection located, Section section, SectionShape shape)
    {
        var (outline, lens) = located;
        PointPx[] p = [.. lens?.Straight ?? outline.Points];
        if (outline.Rim is { } rim && section is RoundSection round)
            return Round(round, rim.Disc.Ellipse.FromDisc(round.DiameterMm), rim);
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

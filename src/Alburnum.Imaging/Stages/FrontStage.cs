using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Stages;

/// <summary>Fifth stage: reads the front to a fraction of a pixel.</summary>
internal static class FrontStage
{
    /// <summary>Distance between columns along a face, mm, and the least between rows inward. Our own choice.</summary>
    private const double ColumnMm = 0.5;

    private const double LeastRowMm = 0.12;

    /// <summary>Well below the deepest rough front there is nothing to find: this share of it and a little more, mm. Our own choice.</summary>
    private const double BeyondShare = 1.25;

    private const double BeyondMm = 8;

    /// <summary>
    /// A border seen without a reagent is doubtful where its 5th percentile is below the first share of the mean depth, and its maximum above the second.
    /// Our own choice.
    /// </summary>
    private const double ShallowShare = 0.15;

    private const double DeepShare = 2;

    /// <summary>The whole reading, where a position is left to read and the border is not doubtful.</summary>
    public static Outcome<Read, NotDetermined> Read(Scene scene, SectionZones zones, CancellationToken ct)
    {
        var (flat, poseShare) = Posed(scene, zones);
        var front = Trace(flat, zones);
        ct.ThrowIfCancellationRequested();
        var errors = Errors(flat, zones.Found.Indicator, poseShare);
        var profile = new ProfileReader(front, errors, scene.Request.StepMm).Read(flat.Known.Section);
        if (!profile.Has(out var read, out var nothingLeft))
            return Ended(nothingLeft);
        if (IsDoubtful(scene.Request, zones.Found.Indicator, read.Profile.Statistics))
            return Ended(new DoubtfulBorder());
        return ReadingDetails.Of(scene.Request, zones with { Flat = flat }, front, read);

        NotDetermined Ended(ReadingFault fault) =>
            flat.Ended(ReadingStage.Front, fault, zones.Quality, zones.Found.Indicator);
    }

    // The section as it lay before the camera, and the standard uncertainty of a depth that this leaves, as a share of it.
    // A disc shows two poses with the same rim; a card beside it tells which, or the rough front decides between them.
    private static (FlatSection Flat, double PoseShare) Posed(Scene scene, SectionZones zones)
    {
        var flat = zones.Flat;
        if (flat.Located.Outline.Rim is not { } rim || flat.Known.Section is not RoundSection round)
            return (flat, 0);
        var front = zones.Samples.FrontPoints(zones.Found.RoughRows).Select(flat.Map.ToPx).ToList();
        var (disc, grownShare) = rim.Disc;
        var (view, share) =
            BesideCard(scene, flat, rim.Ellipse, round.DiameterMm)
            ?? Grown(DiscView.Choose(disc, round.DiameterMm, scene.Camera, front));
        var (plan, map) = FlatteningStage.Round(round, view, rim);
        return (flat.Seen(scene.Photo, plan, map), share);

        (Homography, double) Grown((Homography View, double Share) chosen) =>
            (chosen.View, double.Hypot(chosen.Share, grownShare));
    }

    private static (Homography, double)? BesideCard(Scene scene, FlatSection flat, Ellipse rim, double diameterMm) =>
        scene.Card is { } card && flat.Known.Card is null
            ? DiscBesideCard.View(card, rim, diameterMm, scene.Camera)
            : null;

    private static SectionFront Trace(FlatSection flat, SectionZones zones)
    {
        var plan = flat.Plan;
        var table = new EvidenceTable(zones.Found, zones.Samples);
        var rowMm = Math.Max(LeastRowMm, 1 / flat.Drawn.PxPerMm);
        var deepestMm = (BeyondShare * zones.Samples.DeepestMm(zones.Found.RoughRows)) + BeyondMm;
        var strips = plan
            .Faces.Select(face =>
                EvidenceStrip.Of(
                    FaceStrip.Over(plan, face, ColumnMm, rowMm, deepestMm),
                    flat.Drawn,
                    plan,
                    table,
                    zones.Touches
                )
            )
            .ToList();
        var fronts = LeftOut.Mark(FrontReader.Read(plan, strips), zones.Touches);
        return new(plan, table, strips, [.. fronts.Select(front => WithoutBare(front, flat))]);
    }

    // Nothing is read where no edge is seen at the rim.
    private static FaceFront WithoutBare(FaceFront front, FlatSection flat)
    {
        var outline = flat.Located.Outline;
        var count = outline.Bare.Count;
        if (outline.Rim is not { } rim || count == 0)
            return front;
        bool IsBare(int column) =>
            outline.Bare[rim.StationOf(flat.Map.ToPx(front.Strip.Face.At(front.Strip.S(column), 0)), count)];
        return front with { Hidden = [.. front.Hidden.Select((isHidden, column) => isHidden || IsBare(column))] };
    }

    // What is uncertain of all its depths alike.
    private static DepthErrors Errors(FlatSection flat, Indicator indicator, double poseShare) =>
        new(
            new(flat.Located.Uncertainty.Cause, flat.Located.Uncertainty.Px / flat.PxPerMm),
            indicator.IsWeakEvidence
                ? new(
                    indicator.BleedMm.Value,
                    double.Hypot(indicator.BleedMm.StandardUncertainty, DepthCauses.NoReagentMm)
                )
                : indicator.BleedMm,
            indicator.IsWeakEvidence
                ? DepthCauses.NoReagent
                : DepthCauses.DyeCreep with
                {
                    Provenance = indicator.Provenance,
                },
            flat.Known.SizeShare,
            flat.Known.Cause,
            poseShare
        );

    // Weak evidence in a place that nobody showed, and not even a border: bare wood looks like this.
    private static bool IsDoubtful(ReadingRequest request, Indicator indicator, DepthStatistics depth) =>
        indicator.IsWeakEvidence
        && request.Indicator is null
        && request.OutlinePx is null
        && depth.FifthPercentileMm.Value < ShallowShare * depth.MeanMm.Value
        && depth.MaximumMm.Value > DeepShare * depth.MeanMm.Value;
}

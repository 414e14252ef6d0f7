using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Stages;

/// <summary>Fifth stage: reads the front to a fraction of a pixel.</summary>
internal static class FrontStage
{
    /// <summary>Focal length of a usual camera, as a share of the photograph's longer side, where the file does not say.</summary>
    private const double FocalPerLongSide = 0.95;

    /// <summary>Distance between columns along a face, mm, and the least between rows inward.</summary>
    private const double ColumnMm = 0.5;

    private const double LeastRowMm = 0.12;

    /// <summary>Well below the deepest rough front there is nothing to find: this share of it and a little more.</summary>
    private const double BeyondShare = 1.25;

    private const double BeyondMm = 8;

    /// <summary>The section as it lay before the camera, with the share of a depth that this leaves in doubt.</summary>
    /// <remarks>A disc shows two poses that its rim cannot tell apart; the rough front does.</remarks>
    public static (FlatSection Flat, double PoseShare) Posed(
        Scene scene,
        LocatedSection located,
        FlatSection flat,
        SectionZones zones
    )
    {
        if (located.Outline.Rim is not { } rim || flat.Known.Section is not RoundSection round)
            return (flat, 0);
        var front = zones.Samples.FrontPoints(zones.Found.RoughRows).Select(flat.Map.ToPx).ToList();
        var camera = new Camera(scene.Photo.WidthPx, scene.Photo.HeightPx, FocalPerLongSide * scene.LongSidePx);
        var (view, share) = DiscView.Choose(rim, round.DiameterMm, camera, front);
        var map = new SectionMap(view, null);
        return (flat.Seen(scene.Photo, FlatteningStage.RoundPlan(round, map, located.Outline.Points[0]), map), share);
    }

    /// <summary>The front along every face.</summary>
    public static SectionFront Trace(FlatSection flat, SectionZones zones)
    {
        var plan = flat.Plan;
        var table = new EvidenceTable(zones.Found.Zones!, zones.Samples);
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
        return new(plan, table, strips, LeftOut.Mark(FrontReader.Read(plan, strips), zones.Touches));
    }

    /// <summary>What is uncertain of all its depths alike.</summary>
    public static DepthErrors Errors(LocatedSection located, FlatSection flat, Indicator indicator, double poseShare) =>
        new(
            new(located.Uncertainty.Cause, located.Uncertainty.Px / flat.PxPerMm),
            indicator.BleedMm,
            DepthCauses.DyeCreep with
            {
                Provenance = indicator.Provenance,
            },
            flat.Known.SizeShare,
            poseShare
        );

    /// <summary>Why a depth that was read is not given; null where it is.</summary>
    /// <remarks>Weak evidence in a place that nobody showed, and not even a border: bare wood looks like this.</remarks>
    public static ReadingFault? Doubt(ReadingRequest request, Indicator indicator, DepthStatistics depth)
    {
        const double Shallow = 0.15;
        const double Deep = 2;
        return
            indicator.IsWeakEvidence
            && request.Indicator is null
            && request.OutlinePx is null
            && depth.FifthPercentileMm.Value < Shallow * depth.MeanMm.Value
            && depth.MaximumMm.Value > Deep * depth.MeanMm.Value
            ? new DoubtfulBorder()
            : null;
    }
}

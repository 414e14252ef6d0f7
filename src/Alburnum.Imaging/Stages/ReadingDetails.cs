using Alburnum.Imaging.Front;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>A reading made whole: beside the depth, heartwood, required depth, incisions, the nearest untreated wood, and what to mark in the photograph.</summary>
internal static class ReadingDetails
{
    /// <summary>The whole reading.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="flat">The section.</param>
    /// <param name="front">Its front.</param>
    /// <param name="read">Its depth.</param>
    /// <param name="soFar">What the stages before have told.</param>
    public static Read Of(
        ReadingRequest request,
        FlatSection flat,
        SectionFront front,
        ReadProfile read,
        NotDetermined soFar
    )
    {
        var (plan, map) = (flat.Plan, flat.Map);
        var heartwood = HeartwoodOf(request, flat, front);
        var profile = heartwood.Area is { } area ? SapwoodReader.With(read.Profile, plan, area) : read.Profile;
        return new(profile)
        {
            Quality = soFar.Quality,
            Indicator = soFar.Indicator,
            Outline = soFar.Outline!,
            Scale = soFar.Scale!,
            Budget = read.Budget,
            BoundaryPx = FrontLines.Of(plan, profile, map),
            LeftOutPx = MarksPx.LeftOut(plan, profile, map),
            LeastPx = MarksPx.Least(plan, profile, map),
            NearestUntreatedMm = NearestUntreated.Of(plan, profile),
            Heartwood = heartwood.Reading,
            Incised = request.IsIncised ? Incised(profile) : null,
            Reached = request.RequiredMm is { } mm ? OpenHeartwood.Reached(profile, plan, heartwood.Area, mm) : null,
        };
    }

    // What the user shows goes before what the photograph tells.
    private static Heartwood HeartwoodOf(ReadingRequest request, FlatSection flat, SectionFront front)
    {
        if (request.Heartwood is { } border)
            return Heartwood.Shown(border, flat.Map, flat.Plan);
        var (signs, sign) = request.HeartwoodReagent is { } reagent
            ? (HeartwoodSigns.Of(reagent), HeartwoodSign.Reagent)
            : (HeartwoodSigns.Natural, HeartwoodSign.Colour);
        var seen = HeartwoodFinder.Look(flat.Drawn, flat.Plan, front.Fronts, front.Table.Zones.Light, signs);
        return Heartwood.Detected(seen, sign, flat.Map, flat.Plan);
    }

    private static IncisedReading Incised(DepthProfile profile)
    {
        var faces = profile.Faces.Select(IncisedBorder.Of).ToList();
        return new(
            faces,
            SectionDepth.Of(
                [.. profile.Faces.Zip(faces, (face, own) => face with { DepthMm = own.EnvelopeMm })],
                profile.Statistics.MeanMm.StandardUncertainty
            )
        );
    }
}

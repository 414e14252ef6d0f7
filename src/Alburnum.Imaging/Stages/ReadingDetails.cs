using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Front;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>A reading made whole: beside the depth, heartwood, required depth, incisions, the nearest untreated wood, and what to mark in the photograph.</summary>
internal static class ReadingDetails
{
    /// <summary>The whole reading.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="zones">The section and its zones.</param>
    /// <param name="front">Its front.</param>
    /// <param name="read">Its depth.</param>
    public static Read Of(ReadingRequest request, SectionZones zones, SectionFront front, ReadProfile read)
    {
        var flat = zones.Flat;
        var (plan, map) = (flat.Plan, flat.Map);
        var heartwood = HeartwoodOf(request, flat, front.Fronts, front.Table.Zones.Light);
        var profile = heartwood.Match(known => SapwoodReader.With(read.Profile, plan, known.Area), _ => read.Profile);
        return new(profile)
        {
            Quality = zones.Quality,
            Indicator = zones.Found.Indicator,
            Outline = flat.Located.Outline.InPhotograph,
            Scale = flat.Scale,
            Budget = read.Budget,
            BoundaryPx = FrontLines.Of(plan, profile, map),
            LeftOutPx = MarksPx.LeftOut(plan, profile, map),
            LeastPx = MarksPx.Least(plan, profile, map),
            NearestUntreatedMm = NearestUntreated.Of(plan, profile),
            Heartwood = heartwood.Match(known => known.Reading, unknown => unknown),
            Incised = request.IsIncised ? Incised(profile) : null,
            Reached = request.RequiredMm is { } mm
                ? heartwood.Match(
                    known => OpenHeartwood.Reached(profile, plan, known.Area, mm),
                    _ => ReachedDepth.Of(profile, mm)
                )
                : null,
        };
    }

    /// <summary>The sapwood of a section on which nothing is treated, where its heartwood is shown or seen.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="flat">The section.</param>
    /// <param name="samples">Its colours.</param>
    public static Outcome<SapwoodAlone, UnknownHeartwood> SapwoodOf(
        ReadingRequest request,
        FlatSection flat,
        WoodSamples samples
    )
    {
        var light = new IlluminationFit(samples).Of(new float[samples.Count]);
        return HeartwoodOf(request, flat, [], light)
            .Then<SapwoodAlone>(known => SapwoodReader.Alone(flat.Plan, known, request.StepMm));
    }

    // What the user shows comes before what is detected in the photograph.
    private static Outcome<KnownHeartwood, UnknownHeartwood> HeartwoodOf(
        ReadingRequest request,
        FlatSection flat,
        IReadOnlyList<FaceFront> fronts,
        Illumination light
    )
    {
        if (request.Heartwood is { } border)
            return KnownHeartwood.Shown(border, flat.Map, flat.Plan);
        var (signs, sign) = request.HeartwoodReagent is { } reagent
            ? (HeartwoodSigns.Of(reagent), HeartwoodSign.Reagent)
            : (HeartwoodSigns.Natural, HeartwoodSign.Colour);
        var seen = HeartwoodFinder.Look(flat.Drawn, flat.Plan, fronts, light, signs);
        return KnownHeartwood.Detected(seen, sign, flat.Map, flat.Plan);
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

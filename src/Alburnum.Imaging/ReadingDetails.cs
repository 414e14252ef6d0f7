using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;

namespace Alburnum.Imaging;

/// <summary>What is told of a profile beyond depth: sapwood, required depth, incisions, the nearest untreated wood.</summary>
internal static class ReadingDetails
{
    /// <summary>The reading with all of it.</summary>
    /// <param name="reading">What is read so far.</param>
    /// <param name="profile">Its profile.</param>
    /// <param name="plan">The section.</param>
    /// <param name="map">Where it lies in the photograph.</param>
    /// <param name="seen">Looks for the heartwood in the photograph; called where the user has not shown it.</param>
    /// <param name="request">What is asked for.</param>
    public static SectionReading With(
        SectionReading reading,
        DepthProfile profile,
        SectionPlan plan,
        SectionMap map,
        Func<HeartwoodSeen> seen,
        ReadingRequest request
    )
    {
        var notes = new List<string>(reading.Notes);
        var heartwood = request.Heartwood is { } border
            ? HeartwoodTold.Given(border, map, plan)
            : HeartwoodTold.Seen(
                seen(),
                request.HeartwoodReagent is null ? HeartwoodEvidence.Colour : HeartwoodEvidence.Reagent,
                map,
                plan
            );
        if (heartwood.Area is { } area)
            profile = SapwoodReader.With(profile, plan, area);
        else if (request.Heartwood is not null || request.HeartwoodReagent is not null)
            notes.Add(heartwood.Reading.InWords);
        var incised = request.IsIncised ? profile.Faces.Select(IncisedBorder.Of).ToList() : null;
        return reading with
        {
            Profile = profile,
            Notes = notes,
            Heartwood = heartwood.Reading,
            LeftOutPx = MarksPx.LeftOut(plan, profile, map),
            LeastPx = MarksPx.Least(plan, profile, map),
            NearestUntreatedMm = NearestUntreated.Of(plan, profile),
            Incised = incised,
            BetweenIncisions = incised is null ? null : Envelope(profile, incised),
            Reached = request.RequiredMm is { } mm ? OpenHeartwood.Reached(profile, plan, heartwood.Area, mm) : null,
        };
    }

    private static DepthStatistics? Envelope(DepthProfile profile, List<IncisedFace> incised) =>
        SectionDepth.Of(
            [.. profile.Faces.Zip(incised, (face, own) => face with { DepthMm = own.EnvelopeMm })],
            profile.Statistics.MeanMm.StandardUncertainty
        );
}

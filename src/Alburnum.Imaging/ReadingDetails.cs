using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Zones;
using Alburnum.Penetration;

namespace Alburnum.Imaging;

/// <summary>What is told of a profile beyond depth: sapwood, required depth, incisions, the nearest untreated wood.</summary>
internal static class ReadingDetails
{
    public static SectionReading With(
        SectionReading reading,
        DepthProfile profile,
        SectionPlan plan,
        Homography mmToPx,
        ReadingRequest request
    )
    {
        var notes = new List<string>(reading.Notes);
        if (request.Heartwood is { } border)
        {
            if (HeartwoodArea.Of(border, mmToPx.Inverse()) is { } area)
                profile = SapwoodReader.With(profile, plan, area);
            else
                notes.Add(
                    "Sapwood not determined: the points shown cannot be a border of the heartwood. Show three or more that do not lie on a line."
                );
        }
        var incised = request.IsIncised ? profile.Faces.Select(IncisedBorder.Of).ToList() : null;
        return reading with
        {
            Profile = profile,
            Notes = notes,
            LeftOutPx = MarksPx.LeftOut(plan, profile, mmToPx),
            LeastPx = MarksPx.Least(plan, profile, mmToPx),
            NearestUntreatedMm = NearestUntreated.Of(plan, profile),
            Incised = incised,
            BetweenIncisions = incised is null ? null : Envelope(profile, incised),
            Reached = request.RequiredMm is { } mm ? ReachedDepth.Of(profile, mm) : null,
        };
    }

    private static DepthStatistics? Envelope(DepthProfile profile, List<IncisedFace> incised) =>
        SectionDepth.Of(
            [.. profile.Faces.Zip(incised, (face, own) => face with { DepthMm = own.EnvelopeMm })],
            profile.Statistics.MeanMm.StandardUncertainty
        );
}

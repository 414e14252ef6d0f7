using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Judging;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>A section whose treated and untreated wood are known by their colours.</summary>
/// <param name="Flat">The section.</param>
/// <param name="Quality">How good the photograph is for this indicator.</param>
/// <param name="Samples">Colours of the section.</param>
/// <param name="Found">The two zones.</param>
/// <param name="Touches">Places that the user touched, on the section.</param>
internal sealed record SectionZones(
    FlatSection Flat,
    Quality Quality,
    WoodSamples Samples,
    TwoZonesFound Found,
    IReadOnlyList<(PointMm At, TouchKind Kind)> Touches
);

/// <summary>Fourth stage: detects treated and untreated wood.</summary>
internal static class ZonesStage
{
    /// <summary>The two zones that explain the photograph best, where there are two and their colours suit the indicator named.</summary>
    public static Outcome<SectionZones, NotDetermined> Detect(Scene scene, JudgedSection judged, CancellationToken ct)
    {
        var (flat, request) = (judged.Flat, scene.Request);
        var touches = request.Touches.Select(touch => (flat.Map.ToMm(touch.At), touch.Kind)).ToList();
        var samples = WoodSamples.Gather(flat.Drawn, flat.Plan, touches);
        IReadOnlyList<Indicator> candidates = request.Indicator is { } one ? [one] : request.Candidates;
        var found = new ZoneFinder(samples, candidates, request.HeartwoodReagent).Find(ct);
        var quality = judged.Quality.WithEvidence(found.Indicator);
        if (OneTone.IsAll(samples, found))
            return flat.Ended(ReadingStage.Zones, new NoColour(), judged.Quality, request.Indicator);
        return (Mistaken(request, samples, found, ct), found) switch
        {
            ({ } other, _) => Ended(other),
            (null, OneZoneFound single) => WithSapwood(
                Ended(new NoFront(single.IsTreated) { Named = request.Indicator })
            ),
            (null, TwoZonesFound both) => new SectionZones(flat, quality, samples, both, touches),
            _ => throw new InvalidOperationException($"{found.GetType().Name} is no finding of zones."),
        };

        NotDetermined Ended(ReadingFault fault) => flat.Ended(ReadingStage.Zones, fault, quality, found.Indicator);

        NotDetermined WithSapwood(NotDetermined ended) =>
            ended.Fault is NoFront { IsTreated: false }
                ? ReadingDetails
                    .SapwoodOf(request, flat, samples)
                    .Match(
                        sapwood => ended with { Sapwood = sapwood, Heartwood = sapwood.Heartwood },
                        unknown => ended with { Heartwood = unknown }
                    )
                : ended;
    }

    /// <summary>Another indicator than the one named, where the photograph clearly shows that one; null where it shows none.</summary>
    private static OtherIndicator? Mistaken(
        ReadingRequest request,
        WoodSamples samples,
        ZonesFound found,
        CancellationToken ct
    )
    {
        if (request.Indicator is not { } named || request.Candidates.All(each => each.Key == named.Key))
            return null;
        var seen =
            found is TwoZonesFound
                ? found
                : new ZoneFinder(samples, request.Candidates, request.HeartwoodReagent).Find(ct);
        return seen is TwoZonesFound two && IndicatorFit.Better(two.Zones, named, request.Candidates) is { } other
            ? new(named, other)
            : null;
    }
}

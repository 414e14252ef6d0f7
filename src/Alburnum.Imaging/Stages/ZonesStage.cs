using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Judging;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>Treated and untreated wood as the colours tell them.</summary>
/// <param name="Samples">Colours of the section.</param>
/// <param name="Found">The zones.</param>
/// <param name="Touches">Places that the user touched, on the section.</param>
internal sealed record SectionZones(
    WoodSamples Samples,
    ZonesFound Found,
    IReadOnlyList<(PointMm At, TouchKind Kind)> Touches
);

/// <summary>Fourth stage: tells treated wood from untreated.</summary>
internal static class ZonesStage
{
    /// <summary>The zones that explain the photograph best.</summary>
    public static SectionZones Tell(Scene scene, FlatSection flat, CancellationToken ct)
    {
        var request = scene.Request;
        var touches = request.Touches.Select(touch => (flat.Map.ToMm(touch.At), touch.Kind)).ToList();
        var samples = WoodSamples.Gather(flat.Drawn, flat.Plan, touches);
        IReadOnlyList<Indicator> candidates = request.Indicator is { } one ? [one] : request.Candidates;
        return new(samples, new ZoneFinder(samples, candidates).Find(ct), touches);
    }

    /// <summary>Why no front can be read between them; null where one can.</summary>
    public static ReadingFault? Fault(Scene scene, SectionZones zones, CancellationToken ct) =>
        Mistaken(scene.Request, zones, ct) is { } other ? new OtherIndicator(scene.Request.Indicator!, other)
        : zones.Found.Zones is null ? new NoFront(zones.Found.Finding == ZoneFinding.AllTreated)
        : null;

    // Another indicator than the one named, where the photograph clearly shows that one.
    private static Indicator? Mistaken(ReadingRequest request, SectionZones zones, CancellationToken ct)
    {
        if (request.Indicator is not { } named || request.Candidates.All(each => each.Key == named.Key))
            return null;
        var told = zones.Found.Zones ?? new ZoneFinder(zones.Samples, request.Candidates).Find(ct).Zones;
        return told is null ? null : IndicatorFit.Better(told, named, request.Candidates);
    }
}

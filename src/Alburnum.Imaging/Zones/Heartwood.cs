using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Zones;

/// <summary>The heartwood as an area, and what is known of it.</summary>
/// <param name="Area">The area; null where it is not known.</param>
/// <param name="Reading">What is known of it.</param>
internal sealed record Heartwood(HeartwoodArea? Area, HeartwoodReading Reading)
{
    /// <summary>From what the user showed; its area is null where it cannot be a border.</summary>
    public static Heartwood Shown(HeartwoodBorder border, SectionMap map, SectionPlan plan) =>
        HeartwoodArea.Of(border, map.ToMm, plan) is { } area
            ? new(area, new ShownHeartwood(area.BorderMm))
            : new(null, new UnknownHeartwood(HeartwoodFault.NoBorderShown, IsMissed: true));

    /// <summary>From what was seen in the photograph.</summary>
    public static Heartwood Detected(HeartwoodSeen seen, HeartwoodSign sign, SectionMap map, SectionPlan plan)
    {
        if (seen.Border is not { } border)
            return new(null, new UnknownHeartwood(seen.Fault!.Value, IsMissed: sign == HeartwoodSign.Reagent));
        var area = HeartwoodArea.Of(border, plan);
        var circle = border.Circle;
        return new(
            area,
            new DetectedHeartwood(
                sign,
                area.BorderMm,
                Lines(circle, map, plan),
                map.ToPx(circle.X, circle.Y),
                circle.RadiusMm
            )
        );
    }

    // The circle's stretches on the section.
    private static List<IReadOnlyList<PointPx>> Lines(Circle circle, SectionMap map, SectionPlan plan)
    {
        var lines = new List<IReadOnlyList<PointPx>>();
        var line = new List<PointPx>();
        foreach (var place in circle.Line(1))
        {
            if (plan.InwardMm(place) >= 0)
            {
                line.Add(map.ToPx(place));
                continue;
            }
            if (line.Count > 1)
                lines.Add(line);
            line = [];
        }
        if (line.Count > 1)
            lines.Add(line);
        return lines;
    }
}

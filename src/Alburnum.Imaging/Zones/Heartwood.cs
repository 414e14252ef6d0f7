using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Zones;

/// <summary>The heartwood as an area, and how it is known.</summary>
/// <param name="Area">The area.</param>
/// <param name="Reading">How it is known.</param>
internal sealed record KnownHeartwood(HeartwoodArea Area, HeartwoodReading Reading)
{
    /// <summary>Distance between the points of a border drawn, mm. Our own choice.</summary>
    private const double LineStepMm = 1;

    /// <summary>From what the user showed.</summary>
    public static Outcome<KnownHeartwood, UnknownHeartwood> Shown(
        HeartwoodBorder border,
        SectionMap map,
        SectionPlan plan
    ) =>
        HeartwoodArea.Of(border, map.ToMm, plan).Has(out var area, out var fault)
            ? new KnownHeartwood(area, new ShownHeartwood(area.BorderMm))
            : new UnknownHeartwood(fault, IsMissed: true);

    /// <summary>From what was seen in the photograph.</summary>
    public static Outcome<KnownHeartwood, UnknownHeartwood> Detected(
        Outcome<BorderFit, HeartwoodFault> seen,
        HeartwoodSign sign,
        SectionMap map,
        SectionPlan plan
    )
    {
        if (!seen.Has(out var border, out var fault))
            return new UnknownHeartwood(fault, IsMissed: sign == HeartwoodSign.Reagent);
        var area = HeartwoodArea.Of(border, plan);
        var circle = border.Circle;
        return new KnownHeartwood(
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
        foreach (var place in circle.Line(LineStepMm))
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

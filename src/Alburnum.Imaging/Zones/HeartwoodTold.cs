using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Zones;

/// <summary>What is known of the heartwood, as an area and in words.</summary>
/// <param name="Area">The area; null where it is not known.</param>
/// <param name="Reading">The same for people.</param>
internal sealed record HeartwoodTold(HeartwoodArea? Area, HeartwoodReading Reading)
{
    private const string WhatToDo =
        "Where the rule asks for the sapwood, show the border by hand, or spray a reagent for heartwood that suits the timber.";

    /// <summary>From what the user showed; its area is null where it cannot be a border.</summary>
    public static HeartwoodTold Given(HeartwoodBorder border, SectionMap map, SectionPlan plan)
    {
        var area = HeartwoodArea.Of(border, map.ToMm, plan);
        return area is null
            ? Not("the points shown cannot be a border of the heartwood. Show three or more that do not lie on a line.")
            : new(
                area,
                new(HeartwoodEvidence.Given, area.BorderMm, [], null, null, $"Heartwood as shown, border ± {Mm(area)}.")
            );
    }

    /// <summary>From what was seen in the photograph.</summary>
    public static HeartwoodTold Seen(HeartwoodSeen seen, HeartwoodEvidence evidence, SectionMap map, SectionPlan plan)
    {
        if (seen.Border is not { } border)
            return Not($"{seen.WhyNot}. {WhatToDo}");
        var area = HeartwoodArea.Of(border, plan);
        var by = evidence == HeartwoodEvidence.Reagent ? "by its reagent" : "by its colour on untreated wood";
        var circle = border.Circle;
        return new(
            area,
            new(
                evidence,
                area.BorderMm,
                Lines(circle, map, plan),
                map.ToPx(circle.X, circle.Y),
                circle.RadiusMm,
                $"Heartwood told {by}, border ± {Mm(area)}; under treated wood it is the same circle about the pith."
            )
        );
    }

    private static HeartwoodTold Not(string why) =>
        new(null, new(HeartwoodEvidence.None, null, [], null, null, $"Sapwood not determined: {why}"));

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

    private static string Mm(HeartwoodArea area) =>
        string.Create(CultureInfo.InvariantCulture, $"{area.BorderMm:0.0} mm");
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Marks;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Documents;

/// <summary>From marks on a photograph to the form in which they leave the program, and back.</summary>
public static class MarksMapping
{
    /// <summary>The document of some marks; null where nothing is pointed out.</summary>
    public static MarksDocument? From(PhotographMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var pith = marks.Heartwood as HeartwoodAboutPith;
        return marks.IsNone
            ? null
            : new()
            {
                CornersPx = Points(marks.OutlinePx),
                Scale = marks.ScaleBar is { } bar
                    ? new()
                    {
                        FromPx = Point(bar.From),
                        ToPx = Point(bar.To),
                        LengthMm = bar.LengthMm,
                    }
                    : null,
                MeasuredSize = marks.MeasuredSize?.Label,
                TreatedPx = Touched(marks, TouchKind.Treated),
                UntreatedPx = Touched(marks, TouchKind.Untreated),
                LeaveOutPx = Touched(marks, TouchKind.LeaveOut),
                HeartwoodPx = Points((marks.Heartwood as OutlinedHeartwood)?.PolygonPx),
                HeartwoodRingPx = Points((marks.Heartwood as RingOfHeartwood)?.PointsPx),
                PithPx = pith is null ? null : Point(pith.PithPx),
                HeartwoodRadiusMm = pith?.RadiusMm,
            };
    }

    /// <summary>The marks of a document as they would be written; none for null.</summary>
    public static WrittenMarks Written(MarksDocument? document) =>
        document is null
            ? WrittenMarks.None
            : new()
            {
                Corners = Written(document.CornersPx),
                Scale = document.Scale is { } bar ? new(Written(bar.FromPx), Written(bar.ToPx), bar.LengthMm) : null,
                MeasuredSize =
                    document.MeasuredSize is { } text && SectionText.TryParse(text, out var size) ? size : null,
                Treated = Written(document.TreatedPx) ?? [],
                Untreated = Written(document.UntreatedPx) ?? [],
                LeaveOut = Written(document.LeaveOutPx) ?? [],
                Heartwood = Written(document.HeartwoodPx),
                HeartwoodRing = Written(document.HeartwoodRingPx),
                Pith = document is { PithPx: { } at, HeartwoodRadiusMm: { } mm } ? new(Written(at), mm) : null,
            };

    /// <summary>The marks in words, for a report: "corners; 2 places treated; heartwood outlined". Empty where there are none.</summary>
    public static string InWords(MarksDocument? marks)
    {
        if (marks is null)
            return "";
        string?[] parts =
        [
            marks.CornersPx is null ? null : Said("marks.outline"),
            marks.Scale is { } bar ? Said("marks.length", ("length", Figures.Mm(bar.LengthMm))) : null,
            marks.MeasuredSize is { } size ? Said("marks.size", ("size", size)) : null,
            Places(marks.TreatedPx, "marks.one-treated", "marks.treated"),
            Places(marks.UntreatedPx, "marks.one-untreated", "marks.untreated"),
            Places(marks.LeaveOutPx, "marks.one-left-out", "marks.left-out"),
            marks.HeartwoodPx is null ? null : Said("marks.heartwood"),
            marks.HeartwoodRingPx is null ? null : Said("marks.heartwood-ring"),
            marks.HeartwoodRadiusMm is { } radius ? Said("marks.pith", ("radius", Figures.Mm(radius))) : null,
        ];
        return Said("marks.pointed-out", ("parts", string.Join("; ", parts.Where(part => part is not null))));
    }

    private static string? Places(IReadOnlyList<double[]>? points, string one, string more) =>
        points?.Count switch
        {
            null or 0 => null,
            1 => Said(one),
            { } count => Said(more, ("count", Figures.Whole(count))),
        };

    private static List<double[]>? Touched(PhotographMarks marks, TouchKind kind) =>
        marks.Touched(kind) is { Count: > 0 } points ? Points(points) : null;

    private static List<double[]>? Points(IReadOnlyList<PointPx>? points) => points?.Select(Point).ToList();

    private static double[] Point(PointPx point) => [Math.Round(point.X, 1), Math.Round(point.Y, 1)];

    private static List<MarkedPoint>? Written(IReadOnlyList<double[]>? points) => points?.Select(Written).ToList();

    private static MarkedPoint Written(double[] point) => new(point[0], point[1]);
}

using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Marks;

namespace Alburnum.Workflows.Measuring;

/// <summary>From marks as they are written to the marks that the reader of photographs works with.</summary>
public static class MarksOnPhotograph
{
    /// <summary>The marks for the reader.</summary>
    public static PhotographMarks Of(WrittenMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        return new()
        {
            OutlinePx = marks.Corners is { } corners ? Points(corners) : null,
            ScaleBar = marks.Scale is { } bar ? new(Point(bar.From), Point(bar.To), bar.LengthMm) : null,
            MeasuredSize = marks.MeasuredSize,
            Touches =
            [
                .. marks.Treated.Select(at => new Touch(Point(at), TouchKind.Treated)),
                .. marks.Untreated.Select(at => new Touch(Point(at), TouchKind.Untreated)),
                .. marks.LeaveOut.Select(at => new Touch(Point(at), TouchKind.LeaveOut)),
            ],
            Heartwood = marks switch
            {
                { Heartwood: { } around } => new OutlinedHeartwood(Points(around)),
                { HeartwoodRing: { } along } => new RingOfHeartwood(Points(along)),
                { Pith: { } pith } => new HeartwoodAboutPith(Point(pith.Pith), pith.RadiusMm),
                _ => null,
            },
        };
    }

    /// <summary>Touched places that lie beside the photograph, and would be passed over in silence.</summary>
    internal static IReadOnlyList<MarkFault> Beside(WrittenMarks marks, SectionReading reading)
    {
        var expected = string.Create(
            CultureInfo.InvariantCulture,
            $"a point on the photograph, which is {reading.WidthPx} × {reading.HeightPx} pixels"
        );
        bool IsBeside(MarkedPoint at) =>
            !(at.X >= 0 && at.X <= reading.WidthPx && at.Y >= 0 && at.Y <= reading.HeightPx);
        IEnumerable<MarkFault> Faults(string field, IReadOnlyList<MarkedPoint> places) =>
            places.Where(IsBeside).Select(at => new MarkFault(field, MarkText.Write([at]), expected));
        return
        [
            .. Faults(MarkField.Treated, marks.Treated),
            .. Faults(MarkField.Untreated, marks.Untreated),
            .. Faults(MarkField.LeaveOut, marks.LeaveOut),
        ];
    }

    private static List<PointPx> Points(IReadOnlyList<MarkedPoint> points) => [.. points.Select(Point)];

    private static PointPx Point(MarkedPoint point) => new(point.X, point.Y);
}

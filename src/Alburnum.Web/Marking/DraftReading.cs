using Alburnum.Facts;
using Alburnum.Records.Marks;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using Alburnum.Workflows.Measuring;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web.Marking;

/// <summary>What a draft says: marks that are whole, everything that is to be drawn, and what still waits or cannot be read.</summary>
/// <param name="Marks">Marks that the reader can use.</param>
/// <param name="Shown">Every point, whole or not, for the picture.</param>
/// <param name="Waiting">What is begun and not yet used, one sentence each.</param>
/// <param name="Problems">What cannot be read.</param>
internal sealed record DraftReading(
    WrittenMarks Marks,
    MarksDocument Shown,
    IReadOnlyList<string> Waiting,
    IReadOnlyList<InputProblem> Problems
)
{
    /// <summary>Reads a draft.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="section">Section of the piece: it says how many corners there are.</param>
    public static DraftReading Of(MarkDraft draft, Section section)
    {
        var (marks, faults) = MarksReader.Read(field => Text(draft, field), NameOf, section);
        return new(
            // Corners may be touched in any order.
            section is RoundSection
            || marks.Corners is not { } corners
                ? marks
                : marks with
                {
                    Corners = MarkedCorners.InOrder(corners),
                },
            Drawn(draft),
            [.. faults.Select(fault => WaitsFor(fault, section)).OfType<string>()],
            [.. faults.Where(fault => WaitsFor(fault, section) is null).Select(fault => fault.At("marks", NameOf))]
        );
    }

    // The page has a field for the length alone, and an empty field holds nothing.
    private static string? Text(MarkDraft draft, string field)
    {
        var length = field == MarkField.Scale ? draft[MarkDraft.LengthField] : "";
        var text = length.Length > 0 ? $"{draft[field]} {length} mm".Trim() : draft[field];
        return text.Length > 0 ? text : null;
    }

    private static string NameOf(string field) =>
        field == MarkField.HeartwoodRadius ? Said("marking.radius-field")
        : field == MarkField.MeasuredSize ? Said("marking.size-field")
        : Meaning.All.Single(meaning => meaning.Key == field).Name.ToLowerInvariant();

    /// <summary>What a fault waits for, in a sentence; null for one that waiting does not put right.</summary>
    private static string? WaitsFor(MarkFault fault, Section section) =>
        fault switch
        {
            TooFewPoints { Field: MarkField.Corners } rim when section is RoundSection => Waits(
                "marking.waits.rim",
                rim
            ),
            TooFewPoints { Field: MarkField.Corners } corners => Waits("marking.waits.corners", corners),
            TooFewPoints heartwood => Waits("marking.waits.heartwood", heartwood),
            HalfGiven { Field: MarkField.Scale } => Said("marking.waits.scale"),
            HalfGiven => Said("marking.waits.pith"),
            _ => null,
        };

    private static string Waits(string key, TooFewPoints fault) =>
        Said(
            key,
            ("given", Wording.Capital(Wording.Current.Number(fault.Count))),
            ("needed", Wording.Current.Number(fault.Least))
        );

    private static MarksDocument Drawn(MarkDraft draft)
    {
        IReadOnlyList<MarkedPoint> Points(string field) =>
            MarkText.TryPoints(draft[field], out var points, out _) ? points : [];
        List<double[]>? Xys(IReadOnlyList<MarkedPoint> points) => points.Count == 0 ? null : [.. points.Select(Xy)];
        var (scale, along) = (Points(MarkField.Scale), Points(MarkField.HeartwoodRing));
        return new()
        {
            CornersPx = Xys(Points(MarkField.Corners)),
            Scale = scale is [var from, var to, ..]
                ? new()
                {
                    FromPx = Xy(from),
                    ToPx = Xy(to),
                    LengthMm = MarkText.LengthMm(draft[MarkDraft.LengthField], Ranges.ScaleMm) ?? 0,
                }
                : null,
            TreatedPx = Xys(Points(MarkField.Treated)),
            UntreatedPx = Xys(Points(MarkField.Untreated)),
            LeaveOutPx = Xys(Points(MarkField.LeaveOut)),
            HeartwoodPx = Xys(Points(MarkField.Heartwood)),
            // The first end of a length has no line yet; a dot shows it.
            HeartwoodRingPx = Xys(scale.Count == 1 ? [.. along, scale[0]] : along),
            PithPx = Points(MarkField.Pith) is [var middle, ..] ? Xy(middle) : null,
            HeartwoodRadiusMm = MarkText.LengthMm(draft[MarkDraft.RadiusField], Ranges.HeartwoodRadiusMm),
        };
    }

    private static double[] Xy(MarkedPoint point) => [point.X, point.Y];
}

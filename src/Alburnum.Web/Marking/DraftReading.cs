using System.Globalization;
using Alburnum.Imaging;
using Alburnum.Records.CaseFolders;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Timber;

namespace Alburnum.Web.Marking;

/// <summary>What a draft says: marks that are whole, everything that is to be drawn, and what still waits or cannot be read.</summary>
/// <param name="Marks">Marks that the reader can use.</param>
/// <param name="Shown">Every point, whole or not, for the picture.</param>
/// <param name="Waiting">What is begun and not yet used, one sentence each.</param>
/// <param name="Problems">What cannot be read.</param>
internal sealed record DraftReading(
    PhotographMarks Marks,
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
        var waiting = new List<string>();
        var problems = new List<InputProblem>();
        IReadOnlyList<PointPx> Points(Meaning meaning) => DraftReading.Points(draft, meaning, problems);
        var (corners, scale, pith) = (Points(Meaning.Corners), Points(Meaning.Scale), Points(Meaning.Pith));
        var (around, along) = (Points(Meaning.Heartwood), Points(Meaning.Ring));
        var lengthMm = Mm(draft, MarkDraft.LengthField, problems);
        var radiusMm = Mm(draft, MarkDraft.RadiusField, problems);
        var (treated, untreated, leaveOut) = (
            Points(Meaning.Treated),
            Points(Meaning.Untreated),
            Points(Meaning.LeaveOut)
        );
        if (new[] { around.Count, along.Count, pith.Count }.Count(count => count > 0) > 1)
            problems.Add(Problem("heartwood", "several borders", "one of heartwood, heartwood ring, or pith"));
        var marks = new PhotographMarks
        {
            OutlinePx = Outline(corners, section, waiting, problems),
            ScaleBar = Bar(scale, lengthMm, waiting, problems),
            Touches =
            [
                .. treated.Select(at => new Touch(at, TouchKind.Treated)),
                .. untreated.Select(at => new Touch(at, TouchKind.Untreated)),
                .. leaveOut.Select(at => new Touch(at, TouchKind.LeaveOut)),
            ],
            Heartwood = problems.Count > 0 ? null : Border(around, along, pith, radiusMm, waiting),
        };
        var shown = new MarksDocument(
            Drawn(corners),
            scale is [var from, var to, ..] ? new(Xy(from), Xy(to), lengthMm ?? 0) : null,
            Drawn(treated),
            Drawn(untreated),
            Drawn(leaveOut),
            Drawn(around),
            // The first end of a length has no line yet; a dot shows it.
            Drawn(scale.Count == 1 ? [.. along, scale[0]] : along),
            pith is [var middle, ..] ? Xy(middle) : null,
            radiusMm
        );
        return new(marks, shown, waiting, problems);
    }

    private static IReadOnlyList<PointPx>? Outline(
        IReadOnlyList<PointPx> corners,
        Section section,
        List<string> waiting,
        List<InputProblem> problems
    )
    {
        if (section is RectangularSection && corners.Count > 4)
            problems.Add(Problem("corners", Wording.English.Count("count.point", corners.Count), "4 corners"));
        var least = section is RoundSection ? 5 : 4;
        if (corners.Count >= least)
            return section is RoundSection ? corners : Clockwise(corners);
        if (corners.Count > 0)
        {
            var kind = section is RoundSection ? "points on the rim" : "corners";
            waiting.Add($"{Word(corners.Count)} of {Word(least).ToLowerInvariant()} {kind}: used when all are there.");
        }
        return null;
    }

    // Corners may be touched in any order; the reader goes round them from the first.
    private static IReadOnlyList<PointPx> Clockwise(IReadOnlyList<PointPx> corners)
    {
        var (x, y) = (corners.Average(corner => corner.X), corners.Average(corner => corner.Y));
        double Turn(PointPx corner) => Math.Atan2(corner.Y - y, corner.X - x);
        var first = Turn(corners[0]);
        return [.. corners.OrderBy(corner => (Turn(corner) - first + (4 * Math.PI)) % (2 * Math.PI))];
    }

    private static ScaleBar? Bar(
        IReadOnlyList<PointPx> ends,
        double? lengthMm,
        List<string> waiting,
        List<InputProblem> problems
    )
    {
        if (ends.Count > 2)
            problems.Add(Problem("known length", Wording.English.Count("count.point", ends.Count), "its two ends"));
        if (ends is [var from, var to] && lengthMm is { } mm && from != to)
            return new(from, to, mm);
        if (ends.Count > 0 || lengthMm is not null)
            waiting.Add("The known length is used when both its ends and its length in mm are there.");
        return null;
    }

    private static HeartwoodBorder? Border(
        IReadOnlyList<PointPx> around,
        IReadOnlyList<PointPx> along,
        IReadOnlyList<PointPx> pith,
        double? radiusMm,
        List<string> waiting
    )
    {
        if (around.Count >= 3)
            return new OutlinedHeartwood(around);
        if (along.Count >= 3)
            return new RingOfHeartwood(along);
        if (pith is [var at] && radiusMm is { } mm)
            return new HeartwoodAboutPith(at, mm);
        if (around.Count + along.Count > 0)
            waiting.Add(
                $"{Word(around.Count + along.Count)} of three points of the heartwood: used when all are there."
            );
        if (pith.Count > 0 || radiusMm is not null)
            waiting.Add("The pith is used when the heartwood's radius in mm is there too, and the other way round.");
        return null;
    }

    private static IReadOnlyList<PointPx> Points(MarkDraft draft, Meaning meaning, List<InputProblem> problems)
    {
        if (MarkText.TryPoints(draft[meaning.Key], out var points, out var broken))
            return points;
        problems.Add(Problem(meaning.Name.ToLowerInvariant(), broken, MarkText.PointsExpected));
        return points;
    }

    private static double? Mm(MarkDraft draft, string field, List<InputProblem> problems)
    {
        var text = draft[field];
        if (text.Length == 0)
            return null;
        if (
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var mm) && mm is > 0 and <= 2000
        )
            return mm;
        var name = field == MarkDraft.LengthField ? "known length" : "heartwood's radius";
        problems.Add(Problem(name, text, "over 0, up to 2000 mm"));
        return null;
    }

    private static InputProblem Problem(string field, string found, string expected) =>
        new("marks", 0, "", field, found, expected);

    private static string Word(int count) =>
        count switch
        {
            1 => "One",
            2 => "Two",
            3 => "Three",
            4 => "Four",
            _ => "Five",
        };

    private static List<double[]>? Drawn(IReadOnlyList<PointPx> points) =>
        points.Count == 0 ? null : [.. points.Select(Xy)];

    private static double[] Xy(PointPx point) => [point.X, point.Y];
}

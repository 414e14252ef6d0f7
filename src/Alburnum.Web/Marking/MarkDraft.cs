using Alburnum.Records.Marks;
using Alburnum.Reports.Documents;
using Alburnum.Workflows.Measuring;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Alburnum.Web.Marking;

/// <summary>
/// Marks being made on a photograph, as the text of each field. It lives in the page's address and nowhere else: going back in the
/// browser goes back a point, and nothing is lost when the program ends.
/// </summary>
internal sealed record MarkDraft
{
    public const string NextField = "next";
    public const string RadiusField = MarkField.HeartwoodRadius;
    public const string SizeField = MarkField.MeasuredSize;
    public const string LengthField = "scaleLength";
    public const string UndoField = "undo";
    private const int UndoStepsMax = 12;

    /// <summary>Every field that holds marks.</summary>
    public static IReadOnlyList<string> Fields { get; } =
    [.. Meaning.All.Select(meaning => meaning.Key), RadiusField, LengthField, SizeField];

    private IReadOnlyDictionary<string, string> Texts { get; init; } =
        new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>What the next point will mean.</summary>
    public Meaning Next { get; init; } = Meaning.Corners;

    /// <summary>What fields held before each of the last points, as "field:text", the latest last.</summary>
    public IReadOnlyList<string> UndoSteps { get; private init; } = [];

    /// <summary>Text of a field; empty where it is.</summary>
    public string this[string field] => Texts.GetValueOrDefault(field, "");

    /// <summary>The draft that says what was kept.</summary>
    public static MarkDraft Of(MarksDocument? kept)
    {
        var marks = MarksMapping.Written(kept);
        var texts = MarkText
            .Fields(marks)
            .ToDictionary(field => field.Field, field => field.Text, StringComparer.Ordinal);
        // On the page lengths have fields of their own, in mm.
        if (marks.Scale is { } bar)
            (texts[Meaning.Scale.Key], texts[LengthField]) = (
                MarkText.Write([bar.From, bar.To]),
                MarkText.Digits(bar.LengthMm)
            );
        if (marks.Pith is { RadiusMm: var radiusMm })
            texts[RadiusField] = MarkText.Digits(radiusMm);
        return new() { Texts = texts };
    }

    /// <summary>The draft that a form or an address holds; null where it holds none.</summary>
    public static MarkDraft? Of(IEnumerable<KeyValuePair<string, StringValues>> given)
    {
        var fields = given.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        return fields.TryGetValue(NextField, out var next)
            ? new()
            {
                Texts = Fields
                    .Where(fields.ContainsKey)
                    .ToDictionary(field => field, field => fields[field].ToString().Trim(), StringComparer.Ordinal),
                Next = Meaning.All.FirstOrDefault(meaning => meaning.Key == next) ?? Meaning.Corners,
                UndoSteps = fields.TryGetValue(UndoField, out var steps) ? [.. steps.OfType<string>()] : [],
            }
            : null;
    }

    /// <summary>The draft with one more point of the kind that is next.</summary>
    /// <param name="at">The point.</param>
    /// <param name="corners">How many corners the section has; null for a round one.</param>
    public MarkDraft With(MarkedPoint at, int? corners)
    {
        var text = this[Next.Key];
        var points = MarkText.TryPoints(text, out var read, out _) ? read : [];
        IEnumerable<MarkedPoint> grown =
            Next == Meaning.Pith ? [at]
            : Next == Meaning.Scale && points.Count >= 2 ? [at]
            // Another corner than the last is one that was meant better: the nearest goes there.
            : Next == Meaning.Corners && points.Count == corners ? MarkedCorners.Moved(points, at)
            : [.. points, at];
        return this with
        {
            Texts = Changed(Next.Key, MarkText.Write(grown)),
            UndoSteps = [.. UndoSteps.TakeLast(UndoStepsMax - 1), $"{Next.Key}:{text}"],
        };
    }

    /// <summary>The draft as it was before the last point; itself where there is none to take back.</summary>
    public MarkDraft Undone()
    {
        if (
            UndoSteps.Count == 0
            || UndoSteps[^1].Split(':', 2) is not [var field, var text]
            || !Fields.Contains(field, StringComparer.Ordinal)
        )
            return this;
        return this with
        {
            Texts = Changed(field, text),
            Next = Meaning.All.FirstOrDefault(meaning => meaning.Key == field) ?? Next,
            UndoSteps = [.. UndoSteps.SkipLast(1)],
        };
    }

    /// <summary>True where both hold the same points, whatever comes next.</summary>
    public bool SaysTheSameAs(MarkDraft other) =>
        Fields.All(field => string.Equals(this[field], other[field], StringComparison.Ordinal));

    /// <summary>The draft as the query of an address.</summary>
    public string Query() =>
        QueryString
            .Create([
                new(NextField, Next.Key),
                .. Texts
                    .Where(field => field.Value.Length > 0)
                    .Select(field => KeyValuePair.Create<string, string?>(field.Key, field.Value)),
                .. UndoSteps.Select(step => KeyValuePair.Create<string, string?>(UndoField, step)),
            ])
            .ToString();

    private Dictionary<string, string> Changed(string field, string text) =>
        new(Texts, StringComparer.Ordinal) { [field] = text };
}

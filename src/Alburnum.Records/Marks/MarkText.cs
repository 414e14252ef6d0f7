using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Facts;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Marks;

/// <summary>Marks on a photograph as people write them: points as "x,y x,y", a known length as "x,y x,y 50 mm".</summary>
public static partial class MarkText
{
    /// <summary>What points look like, for messages.</summary>
    public const string PointsExpected =
        "points as x,y separated by spaces, in pixels of the upright photograph, such as \"120,85\"";

    /// <summary>What a known length looks like, for messages.</summary>
    public const string ScaleExpected = "two points and a length in mm, for instance \"120,80 620,84 50\"";

    /// <summary>Reads points. Spaces or semicolons stand between them; a space may follow the comma.</summary>
    /// <param name="text">The text; an empty one holds no points.</param>
    /// <param name="points">Every point before the first that cannot be read.</param>
    /// <param name="broken">The first part that is no point; empty where all are.</param>
    public static bool TryPoints(string text, out IReadOnlyList<MarkedPoint> points, out string broken)
    {
        ArgumentNullException.ThrowIfNull(text);
        var found = new List<MarkedPoint>();
        points = found;
        var read = 0;
        for (var at = Point().Match(text); at.Success; at = at.NextMatch())
        {
            found.Add(new(Number(at.Groups["x"].Value), Number(at.Groups["y"].Value)));
            read = at.Index + at.Length;
        }
        broken = text[read..].Split([' ', ';', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries) switch
        {
            [] => "",
            [var first, ..] => first,
        };
        return broken.Length == 0;
    }

    /// <summary>Reads a known length as far as it is written: its ends, then its length in mm; null where the text is neither.</summary>
    public static (IReadOnlyList<MarkedPoint> Ends, double? LengthMm)? Scale(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TryPoints(text, out var points, out _) ? (points, null)
            : Length().Match(text.Trim()) is { Success: true } bar
            && TryPoints(bar.Groups["ends"].Value, out var ends, out _)
            && Number(bar.Groups["mm"].Value) is var mm
            && Ranges.ScaleMm.Holds(mm)
                ? (ends, mm)
            : null;
    }

    /// <summary>Reads a length, in mm where no unit is written; null where the text is none, or one outside the range.</summary>
    public static double? LengthMm(string text, NumberRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        ArgumentNullException.ThrowIfNull(text);
        var space = text.LastIndexOf(' ');
        var (digits, unit) = space < 0 ? (text, "mm") : (text[..space], text[(space + 1)..]);
        // A unit that is not known makes nothing of it.
        var (_, inMm) = Units.Length.FirstOrDefault(each => each.Unit == unit);
        return
            double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            && Math.Round(value * inMm, 9) is var mm
            && range.Holds(mm)
            ? mm
            : null;
    }

    /// <summary>Points as text, to a tenth of a pixel.</summary>
    public static string Write(IEnumerable<MarkedPoint> points) =>
        string.Join(
            ' ',
            points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.X:0.#},{point.Y:0.#}"))
        );

    /// <summary>The text of each field that says the marks; none where nothing is pointed out.</summary>
    public static IReadOnlyList<(string Field, string Text)> Fields(WrittenMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        (string Field, string Text)[] fields =
        [
            (MarkField.Corners, Write(marks.Corners ?? [])),
            (MarkField.Scale, marks.Scale is { } bar ? $"{Write([bar.From, bar.To])} {Digits(bar.LengthMm)} mm" : ""),
            (MarkField.MeasuredSize, marks.MeasuredSize?.Label ?? ""),
            (MarkField.Treated, Write(marks.Treated)),
            (MarkField.Untreated, Write(marks.Untreated)),
            (MarkField.LeaveOut, Write(marks.LeaveOut)),
            (MarkField.Heartwood, Write(marks.Heartwood ?? [])),
            (MarkField.HeartwoodRing, Write(marks.HeartwoodRing ?? [])),
            (MarkField.Pith, marks.Pith is { Pith: var pith } ? Write([pith]) : ""),
            (MarkField.HeartwoodRadius, marks.Pith is { RadiusMm: var mm } ? $"{Digits(mm)} mm" : ""),
        ];
        return [.. fields.Where(field => field.Text.Length > 0)];
    }

    /// <summary>The lines that say the same under a piece of case.yaml; none where nothing is pointed out.</summary>
    public static IReadOnlyList<string> CaseLines(WrittenMarks marks) =>
        [.. Fields(marks).Select(field => $"{field.Field}: \"{field.Text}\"")];

    /// <summary>A length as text, to 0.01 mm.</summary>
    public static string Digits(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);

    // Nine digits reach beyond any photograph.
    private static double Number(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"\G[\s;]*(?<x>[+-]?[0-9]{1,9}(\.[0-9]{0,9})?)\s*,\s*(?<y>[+-]?[0-9]{1,9}(\.[0-9]{0,9})?)(?=[\s;]|$)",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Point();

    [GeneratedRegex(
        @"^(?<ends>(.*\s)?)(?<mm>[0-9]{1,6}(\.[0-9]{0,6})?)(\s*mm)?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Length();
}

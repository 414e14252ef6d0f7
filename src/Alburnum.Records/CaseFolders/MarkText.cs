using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;

namespace Alburnum.Records.CaseFolders;

/// <summary>Marks on a photograph as people write them: points as "x,y x,y", a known length as "x,y x,y 50 mm".</summary>
public static partial class MarkText
{
    /// <summary>What points look like, for messages.</summary>
    public const string PointsExpected = "points as x,y separated by spaces, in pixels of the upright photograph";

    /// <summary>What a known length looks like, for messages.</summary>
    public const string ScaleExpected = "two points and a length in mm, for instance \"120,80 620,84 50\"";

    /// <summary>Reads points. Spaces or semicolons stand between them; a space may follow the comma.</summary>
    /// <param name="text">The text; an empty one holds no points.</param>
    /// <param name="points">Every point before the first that cannot be read.</param>
    /// <param name="broken">The first part that is no point; empty where all are.</param>
    public static bool TryPoints(string text, out IReadOnlyList<PointPx> points, out string broken)
    {
        ArgumentNullException.ThrowIfNull(text);
        var found = new List<PointPx>();
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

    /// <summary>Reads a known length; null where the text is none.</summary>
    public static ScaleBar? Scale(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return
            Length().Match(text.Trim()) is { Success: true } bar
            && TryPoints(bar.Groups["ends"].Value, out var ends, out _)
            && ends is [var from, var to]
            && from != to
            && Number(bar.Groups["mm"].Value) is > 0 and <= 2000 and var mm
            ? new ScaleBar(from, to, mm)
            : null;
    }

    /// <summary>Touched places that lie beside the photograph, and would be passed over in silence: the kind, the place, and what was expected.</summary>
    public static IReadOnlyList<(TouchKind Kind, string Found, string Expected)> Beside(SectionReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var expected = string.Create(
            CultureInfo.InvariantCulture,
            $"a point on the photograph, which is {reading.WidthPx} × {reading.HeightPx} pixels"
        );
        return
        [
            .. reading
                .Marks.Touches.Where(touch =>
                    !(
                        touch.At.X >= 0
                        && touch.At.X <= reading.WidthPx
                        && touch.At.Y >= 0
                        && touch.At.Y <= reading.HeightPx
                    )
                )
                .Select(touch => (touch.Kind, Write([touch.At]), expected)),
        ];
    }

    /// <summary>Points as text, to a tenth of a pixel.</summary>
    public static string Write(IEnumerable<PointPx> points) =>
        string.Join(
            ' ',
            points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.X:0.#},{point.Y:0.#}"))
        );

    /// <summary>The lines that say the same under a piece of case.yaml; none where nothing is pointed out.</summary>
    public static IReadOnlyList<string> CaseLines(PhotographMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var pith = marks.Heartwood as HeartwoodAboutPith;
        (string Field, string Text)[] fields =
        [
            ("corners", Write(marks.OutlinePx ?? [])),
            ("scale", marks.ScaleBar is { } bar ? $"{Write([bar.From, bar.To])} {Digits(bar.LengthMm)} mm" : ""),
            ("treated", Write(marks.Touched(TouchKind.Treated))),
            ("untreated", Write(marks.Touched(TouchKind.Untreated))),
            ("leaveOut", Write(marks.Touched(TouchKind.LeaveOut))),
            ("heartwood", Write((marks.Heartwood as OutlinedHeartwood)?.PolygonPx ?? [])),
            ("heartwoodRing", Write((marks.Heartwood as RingOfHeartwood)?.PointsPx ?? [])),
            ("pith", pith is null ? "" : Write([pith.PithPx])),
            ("heartwoodRadius", pith is null ? "" : $"{Digits(pith.RadiusMm)} mm"),
        ];
        return [.. fields.Where(field => field.Text.Length > 0).Select(field => $"{field.Field}: \"{field.Text}\"")];
    }

    private static string Digits(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);

    // Nine digits reach beyond any photograph.
    private static double Number(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"\G[\s;]*(?<x>[+-]?\d{1,9}(\.\d{0,9})?)\s*,\s*(?<y>[+-]?\d{1,9}(\.\d{0,9})?)(?=[\s;]|$)",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Point();

    [GeneratedRegex(
        @"^(?<ends>.*\S)\s+(?<mm>\d{1,6}(\.\d{0,6})?)(\s*mm)?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Length();
}

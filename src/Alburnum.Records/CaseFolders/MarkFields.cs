using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.CaseFolders;

/// <summary>Reads what a case file points out on a piece's photograph.</summary>
internal static class MarkFields
{
    /// <summary>The marks under a piece; whatever cannot be one is refused with its line.</summary>
    /// <param name="piece">The piece's row.</param>
    /// <param name="section">Section of the pieces: it says how many corners there are; null where it could not be read.</param>
    public static PhotographMarks Read(FactRow piece, Section? section) =>
        new()
        {
            OutlinePx = Corners(piece, section),
            ScaleBar = Scale(piece),
            Touches =
            [
                .. Touched(piece, "treated", TouchKind.Treated),
                .. Touched(piece, "untreated", TouchKind.Untreated),
                .. Touched(piece, "leaveOut", TouchKind.LeaveOut),
            ],
            Heartwood = Heartwood(piece),
        };

    private static IReadOnlyList<PointPx>? Corners(FactRow piece, Section? section)
    {
        // The older word for the same field.
        var field = piece.Has("outline") ? "outline" : "corners";
        if (piece.Has("outline") && piece.Has("corners"))
            piece.Refuse("outline", "corners as well", "one of the two");
        if (Points(piece, field) is not { Count: var count } points)
            return null;
        if (section is RoundSection && count < 5)
            piece.Refuse(field, $"{count} points", "5 points or more on the rim");
        if (section is HalfRoundSection or QuarteredSection && count != 3)
            piece.Refuse(
                field,
                $"{count} points",
                "3 points: both ends of the arc and, between them, the crown of a half-round piece or the square corner of a quartered one"
            );
        if (section is RectangularSection && count != 4)
            piece.Refuse(field, $"{count} points", "the 4 corners, clockwise");
        return points;
    }

    private static ScaleBar? Scale(FactRow piece)
    {
        if (!piece.Has("scale"))
            return null;
        var text = piece.Text("scale");
        var bar = MarkText.Scale(text);
        if (bar is null && text.Length > 0)
            piece.Refuse("scale", text, MarkText.ScaleExpected);
        return bar;
    }

    private static IEnumerable<Touch> Touched(FactRow piece, string field, TouchKind kind) =>
        (Points(piece, field) ?? []).Select(at => new Touch(at, kind));

    private static HeartwoodBorder? Heartwood(FactRow piece)
    {
        var around = Points(piece, "heartwood", least: 3);
        var along = Points(piece, "heartwoodRing", least: 3);
        var pith = Points(piece, "pith");
        double? radius = piece.Has("heartwoodRadius")
            ? piece.Quantity("heartwoodRadius", Units.Length, 0.1, 2000)
            : null;
        if (pith is not null && pith.Count != 1)
            piece.Refuse("pith", $"{pith.Count} points", "one point, \"x,y\"");
        if (pith is null != radius is null)
        {
            var given = pith is null ? "heartwoodRadius" : "pith";
            piece.Refuse(given, "it alone", "pith and heartwoodRadius together");
        }
        if (new object?[] { around, along, pith ?? (object?)radius }.Count(way => way is not null) > 1)
        {
            var second = along is null || around is null ? "pith" : "heartwoodRing";
            piece.Refuse(second, "a second border of the heartwood", "one of heartwood, heartwoodRing, or pith");
        }
        return around is not null ? new OutlinedHeartwood(around)
            : along is not null ? new RingOfHeartwood(along)
            : pith is [var at] && radius is { } mm ? new HeartwoodAboutPith(at, mm)
            : null;
    }

    // Null where the field is left out or cannot be read.
    private static IReadOnlyList<PointPx>? Points(FactRow piece, string field, int least = 1)
    {
        if (!piece.Has(field))
            return null;
        if (!MarkText.TryPoints(string.Join(' ', piece.Texts(field)), out var points, out var broken))
            piece.Refuse(field, broken, $"{MarkText.PointsExpected}, such as \"120,85\"");
        else if (points.Count < least)
            piece.Refuse(field, points.Count == 0 ? "nothing" : $"{points.Count} points", Least(least));
        else
            return points;
        return null;
    }

    private static string Least(int points) => points == 1 ? "a point or more" : $"{points} points or more";
}

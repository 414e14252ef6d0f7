using System.Globalization;
using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.Marks;

/// <summary>Marks that could be read, and what is wrong with the rest.</summary>
/// <param name="Marks">Every mark that is whole.</param>
/// <param name="Faults">What keeps the others from being used; empty where nothing does.</param>
public sealed record ReadMarks(WrittenMarks Marks, IReadOnlyList<MarkFault> Faults);

/// <summary>Reads what is pointed out on a photograph, whether it comes from a case file, from options or from a page.</summary>
public sealed class MarksReader
{
    private const int RingLeast = 3;

    // Our own choice, as for a known length.
    private const double MostApart = 0.25;

    private readonly Func<string, string?> _text;
    private readonly Func<string, string> _nameOf;
    private readonly List<MarkFault> _faults = [];

    private MarksReader(Func<string, string?> text, Func<string, string> nameOf) => (_text, _nameOf) = (text, nameOf);

    /// <summary>Reads every mark.</summary>
    /// <param name="text">Text of a field, one of <see cref="MarkField"/>; null where it is not given.</param>
    /// <param name="nameOf">What a field is called where it stands, for messages that name another.</param>
    /// <param name="section">Section of the piece: it says how many corners there are; null where that is not known.</param>
    public static ReadMarks Read(Func<string, string?> text, Func<string, string> nameOf, Section? section)
    {
        var reader = new MarksReader(text, nameOf);
        var marks = new WrittenMarks
        {
            Corners = reader.Corners(section),
            Scale = reader.Scale(),
            MeasuredSize = reader.MeasuredSize(section),
            Treated = reader.Points(MarkField.Treated) ?? [],
            Untreated = reader.Points(MarkField.Untreated) ?? [],
            LeaveOut = reader.Points(MarkField.LeaveOut) ?? [],
        };
        return new(reader.WithHeartwood(marks), reader._faults);
    }

    /// <summary>Points that outline a section; null for a round one, which takes five or more on its rim.</summary>
    public static int? CornersOf(Section section) =>
        section switch
        {
            RoundSection => null,
            HalfRoundSection or QuarteredSection => 3,
            _ => 4,
        };

    private IReadOnlyList<MarkedPoint>? Corners(Section? section)
    {
        var (least, most, expected) = section switch
        {
            RoundSection => (5, int.MaxValue, "5 points or more on the rim"),
            RectangularSection => (4, 4, "the 4 corners, clockwise"),
            HalfRoundSection => (3, 3, "3 points: both ends of the arc and, between them, its crown"),
            QuarteredSection => (3, 3, "3 points: both ends of the arc and, between them, the square corner"),
            _ => (1, int.MaxValue, "at least one point"),
        };
        if (Points(MarkField.Corners, least, expected) is not { } points)
            return null;
        if (points.Count <= most)
            return points;
        _faults.Add(new(MarkField.Corners, MarkFault.Counted(points.Count), expected));
        return null;
    }

    private MarkedLength? Scale()
    {
        if (_text(MarkField.Scale) is not { } text)
            return null;
        var (ends, lengthMm) = MarkText.Scale(text) ?? ([], null);
        if (ends is [var from, var to] && from != to && lengthMm is { } mm)
            return new(from, to, mm);
        var isBegun = ends.Count is 1 or 2 || (ends.Count == 0 && lengthMm is not null);
        _faults.Add(
            isBegun
                ? new HalfGiven(MarkField.Scale, text, MarkText.ScaleExpected)
                : new MarkFault(
                    MarkField.Scale,
                    ends.Count > 2 ? MarkFault.Counted(ends.Count)
                        : text.Length == 0 ? "nothing"
                        : text,
                    MarkText.ScaleExpected
                )
        );
        return null;
    }

    // A size farther from the nominal one is that of another piece.
    private Section? MeasuredSize(Section? nominal)
    {
        if (_text(MarkField.MeasuredSize) is not { } text)
            return null;
        if (_text(MarkField.Scale) is not null)
        {
            _faults.Add(new(MarkField.MeasuredSize, $"{_nameOf(MarkField.Scale)} as well", "one of the two"));
            return null;
        }
        var expected = nominal is null
            ? SectionText.Expected
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the size measured, within {100 * MostApart:0} % of the nominal {nominal.Label}"
            );
        if (SectionText.TryParse(text, out var size) && (nominal is null || IsAlike(size, nominal)))
            return size;
        _faults.Add(new(MarkField.MeasuredSize, text.Length == 0 ? "nothing" : text, expected));
        return null;
    }

    private static bool IsAlike(Section size, Section nominal) =>
        size.GetType() == nominal.GetType()
        && size.SizesMm.Zip(nominal.SizesMm).All(pair => Math.Abs(pair.First / pair.Second - 1) <= MostApart);

    /// <summary>
    /// The rule for a heartwood's border: it is outlined, or shown by its last ring, or by the pith with the heartwood's radius, and only one of these; three points or more
    /// make an outline or a ring; pith and radius come together.
    /// </summary>
    private WrittenMarks WithHeartwood(WrittenMarks marks)
    {
        string[] ways =
        [
            .. new[] { MarkField.Heartwood, MarkField.HeartwoodRing, MarkField.Pith }.Where(way =>
                _text(way) is not null || (way == MarkField.Pith && _text(MarkField.HeartwoodRadius) is not null)
            ),
        ];
        var ring = $"{RingLeast} points or more";
        var around = Points(MarkField.Heartwood, RingLeast, ring);
        var along = Points(MarkField.HeartwoodRing, RingLeast, ring);
        var pith = PithAndRadius();
        if (ways.Length <= 1)
            return marks with { Heartwood = around, HeartwoodRing = along, Pith = pith };
        var oneOf =
            $"one of {_nameOf(MarkField.Heartwood)}, {_nameOf(MarkField.HeartwoodRing)}, or {_nameOf(MarkField.Pith)}";
        _faults.Add(new(ways[1], "a second border of the heartwood", oneOf));
        return marks;
    }

    private MarkedPith? PithAndRadius()
    {
        var points = Points(MarkField.Pith);
        var radiusMm = Radius();
        if (points is { Count: > 1 })
        {
            _faults.Add(new(MarkField.Pith, $"{points.Count} points", "one point, \"x,y\""));
            return null;
        }
        var isPithGiven = _text(MarkField.Pith) is not null;
        if (isPithGiven != _text(MarkField.HeartwoodRadius) is not null)
        {
            var together = $"{_nameOf(MarkField.Pith)} and {_nameOf(MarkField.HeartwoodRadius)} together";
            _faults.Add(new HalfGiven(isPithGiven ? MarkField.Pith : MarkField.HeartwoodRadius, "it alone", together));
        }
        return points is [var at] && radiusMm is { } mm ? new(at, mm) : null;
    }

    private double? Radius()
    {
        if (_text(MarkField.HeartwoodRadius) is not { } text)
            return null;
        if (MarkText.LengthMm(text, Ranges.HeartwoodRadiusMm) is { } mm)
            return mm;
        _faults.Add(
            new(MarkField.HeartwoodRadius, text.Length == 0 ? "nothing" : text, Ranges.HeartwoodRadiusMm.InWords)
        );
        return null;
    }

    // Null where the field is not given or cannot be used.
    private IReadOnlyList<MarkedPoint>? Points(string field, int least = 1, string expected = "at least one point")
    {
        if (_text(field) is not { } text)
            return null;
        if (!MarkText.TryPoints(text, out var points, out var broken))
            _faults.Add(new(field, broken, MarkText.PointsExpected));
        else if (points.Count < least)
            _faults.Add(new TooFewPoints(field, points.Count, least, expected));
        else
            return points;
        return null;
    }
}

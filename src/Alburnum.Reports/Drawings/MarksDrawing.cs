using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Drawings;

/// <summary>
/// What a person pointed out on a photograph: each kind by its shape, so that colour is not needed to tell them apart. Treated a
/// full disc, untreated a ring, left out a cross, corners squares, heartwood a dashed line, pith a star, a known length a bar.
/// </summary>
public static class MarksDrawing
{
    private const int SidesOfDisc = 24;
    private static readonly Ink Light = new("FFFFFF");
    private static readonly Ink Heartwood = new("CFE6F5");

    /// <summary>Draws in the photograph's own pixels.</summary>
    /// <param name="marks">What was pointed out.</param>
    /// <param name="pen">Width of a line, pixels.</param>
    public static IEnumerable<Mark> Of(MarksDocument marks, double pen)
    {
        ArgumentNullException.ThrowIfNull(marks);
        return
        [
            .. HeartwoodLine(marks.HeartwoodPx, pen),
            .. Each(marks.HeartwoodRingPx, at => Dot(at, 1.6 * pen, Heartwood, pen)),
            .. marks.PithPx is { } pith ? Star(Spot(pith), pen) : [],
            .. marks.Scale is { } bar ? Bar(Spot(bar.FromPx), Spot(bar.ToPx), pen) : [],
            .. Each(marks.CornersPx, at => Box(at, 2.2 * pen, pen)),
            .. Each(marks.TreatedPx, at => Dot(at, 2.6 * pen, Ink.Treated, pen)),
            .. Each(marks.UntreatedPx, at => Ring(at, 2.6 * pen, pen)),
            .. Each(marks.LeaveOutPx, at => Cross(at, 2.6 * pen, pen)),
        ];
    }

    private static IEnumerable<Mark> Each(IReadOnlyList<double[]>? points, Func<Spot, IEnumerable<Mark>> draw) =>
        (points ?? []).Select(Spot).SelectMany(draw);

    private static IEnumerable<Mark> HeartwoodLine(IReadOnlyList<double[]>? points, double pen)
    {
        List<Spot> spots = [.. (points ?? []).Select(Spot)];
        return
        [
            .. spots.Count > 1 ? Cased(spots, Heartwood, pen, isDashed: true, isClosed: spots.Count > 2) : [],
            .. spots.SelectMany(at => Dot(at, 1.6 * pen, Heartwood, pen)),
        ];
    }

    private static IEnumerable<Mark> Bar(Spot from, Spot to, double pen)
    {
        var length = Math.Max(1e-9, double.Hypot(to.X - from.X, to.Y - from.Y));
        var (dx, dy) = (-(to.Y - from.Y) / length * 3 * pen, (to.X - from.X) / length * 3 * pen);
        return
        [
            .. Cased([from, to], Light, pen),
            .. Cased([new(from.X - dx, from.Y - dy), new(from.X + dx, from.Y + dy)], Light, pen),
            .. Cased([new(to.X - dx, to.Y - dy), new(to.X + dx, to.Y + dy)], Light, pen),
        ];
    }

    private static IEnumerable<Mark> Dot(Spot at, double radius, Ink ink, double pen) =>
        [
            new Area(Disc(at, radius + (1.4 * pen)), Ink.Text),
            new Area(Disc(at, radius + (0.9 * pen)), Light),
            new Area(Disc(at, radius), ink),
        ];

    private static IEnumerable<Mark> Ring(Spot at, double radius, double pen) =>
        Cased(Disc(at, radius), Light, 1.1 * pen, isClosed: true);

    private static IEnumerable<Mark> Cross(Spot at, double half, double pen)
    {
        Spot[] falling = [new(at.X - half, at.Y - half), new(at.X + half, at.Y + half)];
        Spot[] rising = [new(at.X - half, at.Y + half), new(at.X + half, at.Y - half)];
        return Crossing([falling, rising], Light, pen);
    }

    private static IEnumerable<Mark> Star(Spot at, double pen)
    {
        var half = 3 * pen;
        return Crossing(
            [
                [new(at.X - half, at.Y), new(at.X + half, at.Y)],
                [new(at.X, at.Y - half), new(at.X, at.Y + half)],
                [new(at.X - (0.7 * half), at.Y - (0.7 * half)), new(at.X + (0.7 * half), at.Y + (0.7 * half))],
                [new(at.X - (0.7 * half), at.Y + (0.7 * half)), new(at.X + (0.7 * half), at.Y - (0.7 * half))],
            ],
            Light,
            0.8 * pen
        );
    }

    private static IEnumerable<Mark> Box(Spot at, double half, double pen) =>
        Cased(
            [
                new(at.X - half, at.Y - half),
                new(at.X + half, at.Y - half),
                new(at.X + half, at.Y + half),
                new(at.X - half, at.Y + half),
            ],
            Light,
            pen,
            isClosed: true
        );

    // All cases first, so that no line is cut by the next one's.
    private static IEnumerable<Mark> Crossing(IReadOnlyList<Spot[]> lines, Ink ink, double pen) =>
        [
            .. lines.Select(line => new Line(line, Ink.Text, 2.2 * pen)),
            .. lines.Select(line => new Line(line, ink, pen)),
        ];

    private static IEnumerable<Mark> Cased(
        IReadOnlyList<Spot> points,
        Ink ink,
        double pen,
        bool isDashed = false,
        bool isClosed = false
    ) => [new Line(points, Ink.Text, 2.2 * pen, false, isClosed), new Line(points, ink, pen, isDashed, isClosed)];

    private static IReadOnlyList<Spot> Disc(Spot centre, double radius) =>
        [
            .. Enumerable
                .Range(0, SidesOfDisc)
                .Select(k => double.SinCos(2 * Math.PI * k / SidesOfDisc))
                .Select(turn => new Spot(centre.X + (radius * turn.Cos), centre.Y + (radius * turn.Sin))),
        ];

    private static Spot Spot(double[] point) => new(point[0], point[1]);
}

using Alburnum.Imaging.Cards;

namespace Alburnum.DrawnSections;

/// <summary>The printed card, laid beside the piece.</summary>
/// <param name="Centre">Its middle, section coordinates, mm.</param>
/// <param name="Angle">Direction of its long side, radians.</param>
/// <param name="BelowMm">How far it lies below the cut face; 0 level with it.</param>
/// <param name="Seed">Of its paper.</param>
public sealed record LaidCard(Point Centre, double Angle, double BelowMm, int Seed)
{
    /// <summary>Reflectance of bare paper, and of what full ink adds to black.</summary>
    private const float Paper = 0.86f;

    private const float Ink = 0.035f;

    /// <summary>Half its width and half its height, mm.</summary>
    private static readonly Point Half = new(ScaleCard.WidthMm / 2, ScaleCard.HeightMm / 2);

    private static readonly (Point From, Point To, Colour Colour)[] Patches =
    [
        .. ScaleCard
            .Greys.Concat(ScaleCard.Colours)
            .Select(patch =>
                (
                    new Point(patch.From.X, patch.From.Y),
                    new Point(patch.To.X, patch.To.Y),
                    Printed(
                        new Colour(
                            Colour.Linear((patch.Rgb >> 16) & 255),
                            Colour.Linear((patch.Rgb >> 8) & 255),
                            Colour.Linear(patch.Rgb & 255)
                        )
                    )
                )
            ),
    ];

    private static readonly Colour White = Printed(Colour.White);
    private static readonly Colour Black = Printed(default);

    /// <summary>Its corners, clockwise from its own upper left, section coordinates, mm.</summary>
    public IReadOnlyList<Point> Corners =>
        [
            .. new Point[]
            {
                new(0, 0),
                new(ScaleCard.WidthMm, 0),
                new(ScaleCard.WidthMm, ScaleCard.HeightMm),
                new(0, ScaleCard.HeightMm),
            }.Select(OnSection),
        ];

    /// <summary>Middles of its marks, section coordinates, mm.</summary>
    public IReadOnlyList<Point> Marks => [.. ScaleCard.Marks.Select(mark => OnSection(new(mark.X, mark.Y)))];

    /// <summary>Distance inside its edge of a place in its plane, mm; negative outside.</summary>
    public double InsideMm(double x, double y)
    {
        var at = OnCard(x, y);
        return Math.Min(Math.Min(at.X, ScaleCard.WidthMm - at.X), Math.Min(at.Y, ScaleCard.HeightMm - at.Y));
    }

    /// <summary>Its reflectance at a place in its plane.</summary>
    public Colour At(double x, double y)
    {
        var at = OnCard(x, y);
        return PrintAt(at) * (1 + (0.015f * Noise.At(at.X * 3.1, at.Y * 3.1, Seed)));
    }

    private static Colour PrintAt(Point at)
    {
        for (var k = 0; k < ScaleCard.Marks.Count; k++)
        {
            var from = (at - new Point(ScaleCard.Marks[k].X, ScaleCard.Marks[k].Y)).Length;
            var dot = k == 0 ? ScaleCard.FirstDotMm : ScaleCard.DotMm;
            if (from < dot || (from > ScaleCard.HoleMm && from < ScaleCard.RingMm))
                return Black;
        }
        foreach (var (from, to, colour) in Patches)
        {
            if (at.X > from.X && at.X < to.X && at.Y > from.Y && at.Y < to.Y)
                return colour;
        }
        // Millimetres along the upper edge.
        var past = at.X - Math.Floor(at.X);
        return at is { Y: < 3, X: > 5 and < 95 } && past < 0.2 && at.Y < (Math.Floor(at.X) % 10 == 0 ? 3 : 1.8)
            ? Black
            : White;
    }

    private static Colour Printed(Colour ink) => (ink * (Paper - Ink)) + (Colour.White * Ink);

    private Point OnSection(Point mm) =>
        Centre + (Point.Towards(Angle) * (mm.X - Half.X)) + (Point.Towards(Angle + (Math.PI / 2)) * (mm.Y - Half.Y));

    private Point OnCard(double x, double y)
    {
        var from = new Point(x, y) - Centre;
        return new Point(Point.Dot(from, Point.Towards(Angle)), Point.Dot(from, Point.Towards(Angle + (Math.PI / 2))))
            + Half;
    }
}

namespace Alburnum.DrawnSections;

/// <summary>A thumb that holds the piece: a rounded stub reaching in over the edge.</summary>
/// <param name="Tip">Middle of its round tip, section coordinates, mm.</param>
/// <param name="Angle">Direction from the tip back to the hand.</param>
public sealed record Thumb(Point Tip, double Angle, double WidthMm, Colour Skin, int Seed)
{
    /// <summary>Distance inside the thumb's outline, mm; negative outside.</summary>
    public double InsideMm(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Tip.X;
        var dy = y - Tip.Y;
        var along = Math.Max(0, dx * cos + dy * sin);
        var rest = new Point(dx - along * cos, dy - along * sin).Length;
        return WidthMm / 2 * (1 + 0.12 * Math.Min(along / 40, 1)) - rest;
    }

    /// <summary>Skin with the nail, rounded off towards its outline.</summary>
    public Colour At(double x, double y)
    {
        var inside = InsideMm(x, y);
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Tip.X;
        var dy = y - Tip.Y;
        var along = dx * cos + dy * sin;
        var across = (dy * cos - dx * sin) / (WidthMm * 0.34);
        var lengthwise = (along - 0.05 * WidthMm) / (WidthMm * 0.46);
        var nail = 1 - Smooth.Step(0.85, 1.02, Math.Sqrt(across * across + lengthwise * lengthwise));
        var colour = Skin.Towards(Skin * new Colour(1.05f, 1.12f, 1.15f), nail);
        var crease = 1 - 0.12f * Smooth.Step(0.2, 0.8, Noise.At(along / 2.4, across / 1.5, Seed));
        var round = 0.45f + 0.55f * Smooth.Step(0, WidthMm * 0.38, inside);
        return colour * (round * crease * (1 + 0.06f * Noise.At(x * 1.7, y * 1.7, Seed + 1)));
    }
}

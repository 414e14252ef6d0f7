namespace Alburnum.DrawnSections;

/// <summary>A tapered, wavy strip that one zone sends into the other: a bay of untreated wood, or a finger of treated wood.</summary>
/// <param name="Root">Where it begins, inside the zone that it belongs to.</param>
/// <param name="Tip">Where it ends, inside the other zone.</param>
/// <param name="WidthMm">Its width at the root, mm; at the tip it is half as wide, and blunt.</param>
/// <param name="IsTreated">True for a finger, false for a bay.</param>
public sealed record Tongue(Point Root, Point Tip, double WidthMm, bool IsTreated, int Seed)
{
    /// <summary>How far inside it a point lies, mm; negative outside.</summary>
    public double InsideMm(double x, double y)
    {
        var along = Tip - Root;
        var length = along.Length;
        var (dx, dy) = (x - Root.X, y - Root.Y);
        // From far off its distance from the root will do.
        var away = dx * dx + dy * dy;
        if (away > (length + 2 * WidthMm) * (length + 2 * WidthMm))
            return length + WidthMm - Math.Sqrt(away);
        var place = (dx * along.X + dy * along.Y) / length;
        var wave = 0.2 * WidthMm * Noise.Along(place / 1.7, Seed) + 0.1 * Noise.Along(place / 0.5, Seed + 1);
        var across = (dy * along.X - dx * along.Y) / length - wave;
        var half = WidthMm / 2 * (1 - 0.5 * Math.Clamp(place / length, 0, 1));
        var past = Math.Max(0, Math.Max(-place, place - (length - half)));
        return half - Math.Sqrt(across * across + past * past);
    }

    /// <summary>The front's field with it.</summary>
    public double In(double field, double x, double y)
    {
        var inside = InsideMm(x, y);
        return IsTreated ? Math.Max(field, inside) : Math.Min(field, -inside);
    }
}

namespace Alburnum.DrawnSections;

/// <summary>Something in the wood that breaks its even grain.</summary>
public abstract record Blemish;

/// <summary>A branch cut across: an ellipse with rings of its own.</summary>
public sealed record Knot(Point Centre, double LongRadiusMm, double ShortRadiusMm, double Angle) : Blemish
{
    /// <summary>0 at the heart of the knot, 1 at its rim.</summary>
    public double Reach(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Centre.X;
        var dy = y - Centre.Y;
        var a = (dx * cos + dy * sin) / LongRadiusMm;
        var b = (dy * cos - dx * sin) / ShortRadiusMm;
        return Math.Sqrt(a * a + b * b);
    }
}

/// <summary>A drying check or split: a crooked crack that narrows to nothing.</summary>
/// <param name="Start">Where it is widest.</param>
/// <param name="Angle">Direction in which it runs.</param>
/// <param name="SoakMm">How far liquid has soaked into its walls; 0 where it stayed dry.</param>
public sealed record Check(Point Start, double Angle, double LengthMm, double WidthMm, double SoakMm, int Seed)
    : Blemish
{
    /// <summary>Distance outside the crack, mm (negative inside it); null where the crack is far away.</summary>
    public double? OutsideMm(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Start.X;
        var dy = y - Start.Y;
        var along = dx * cos + dy * sin;
        if (along < -3 || along > LengthMm + 3)
            return null;
        var across = dy * cos - dx * sin;
        if (Math.Abs(across) > 8)
            return null;
        var wander = 1.1 * Noise.Along(along / 7, Seed) + 0.25 * Noise.Along(along / 1.1, Seed + 1);
        var t = Math.Clamp(along / LengthMm, 0, 1);
        var half = WidthMm / 2 * Math.Sqrt(1 - t) * (1 + 0.35 * Noise.Along(along / 2.3, Seed + 2));
        var overrun = Math.Max(along - LengthMm, Math.Max(-along, 0));
        var sideways = Math.Max(Math.Abs(across - wander) - half, along > LengthMm ? 0 : -half);
        return overrun > 0 ? Math.Sqrt(overrun * overrun + Math.Max(sideways, 0) * Math.Max(sideways, 0)) : sideways;
    }
}

/// <summary>A lens of resin lying along a ring: amber, and closed to any liquid.</summary>
public sealed record ResinPocket(Point Centre, double Angle, double LengthMm, double WidthMm) : Blemish
{
    /// <summary>0 at the middle, 1 at its rim.</summary>
    public double Reach(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Centre.X;
        var dy = y - Centre.Y;
        var a = (dx * cos + dy * sin) / (LengthMm / 2);
        var b = (dy * cos - dx * sin + 0.02 * a * a * LengthMm) / (WidthMm / 2);
        return Math.Sqrt(a * a + b * b);
    }
}

/// <summary>A brown stain with a wandering rim: as dark and as red as heartwood, but about no pith.</summary>
/// <param name="Strength">How deep its colour is; 1 is that of dark heartwood.</param>
public sealed record BrownStain(
    Point Centre,
    double LongRadiusMm,
    double ShortRadiusMm,
    double Angle,
    float Strength,
    int Seed
) : Blemish
{
    /// <summary>Share of its colour at a point, 0 to 1.</summary>
    public float At(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Centre.X;
        var dy = y - Centre.Y;
        var a = (dx * cos + dy * sin) / LongRadiusMm;
        var b = (dy * cos - dx * sin) / ShortRadiusMm;
        var reach = Math.Sqrt(a * a + b * b) + 0.35 * Noise.Fractal(x / 14, y / 14, 2, Seed);
        return 1 - Smooth.Step(0.9, 1.1, reach);
    }
}

namespace Alburnum.DrawnSections;

/// <summary>A run of liquid down the face.</summary>
/// <param name="Start">Where it began.</param>
/// <param name="Carries">How strongly it drags the treated colour with it, 0 to 1.</param>
public sealed record Drip(Point Start, double Angle, double LengthMm, double WidthMm, float Carries, int Seed)
{
    /// <summary>Distance along the run and how much of it covers a point, 0 to 1.</summary>
    public (double AlongMm, float Share) At(double x, double y)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var dx = x - Start.X;
        var dy = y - Start.Y;
        var along = dx * cos + dy * sin;
        if (along < -WidthMm || along > LengthMm + WidthMm)
            return (along, 0);
        var across = dy * cos - dx * sin - 0.8 * Noise.Along(along / 9, Seed);
        var half = WidthMm / 2 * (1 + 0.3 * Noise.Along(along / 4, Seed + 1));
        var past = Math.Max(0, Math.Max(-along, along - LengthMm));
        var edge = Math.Sqrt(across * across + past * past) / half;
        return (along, 1 - Smooth.Step(0.35, 1.2, edge));
    }
}

/// <summary>A faint colour that is drawn past the main one.</summary>
/// <param name="WidthMm">How far it reaches, mm.</param>
/// <param name="Strength">Its share of the treated colour at the front, 0 to 1.</param>
/// <param name="Latewood">How many times as far it reaches farther in latewood.</param>
public sealed record Halo(double WidthMm, float Strength, double Latewood);

/// <summary>How the reagent was put on and how it spread.</summary>
/// <param name="Strength">Usual amount; 1 is well developed.</param>
/// <param name="Unevenness">0 even, 1 blotchy.</param>
/// <param name="BleedMm">How far dye runs out of treated wood past the true front.</param>
/// <param name="FringeMm">Width over which its colour fades there.</param>
public sealed record Spray(double Strength, double Unevenness, double BleedMm, double FringeMm, int Seed)
{
    public IReadOnlyList<Drip> Drips { get; init; } = [];

    /// <summary>Colour drawn past the main one; null for none.</summary>
    public Halo? Halo { get; init; }

    /// <summary>How much darker wood is where the liquid still stands, 0 to 1.</summary>
    public float WetPatches { get; init; }

    /// <summary>How much thinner the reagent lies where the wood was too dry to take it, 0 to 1.</summary>
    public double DryPatches { get; init; }

    /// <summary>Share of the face on which pale sawdust lies, 0 to 1.</summary>
    public double Dust { get; init; }

    /// <summary>How much of a point is hidden by sawdust, 0 to 1.</summary>
    public float DustAt(double x, double y) =>
        Dust <= 0
            ? 0
            : 0.8f
                * Smooth.Step(
                    -0.05,
                    0.05,
                    Noise.Even((int)(x * 2.7), (int)(y * 2.7), Seed + 8) < Dust
                        ? Noise.At(x * 2.7, y * 2.7, Seed + 9)
                        : -1
                );

    /// <summary>Part of the face that the spray missed: amount falls off beyond a line; null for none.</summary>
    public (Point From, double Angle)? Missed { get; init; }

    /// <summary>Amount of reagent at a point.</summary>
    public float Amount(double x, double y)
    {
        var blotch = Noise.Fractal(x / 24, y / 24, 3, Seed + 1);
        var droplets = Noise.At(x / 0.8, y / 0.8, Seed + 2);
        var amount = Strength * (1 + Unevenness * (0.75 * blotch + 0.3 * droplets));
        if (Missed is { } missed)
        {
            var beyond = Point.Dot(new Point(x, y) - missed.From, Point.Towards(missed.Angle)) + 4 * blotch;
            // Single droplets first, then nothing.
            amount *= 1 - Smooth.Step(-6, 7, beyond + 5 * droplets);
        }
        if (DryPatches > 0)
            amount *= 1 - DryPatches * Smooth.Step(0, 0.35, Noise.Fractal(x / 11, y / 11, 2, Seed + 7));
        foreach (var drip in Drips)
            amount += 0.35 * drip.At(x, y).Share;
        return (float)Math.Max(0, amount);
    }

    /// <summary>Share of the treated colour at a point whose distance inside the true front is given, mm.</summary>
    public float Colouring(Front front, double field, double x, double y)
    {
        var share = Share(field, x, y);
        if (Halo is { } halo && field < 0.5)
        {
            var width = halo.WidthMm * (1 + halo.Latewood * front.Latewood(x, y));
            share += (1 - share) * halo.Strength * (1 - Smooth.Step(0, width, -field));
        }
        foreach (var drip in Drips)
        {
            if (drip.Carries <= 0 || share > 0.95f)
                continue;
            var (along, cover) = drip.At(x, y);
            if (cover <= 0)
                continue;
            var fade = drip.Carries * (float)Math.Exp(-2.2 * Math.Max(0, along) / drip.LengthMm);
            share = Math.Max(share, cover * fade * Share(front.At(drip.Start.X, drip.Start.Y), x, y));
        }
        return share;
    }

    private float Share(double field, double x, double y)
    {
        var bleed = BleedMm * (1 + 0.35 * Noise.At(x / 6, y / 6, Seed + 3));
        // The dye creeps from cell to cell, so its edge is frayed.
        var frayed = 0.35 * BleedMm * Noise.At(x * 3.7, y * 3.7, Seed + 4);
        return Smooth.Step(-FringeMm / 2, FringeMm / 2, field + bleed + frayed);
    }
}

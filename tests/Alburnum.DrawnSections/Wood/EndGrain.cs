namespace Alburnum.DrawnSections;

/// <summary>The bare end grain of one piece: where its pith lies, its rings, its sapwood, its blemishes.</summary>
/// <param name="PithMm">The tree's middle, in section coordinates; may lie outside the piece.</param>
/// <param name="RingWidthMm">Mean ring width.</param>
/// <param name="HeartRadiusMm">Mean radius of the heartwood about the pith; 0 for all sapwood.</param>
/// <param name="Roughness">0 planed, 1 torn by a coarse saw.</param>
public sealed record EndGrain(
    Timber Timber,
    Point PithMm,
    double RingWidthMm,
    double HeartRadiusMm,
    double Roughness,
    int Seed
)
{
    public IReadOnlyList<Blemish> Blemishes { get; init; } = [];

    /// <summary>Grey or blue stain in blotches, 0 to 1.</summary>
    public float Stain { get; init; }

    /// <summary>Overall lightness of this piece against its kind.</summary>
    public float Lightness { get; init; } = 1;

    /// <summary>Saw lines: direction, radians.</summary>
    public double SawAngle { get; init; }

    /// <summary>Distance between saw lines, mm.</summary>
    public double SawPitchMm { get; init; } = 1.6;

    /// <summary>A photograph of real wood to take colours from instead of the drawn rings; null for none.</summary>
    public WoodPhoto? Photo { get; init; }

    /// <summary>How far a point lies outside the heartwood, mm; negative within it.</summary>
    public double SapwoodMm(double x, double y)
    {
        if (HeartRadiusMm <= 0)
            return 1000;
        var dx = x - PithMm.X;
        var dy = y - PithMm.Y;
        var radius = Math.Sqrt(dx * dx + dy * dy);
        if (radius < 1e-6)
            return -HeartRadiusMm;
        var wobble = Noise.At(3 + 1.6 * dx / radius, 3 + 1.6 * dy / radius, Seed + 11);
        return radius - HeartRadiusMm * (1 + 0.06 * wobble) - 0.5 * Noise.At(x / 5, y / 5, Seed + 12);
    }

    /// <summary>Where a point falls among the rings: ring number and share of the ring from its inner side.</summary>
    public double Ring(double x, double y)
    {
        var dx = x - PithMm.X;
        var dy = y - PithMm.Y;
        var radius = Math.Sqrt(dx * dx + dy * dy) + 1e-9;
        var wobble = Noise.At(5 + 1.4 * dx / radius, 5 + 1.4 * dy / radius, Seed + 1);
        var warped =
            radius * (1 + 0.03 * wobble)
            + RingWidthMm
                * (0.35 * Noise.Fractal(x / 15, y / 15, 2, Seed + 2) + 0.05 * Noise.At(x / 3.1, y / 3.1, Seed + 3));
        foreach (var blemish in Blemishes)
        {
            if (blemish is Knot knot)
            {
                var reach = knot.Reach(x, y);
                if (reach < 3)
                    warped += 0.9 * knot.ShortRadiusMm * Math.Exp(-reach * reach);
            }
        }
        return warped / RingWidthMm + 1.1 * Noise.Along(warped / (4.5 * RingWidthMm), Seed + 4);
    }

    /// <summary>Share of latewood, 0 to 1, at a place among the rings, blurred over a pixel's width in rings.</summary>
    public float Latewood(double ring, double blurRings)
    {
        var number = (int)Math.Floor(ring);
        var share = ring - number;
        var start = Timber.LatewoodStart + 0.22f * (Noise.Even(number, 0, Seed + 5) - 0.5f);
        var strength = 0.62f + 0.38f * Noise.Even(number, 1, Seed + 5);
        var edge = Math.Max(0.05, blurRings);
        return strength * Smooth.Step(start, start + 0.3, share) * (1 - Smooth.Step(1 - edge, 1, share));
    }

    /// <summary>Reflectance of the dry wood.</summary>
    public Colour At(double x, double y, double pixelMm)
    {
        var sapwood = Smooth.Step(-0.8, 0.8, SapwoodMm(x, y));
        var colour = Photo is null ? Drawn(x, y, pixelMm, sapwood) : Photo.At(x, y);
        if (Stain > 0)
        {
            var blotch = Smooth.Step(0.05, 0.6, Noise.Fractal(x / 17, y / 17, 3, Seed + 21));
            colour = colour.Through(new(1.0f, 0.85f, 0.6f), Stain * blotch);
        }
        foreach (var blemish in Blemishes)
            colour = Blemished(colour, blemish, x, y, pixelMm);
        return colour * Lightness;
    }

    /// <summary>Height of the sawn surface, mm: torn fibre, saw lines, ridges of latewood.</summary>
    public double HeightMm(double x, double y)
    {
        var (sin, cos) = Math.SinCos(SawAngle);
        var across = x * cos + y * sin + 0.0009 * (x * x + y * y);
        var lengthwise = y * cos - x * sin;
        var saw =
            Noise.At(across / SawPitchMm, lengthwise / 60, Seed + 31)
            + 0.5 * Noise.At(across / (0.31 * SawPitchMm), lengthwise / 14, Seed + 32);
        var fibre = Noise.At(x * 3.1, y * 3.1, Seed + 33) + 0.6 * Noise.At(x * 7.3, y * 7.3, Seed + 34);
        return Roughness * (0.09 * saw + 0.09 * fibre);
    }

    private Colour Drawn(double x, double y, double pixelMm, float sapwood)
    {
        var dx = x - PithMm.X;
        var dy = y - PithMm.Y;
        var radius = Math.Sqrt(dx * dx + dy * dy);
        var ring = Ring(x, y);
        var late = Latewood(ring, 0.7 * pixelMm / RingWidthMm);
        var early = Timber.HeartEarlywood.Towards(Timber.Earlywood, sapwood);
        var dark = Timber.HeartLatewood.Towards(Timber.Latewood, sapwood);
        var colour = early.Towards(dark, late);

        // Rays, and the little streaks that run with them: even widths near and far by using two periods.
        var turn = Math.Atan2(dy, dx) / (2 * Math.PI) + 0.5;
        var fine = Math.Max(64, (int)(2 * Math.PI * Math.Max(radius, 20) / 0.45 / 64) * 64);
        var ray = Noise.Wrapped(turn * fine, radius / 9, fine, Seed + 41);
        var slow = Noise.Wrapped(turn * 90, radius / 26, 90, Seed + 42);
        var light = 1 + Timber.RayStrength * Smooth.Step(0.35, 0.75, ray) + 0.025f * ray + 0.05f * slow;

        // Tint drifts over the piece, and from ring to ring.
        light *= 1 + 0.07f * Noise.At(x / 31, y / 31, Seed + 43);
        light *= 1 + 0.05f * (Noise.Even((int)Math.Floor(ring), 2, Seed + 44) - 0.5f);
        // The cells themselves, as far as a camera sees them.
        light *= 1 + 0.08f * Noise.At(x * 4.1, y * 4.1, Seed + 45) + 0.10f * Noise.At(x * 10.3, y * 10.3, Seed + 46);
        // Torn fibres catch the light.
        var fleck = Smooth.Step(0.62, 0.95, Noise.At(x * 4.3 + 0.7 * y, y * 4.3, Seed + 47));
        light *= 1 + (float)Roughness * 0.22f * fleck;
        if (Timber.PoreStrength > 0)
        {
            var pore = Smooth.Step(0.35, 0.7, Noise.At(x * 3.3, y * 3.3, Seed + 48));
            light *= 1 - Timber.PoreStrength * pore * (0.25f + 0.75f * (1 - late));
        }
        var pith = 1 - 0.55f * (1 - Smooth.Step(0.8, 2.2, radius));
        return colour * (light * pith);
    }

    private Colour Blemished(Colour colour, Blemish blemish, double x, double y, double pixelMm)
    {
        switch (blemish)
        {
            case Knot knot:
            {
                var reach = knot.Reach(x, y);
                if (reach > 2.2)
                    return colour;
                var size = Math.Sqrt(knot.LongRadiusMm * knot.ShortRadiusMm);
                var inner =
                    Timber.HeartEarlywood.Towards(
                        Timber.HeartLatewood,
                        0.6f + 0.4f * Noise.At(reach * size * 1.9 + 0.4 * Noise.At(x, y, Seed + 53), 0.5, Seed + 51)
                    ) * 0.8f;
                inner *= 1 + 0.10f * Noise.At(x * 4, y * 4, Seed + 52);
                var rim = Smooth.Step(0.86, 0.95, reach) * (1 - Smooth.Step(1.0, 1.1, reach));
                inner = inner * (1 - 0.45f * rim);
                var halo = Smooth.Step(2.0, 1.0, 3.0 - reach);
                colour *= 1 - 0.18f * (1 - Smooth.Step(1, 2.1, reach)) * (1 - 0.2f * halo);
                var soft = pixelMm / size + 0.04;
                return colour.Towards(inner, 1 - Smooth.Step(1 - soft, 1 + soft, reach));
            }
            case Check check:
            {
                if (check.OutsideMm(x, y) is not { } outside)
                    return colour;
                var open = 1 - Smooth.Step(-0.7 * pixelMm, 0.7 * pixelMm, outside);
                var shade = 1 - 0.25f * (1 - Smooth.Step(0, 0.5, outside));
                return (colour * shade).Towards(new(0.018f, 0.014f, 0.011f), open * 0.95f);
            }
            case BrownStain stain:
                return colour.Through(new(0.26f, 0.5f, 0.72f), stain.Strength * stain.At(x, y));
            case ResinPocket pocket:
            {
                var reach = pocket.Reach(x, y);
                var share = 1 - Smooth.Step(0.8, 1.05, reach);
                return colour.Towards(
                    new Colour(0.30f, 0.13f, 0.025f) * (0.8f + 0.3f * Noise.At(x, y, Seed + 61)),
                    0.85f * share
                );
            }
            default:
                return colour;
        }
    }
}

namespace Alburnum.DrawnSections;

/// <summary>A patch where wet wood throws the lamp back at the camera.</summary>
public sealed record Glare(Point Centre, double WidthMm, float Strength);

/// <summary>A shadow with a straight soft edge, as of an arm or a roof, over everything beyond a line.</summary>
/// <param name="SoftMm">Width of its edge.</param>
/// <param name="Depth">Share of the light it takes, 0 to 1.</param>
public sealed record CastShadow(Point From, double Angle, double SoftMm, float Depth);

/// <summary>Light on the scene: one source to a side, the rest from all around.</summary>
/// <param name="Azimuth">Side that the source stands on, radians in the plane of the face.</param>
/// <param name="Elevation">How high it stands above that plane, radians.</param>
/// <param name="Direct">Share of the light that comes from the source, 0 to 1.</param>
/// <param name="Source">Colour of the source.</param>
/// <param name="Ambient">Colour of the rest.</param>
/// <param name="Falloff">How much brighter the near side is than the far side, per 100 mm.</param>
public sealed record Light(
    double Azimuth,
    double Elevation,
    float Direct,
    Colour Source,
    Colour Ambient,
    double Falloff,
    int Seed
)
{
    public IReadOnlyList<Glare> Glares { get; init; } = [];

    public CastShadow? Shadow { get; init; }

    /// <summary>Unit vector in the plane towards the source.</summary>
    public Point Towards => Point.Towards(Azimuth);

    /// <summary>Light falling on a level surface at a point; <paramref name="open"/> is the share of the source it sees.</summary>
    public Colour On(double x, double y, float open)
    {
        var near = 1 + Falloff * (x * Towards.X + y * Towards.Y) / 100;
        var direct = Direct * (float)Math.Max(0.15, near) * open;
        if (Shadow is { } shadow)
        {
            var beyond = Point.Dot(new Point(x, y) - shadow.From, Point.Towards(shadow.Angle));
            beyond += 0.15 * shadow.SoftMm * Noise.At(x / 30, y / 30, Seed);
            direct *= 1 - shadow.Depth * Smooth.Step(-shadow.SoftMm / 2, shadow.SoftMm / 2, beyond);
        }
        return Source * direct + Ambient * (1 - Direct);
    }

    /// <summary>Light thrown back without entering the wood, at a point of given wetness.</summary>
    public float Mirrored(double x, double y, float wet)
    {
        var sum = 0f;
        foreach (var glare in Glares)
        {
            var d = (new Point(x, y) - glare.Centre).Length / glare.WidthMm;
            if (d > 2.5)
                continue;
            var broken = 0.35f + 0.65f * Smooth.Step(-0.3, 0.5, Noise.At(x / 1.6, y / 1.6, Seed + 1));
            sum += glare.Strength * (float)Math.Exp(-d * d * 1.6) * broken * wet;
        }
        return sum;
    }
}

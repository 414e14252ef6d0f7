namespace Alburnum.DrawnSections;

/// <summary>Bays of untreated wood between deeper fingers, as liquid leaves them that runs ahead along rays and in latewood.</summary>
/// <param name="RayMm">How far fingers along rays run ahead of the front, and bays between them stay behind, mm.</param>
/// <param name="RayWidthMm">Width of a finger or a bay, mm.</param>
/// <param name="RingMm">How far latewood runs ahead, and earlywood stays behind, mm.</param>
/// <param name="JagMm">The same of jags that follow nothing, mm.</param>
/// <param name="JagWidthMm">Their width, mm.</param>
public sealed record RaggedFront(
    double RayMm,
    double RayWidthMm,
    double RingMm,
    double JagMm,
    double JagWidthMm,
    int Seed
)
{
    /// <summary>Farther from the even front than this nothing is ragged, mm.</summary>
    public double ReachMm => RayMm + RingMm + JagMm;

    /// <summary>What is added to the front's field at a point, mm.</summary>
    public double At(double x, double y, EndGrain grain)
    {
        var (dx, dy) = (x - grain.PithMm.X, y - grain.PithMm.Y);
        var radius = Math.Sqrt(dx * dx + dy * dy);
        var turn = Math.Atan2(dy, dx) / (2 * Math.PI) + 0.5;
        var rays = Math.Max(16, (int)(2 * Math.PI * Math.Max(radius, 15) / RayWidthMm / 16) * 16);
        var ray = Noise.Wrapped(turn * rays, radius / (6 * RayWidthMm), rays, Seed);
        // Fingers end blunt, bays run to a point.
        ray = ray < 0 ? 1.4f * ray : 0.6f * ray;
        var ring = 2 * (grain.Latewood(grain.Ring(x, y), 0.1) - 0.4);
        var jag = Noise.Fractal(x / JagWidthMm, y / JagWidthMm, 2, Seed + 1);
        return RayMm * ray + RingMm * ring + JagMm * jag;
    }
}

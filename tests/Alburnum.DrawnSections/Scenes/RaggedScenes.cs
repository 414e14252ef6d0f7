namespace Alburnum.DrawnSections;

/// <summary>Scenes as difficult as the others in every other respect, with fronts, reagents and pictures that are less kind.</summary>
/// <remarks>
/// Bays and fingers that follow rays and rings; a faint halo of drawn-in colour inside the front, farther along latewood; wet patches; rough sawing; phones
/// that sharpen, bend tones and compress hard. The front is where the main colour changes half-way.
/// </remarks>
public static class RaggedScenes
{
    /// <summary>The scene of a stratum and a seed; the same number always gives the same scene.</summary>
    public static SectionScene Of(Stratum stratum, int seed)
    {
        var scene = StratifiedScenes.Of(stratum, seed, []);
        var random = new Random(6151 * (int)stratum + seed * 15485863 + 29);
        var much = stratum switch
        {
            Stratum.Easy => 0.35,
            Stratum.Ordinary => 0.7,
            _ => 1.0,
        };
        var depth = scene.Treatment.DepthMm;
        var most = Math.Min(1, depth / 6);
        return scene with
        {
            Name = "ragged-" + scene.Name,
            Treatment = scene.Treatment with
            {
                Ragged = new(
                    much * most * random.Between(1, 4),
                    random.Between(1.2, 4),
                    much * most * random.Between(0.2, 2),
                    much * most * random.Between(0.3, 1.5),
                    random.Between(0.8, 2.5),
                    seed * 47 + 11
                ),
            },
            Spray = scene.Spray with
            {
                BleedMm = 0,
                FringeMm = random.Between(0.2, 0.3 + 0.5 * much),
                Halo = new(
                    random.Between(0.5, 3 * much + 0.5),
                    (float)(much * random.Between(0.1, 0.4)),
                    random.Between(0, 2)
                ),
                WetPatches = (float)(much * random.Between(0, 0.3)),
            },
            SawShade = scene.SawShade * (1 + 0.5 * much),
            JpegQuality = random.Next((int)(90 - 30 * much), 92),
            FullColour = false,
            Sensor = scene.Sensor with
            {
                Sharpening = (float)random.Between(0.3, 0.6 + 1.4 * much),
                Contrast = (float)random.Between(0, 0.2 + 0.5 * much),
            },
        };
    }
}

namespace Alburnum.DrawnSections;

/// <summary>Scenes as difficult as the others in every other respect, with fronts, reagents and pictures that are less kind.</summary>
/// <remarks>
/// Bays and fingers, many of them along rays and rings; a faint halo of drawn-in colour inside the front, farther along latewood; wet and dry patches; sawdust; rough sawing; phones
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
        scene = scene with
        {
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
        };
        return scene with
        {
            Name = "ragged-" + scene.Name,
            Treatment = scene.Treatment with
            {
                Tongues = Tongues(new Random(seed * 86028121 + (int)stratum), scene, much),
            },
            Spray = scene.Spray with
            {
                BleedMm = 0,
                FringeMm = random.Between(0.2, 0.3 + 0.5 * much),
                Halo = new(
                    random.Between(0.5, 3 * much + 0.5),
                    (float)(much * random.Between(0.1, 0.5)),
                    random.Between(0, 2)
                ),
                WetPatches = (float)(much * random.Between(0, 0.3)),
                DryPatches = much * random.Between(0, 0.4),
                Dust = 0.03 * much * random.NextDouble(),
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

    /// <summary>Bays 0.5 to 6 mm wide and 1 to 8 mm deep, and fingers like them, along rays or askew to the face.</summary>
    private static List<Tongue> Tongues(Random random, SectionScene scene, double much)
    {
        var front = new Front(scene.Shape, scene.Treatment, scene.Grain);
        var tongues = new List<Tongue>();
        for (var k = 0; k < scene.Shape.Faces.Count; k++)
        {
            var face = scene.Shape.Faces[k];
            for (
                var along = random.Between(2, 30);
                along < face.LengthMm - 2;
                along += random.Between(4, 10 + 20 / much)
            )
            {
                var usual = scene.Treatment.FaceDepthMm(scene.Shape, k, along);
                if (One(random, scene, front, face, along, usual) is { } tongue)
                    tongues.Add(tongue with { Seed = scene.Seed * 53 + 7 * k + 3 * tongues.Count });
            }
        }
        return tongues;
    }

    /// <summary>A bay or a finger at a place; null where the front lies too shallow for one, or behind the neighbouring face's.</summary>
    private static Tongue? One(Random random, SectionScene scene, Front front, Face face, double along, double usualMm)
    {
        var isFinger = random.Chance(0.4);
        var length = random.Between(1, 8);
        var width = Math.Min(random.Between(0.5, 6), random.Between(0.5, 1.2) * Math.Max(1, length));
        var (askew, isAlongRay) = (random.Between(-0.9, 0.9), random.Chance(0.6));
        var inward = face.Inward(along);
        var depth = UntreatedAfterMm(front, face.At(along), inward, usualMm + 4);
        length = Math.Min(length, isFinger ? 0.7 * depth : depth - 0.6);
        if (length < 0.8 || depth > usualMm + 3)
            return null;
        var at = face.At(along) + inward * depth;
        var fromPith = at - scene.Grain.PithMm;
        var ray = fromPith * (1 / Math.Max(1, fromPith.Length));
        var steep = Point.Dot(ray, inward);
        var (sin, cos) = Math.SinCos(askew);
        var deeper =
            isAlongRay && Math.Abs(steep) > 0.45
                ? ray * Math.Sign(steep)
                : new Point(inward.X * cos - inward.Y * sin, inward.X * sin + inward.Y * cos);
        return isFinger
            ? new(at - deeper * 2, at + deeper * length, width, IsTreated: true, 0)
            : new(
                at + deeper * (1 + UntreatedAfterMm(front, at + deeper, deeper, 8)),
                at - deeper * length,
                width,
                IsTreated: false,
                0
            );
    }

    /// <summary>How far along a direction untreated wood begins, mm.</summary>
    private static double UntreatedAfterMm(Front front, Point from, Point towards, double mostMm)
    {
        var mm = 0.0;
        while (mm < mostMm && front.At(from.X + towards.X * mm, from.Y + towards.Y * mm) > -0.2)
            mm += 0.2;
        return mm;
    }
}

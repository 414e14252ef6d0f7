namespace DrawSections;

/// <summary>An invented batch: its photographs go to the folder of its name beside this project.</summary>
/// <param name="Folder">Folder under examples/.</param>
/// <param name="Pieces">One scene a photograph.</param>
public sealed record ExampleCase(string Folder, IReadOnlyList<SectionScene> Pieces);

/// <summary>The three batches of the Thornhollow estate.</summary>
public static class ExampleCases
{
    /// <summary>Sawn pine posts for an orchard: every face well past 6 mm.</summary>
    public static ExampleCase OrchardPosts { get; } =
        new(
            "orchard-posts",
            Batch(11, Timber.Pine, SectionShape.Rectangle(100, 100), [9.4, 10.6, 12.1, 9.9, 11.3, 10.2, 13.0, 9.6])
        );

    /// <summary>Sawn spruce joists for a footbridge: most faces short of 6 mm, some far short.</summary>
    public static ExampleCase FootbridgeJoists { get; } =
        new(
            "footbridge-joists",
            Batch(23, Timber.Spruce, SectionShape.Rectangle(75, 150), [1.6, 2.4, 3.1, 1.2, 2.8, 0.9, 3.6, 2.1])
        );

    /// <summary>Round larch purlins for a barn: three pieces so near to 6 mm that a photograph cannot tell.</summary>
    public static ExampleCase BarnPurlins { get; } =
        new("barn-purlins", Batch(37, Timber.Larch, SectionShape.Round(120), [7.3, 6.0, 6.06, 7.9, 6.12, 6.9]));

    public static IReadOnlyList<ExampleCase> All { get; } = [OrchardPosts, FootbridgeJoists, BarnPurlins];

    /// <summary>Pieces whose least true depths are as given, mm.</summary>
    private static List<SectionScene> Batch(int seed, Timber timber, SectionShape shape, double[] leastDepthsMm) =>
        [.. leastDepthsMm.Select((least, k) => WithLeastDepth(Piece(seed * 100 + k, k, timber, shape, least), least))];

    private static SectionScene Piece(int seed, int number, Timber timber, SectionShape shape, double leastMm)
    {
        var random = new Random(seed);
        var round = shape.Name == "round";
        shape = shape with { Seed = seed, ArrisMm = random.Between(0.3, 0.9), WavinessMm = round ? 0.15 : 0.06 };
        var pith = Point.Towards(random.Angle()) * random.Between(0, (round ? 0.08 : 0.9) * shape.ReachMm);
        var grain = new EndGrain(
            timber,
            pith,
            random.Between(1.3, 2.8),
                // Heartwood keeps clear of the front, so that sapwood alone decides.
                round ? random.Between(18, 30)
                : pith.Length < 0.4 * shape.ReachMm ? random.Between(8, 15)
                : 0,
            random.Between(0.35, 0.7),
            seed * 3 + 1
        )
        {
            Lightness = (float)random.Between(0.9, 1.06),
            SawAngle = random.Angle(),
            SawPitchMm = random.Between(1.2, 2.6),
            Blemishes = number % 3 == 1 ? [Check(random, pith, seed)] : [],
        };
        var treatment = new Treatment(leastMm + 2, 0.9 + 0.06 * leastMm, 0.12 + 0.015 * leastMm, 1, seed * 5 + 2)
        {
            FaceShares = [.. shape.Faces.Select(_ => random.Between(0.96, 1.12))],
            FloorMm = 0,
            RingStepMm = 0.1,
            StreakMm = random.Between(0.2, 0.6),
            CornerMm = random.Between(0.5, 1.5),
            Patches = timber == Timber.Spruce && number % 2 == 0 ? Patch(random, shape) : [],
        };
        var spray = new Spray(
            random.Between(0.9, 1.15),
            random.Between(0.1, 0.25),
            random.Between(0.1, 0.2),
            random.Between(0.25, 0.45),
            seed * 7 + 3
        );
        return new(
            $"P{number + 1:00}",
            seed,
            shape,
            grain,
            treatment,
            Indicator.CopperBlue.Strayed(0.1, random),
            spray,
            Ground.GreyCard,
            Lamp(random, seed),
            Phone(random, shape),
            Chip(random, seed)
        )
        {
            Ground = random.OneOf([Ground.GreyCard, Ground.WhiteCard, Ground.GreyCard]),
            ThicknessMm = random.Between(18, 35),
            SawShade = random.Between(0.5, 1.0),
            JpegQuality = 88,
            Orientation = number == 3 ? 6 : 1,
        };
    }

    private static Check Check(Random random, Point pith, int seed) =>
        new(pith, random.Angle(), random.Between(14, 24), random.Between(0.3, 0.7), 0, seed);

    private static ShallowPatch[] Patch(Random random, SectionShape shape)
    {
        var face = random.Next(shape.Faces.Count);
        return
        [
            new(
                face,
                random.Between(0.35, 0.65) * shape.Faces[face].LengthMm,
                random.Between(10, 20),
                random.Between(0.4, 0.6)
            ),
        ];
    }

    private static Light Lamp(Random random, int seed) =>
        new(
            random.Angle(),
            random.Between(0.7, 1.15),
            (float)random.Between(0.35, 0.55),
            new Colour(1.03f, 1, 0.95f),
            new Colour(0.98f, 1, 1.03f),
            random.Between(0.03, 0.2),
            seed * 11 + 4
        );

    private static Lens Phone(Random random, SectionShape shape)
    {
        var upright = shape.HalfExtent.Y > shape.HalfExtent.X * 1.2;
        var (width, height) = upright ? (1500, 2000) : (2000, 1500);
        var scale = 0.78 * Math.Min(width / (2 * shape.HalfExtent.X), height / (2 * shape.HalfExtent.Y));
        return new(
            width,
            height,
            random.Between(1500, 2400),
            scale * random.Between(0.93, 1),
            random.Between(0, 6) * Math.PI / 180,
            random.Angle(),
            random.Between(-0.09, 0.09),
            random.Between(-0.008, 0.008),
            new(random.Between(-3, 3), random.Between(-3, 3))
        );
    }

    private static Sensor Chip(Random random, int seed) =>
        new(
            random.Between(0.7, 1.0),
            0,
            0,
            (float)random.Between(0.005, 0.01),
            (float)random.Between(0.08, 0.2),
            (float)random.Between(-0.2, 0.15),
            new Colour((float)random.Between(0.97, 1.04), 1, (float)random.Between(0.96, 1.03)),
            (float)random.Between(0.2, 0.5),
            (float)random.Between(0.05, 0.25),
            (float)random.Between(0.95, 1.08),
            seed * 13 + 5
        );

    /// <summary>The same scene, its treatment deepened or lessened until its least true depth is as asked, within 0.005 mm.</summary>
    private static SectionScene WithLeastDepth(SectionScene scene, double leastMm)
    {
        for (var k = 0; k < 12; k++)
        {
            var depth =
                TruthReading.DepthOf(scene)
                ?? throw new InvalidOperationException($"{scene.Name} has no depth to aim at.");
            var miss = leastMm - depth.MinMm;
            if (Math.Abs(miss) < 0.005)
                return scene;
            scene = scene with { Treatment = scene.Treatment with { DepthMm = scene.Treatment.DepthMm + miss } };
        }
        return scene;
    }
}

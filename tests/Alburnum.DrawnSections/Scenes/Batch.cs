namespace Alburnum.DrawnSections;

/// <summary>Pieces of one delivery, photographed on one afternoon with one phone on plain card.</summary>
/// <param name="Seed">Fixes everything about them.</param>
internal sealed record Batch(int Seed, Timber Timber, SectionShape Shape)
{
    /// <summary>Least distance of the pith from the section's middle, in half sections.</summary>
    public double PithFrom { get; init; }

    /// <summary>Greatest distance of the pith from the section's middle, in half sections.</summary>
    public double PithTo { get; init; }

    /// <summary>Width of the sapwood of round pieces, mm; null where wood shows no border.</summary>
    public double? SapwoodMm { get; init; }

    public bool IsIncised { get; init; }

    /// <summary>Pieces whose least true depths are as given, mm.</summary>
    public IReadOnlyList<SectionScene> Of(IReadOnlyList<double> leastDepthsMm) =>
        [.. leastDepthsMm.Select((least, number) => WithLeastDepth(Piece(number, least), least))];

    private SectionScene Piece(int number, double leastMm)
    {
        var seed = Seed * 100 + number;
        var random = new Random(seed);
        var round = Shape.Name == "round";
        var shape = Shape with { Seed = seed, ArrisMm = random.Between(0.3, 0.9), WavinessMm = round ? 0.15 : 0.06 };
        var pith = Point.Towards(random.Angle()) * (random.Between(PithFrom, PithTo) * shape.ReachMm);
        var grain = new EndGrain(
            Timber,
            pith,
            random.Between(1.3, 2.8),
            SapwoodMm is { } sapwood ? shape.ReachMm - sapwood : 0,
            random.Between(0.35, 0.7),
            seed * 3 + 1
        )
        {
            Lightness = (float)random.Between(0.9, 1.06),
            SawAngle = random.Angle(),
            SawPitchMm = random.Between(1.2, 2.6),
            Blemishes = pith.Length < shape.ReachMm && number % 3 == 1 ? [Check(random, pith, seed)] : [],
        };
        var treatment = new Treatment(leastMm + 2, 0.9 + 0.06 * leastMm, 0.12 + 0.015 * leastMm, 1, seed * 5 + 2)
        {
            FaceShares = [.. shape.Faces.Select(_ => random.Between(0.96, 1.12))],
            FloorMm = 0,
            RingStepMm = 0.1,
            StreakMm = random.Between(0.2, 0.6),
            CornerMm = random.Between(0.5, 1.5),
            Patches = !round && !IsIncised && number % 2 == 0 ? Patch(random, shape) : [],
            Incising = IsIncised ? new(random.Between(9, 12), leastMm + 3.5, random.Between(3, 4.5)) : null,
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

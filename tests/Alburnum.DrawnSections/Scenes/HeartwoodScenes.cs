namespace Alburnum.DrawnSections;

/// <summary>Scenes for telling heartwood from sapwood: those of the accuracy set with other wood in them, and seeds of their own.</summary>
public static class HeartwoodScenes
{
    /// <summary>Least length of the border that lies in sight where it is to be clear, mm.</summary>
    private const double LeastInSightMm = 40;

    private const int FirstSeed = 5000;

    /// <summary>The scene of a kind and a seed.</summary>
    public static SectionScene Of(HeartwoodKind kind, int seed)
    {
        var random = new Random(7907 * (int)kind + seed * 104723 + 29);
        var stratum = random.Chance(0.4) ? Stratum.Easy : Stratum.Ordinary;
        var scene = StratifiedScenes.Of(stratum, FirstSeed + 100 * (int)kind + seed, []);
        // Checks run along rays of the wood that was there before.
        IReadOnlyList<Blemish> kept = [.. scene.Grain.Blemishes.Where(blemish => blemish is not Check)];
        for (var tries = 0; ; tries++)
        {
            var grain = Wood(kind, random, scene) with
            {
                Blemishes = kind == HeartwoodKind.Stained ? [.. kept, .. Stains(random, scene.Shape)] : kept,
            };
            var tried = scene with
            {
                Name = $"heartwood-{kind.ToString().ToLowerInvariant()}-{seed:000}",
                Grain = grain,
                // Shallower than usual after a while, so that some border comes in sight.
                Treatment = tries < 40 ? scene.Treatment : scene.Treatment with { DepthMm = 3, SlowMm = 0.3 },
            };
            if (kind != HeartwoodKind.Clear || InSightMm(tried) >= LeastInSightMm)
                return tried;
        }
    }

    private static EndGrain Wood(HeartwoodKind kind, Random random, SectionScene scene)
    {
        var shape = scene.Shape;
        var round = shape.Name == "round";
        var pith = Point.Towards(random.Angle()) * (random.Between(0, round ? 0.12 : 1.5) * shape.ReachMm);
        var heart = round ? random.Between(0.3, 0.75) * shape.ReachMm : random.Between(15, 40) + 0.7 * pith.Length;
        return scene.Grain with
        {
            Timber = kind switch
            {
                HeartwoodKind.Clear => random.OneOf([
                    Timber.Pine,
                    Timber.Larch,
                    Timber.DouglasFir,
                    Timber.Oak,
                    Timber.Eucalypt,
                ]),
                HeartwoodKind.Faint => random.OneOf([Timber.Spruce, Timber.Beech]),
                _ => random.OneOf(Timber.All),
            },
            PithMm = pith,
            HeartRadiusMm = kind is HeartwoodKind.Clear or HeartwoodKind.Faint ? heart : 0,
        };
    }

    private static IEnumerable<Blemish> Stains(Random random, SectionShape shape)
    {
        for (var k = random.Next(1, 3); k > 0; k--)
        {
            Point at = new(
                shape.HalfExtent.X * random.Between(-0.7, 0.7),
                shape.HalfExtent.Y * random.Between(-0.7, 0.7)
            );
            var radius = random.Between(0.25, 0.6) * shape.ReachMm;
            yield return new BrownStain(
                at,
                radius * random.Between(1, 1.6),
                radius,
                random.Angle(),
                (float)random.Between(0.6, 1.2),
                random.Next()
            );
        }
    }

    /// <summary>Length of the border that lies within the section and on untreated wood to both sides, mm.</summary>
    private static double InSightMm(SectionScene scene)
    {
        const double BesideMm = 4;
        var front = new Front(scene.Shape, scene.Treatment, scene.Grain);
        var border = HeartwoodTruth.BorderMm(scene.Grain);
        var step = 2 * Math.PI * scene.Grain.HeartRadiusMm / border.Count;
        return step * border.Count(IsInSight);

        bool IsInSight(Point at)
        {
            var out1 = (at - scene.Grain.PithMm) * (BesideMm / (at - scene.Grain.PithMm).Length);
            return new[] { at - out1, at, at + out1 }.All(p =>
                scene.Shape.RoughlyInsideMm(p.X, p.Y) > 1 && front.At(p.X, p.Y) < -1
            );
        }
    }
}

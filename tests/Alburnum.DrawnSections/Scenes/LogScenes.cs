namespace Alburnum.DrawnSections;

/// <summary>Rounds that are no circles: waves and flats of the rim, knots at it, and checks that open it. Otherwise as difficult as the others.</summary>
public static class LogScenes
{
    private const int Harmonics = 8;

    /// <summary>The scene of a stratum and a seed; the same numbers always give the same scene.</summary>
    /// <param name="stratum">How difficult it is to read.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="wave">Root of the sum of the squared waves of the radius, as a share of it.</param>
    public static SectionScene Of(Stratum stratum, int seed, double wave)
    {
        var random = new Random(3571 * (int)stratum + seed * 32452843 + 41);
        var scene = Round(stratum, seed);
        var diameter = scene.Shape.SizesMm[0];
        var bare = SectionShape.Log(diameter, Waves(random, wave), Flats(random, wave), []);
        var face = bare.Faces[0];
        var (gaps, blemishes) = (new List<Gap>(), scene.Grain.Blemishes.ToList());
        if (random.Chance(0.5))
        {
            var (gap, check) = Open(random, face, scene.Grain.PithMm, seed);
            gaps.Add(gap);
            blemishes.Add(check);
        }
        if (random.Chance(0.3))
        {
            var along = random.NextDouble() * face.LengthMm;
            var radius = random.Between(3, 7);
            var at = face.At(along) + face.Inward(along) * (0.7 * radius);
            blemishes.Add(new Knot(at, radius * random.Between(1, 1.8), radius, Math.Atan2(at.Y, at.X)));
        }
        return scene with
        {
            Name = FormattableString.Invariant($"log-{wave * 1000:000}-{scene.Name}"),
            Shape = bare with
            {
                Gaps = gaps,
                Seed = scene.Shape.Seed,
                ArrisMm = scene.Shape.ArrisMm,
                WavinessMm = scene.Shape.WavinessMm,
            },
            Grain = scene.Grain with { Blemishes = blemishes },
        };
    }

    private static SectionScene Round(Stratum stratum, int seed)
    {
        for (var of = seed * 40; ; of++)
            if (StratifiedScenes.Of(stratum, of, []) is { Shape.Name: "round" } scene)
                return scene;
    }

    private static (double Cos, double Sin)[] Waves(Random random, double wave)
    {
        var waves = new (double Cos, double Sin)[Harmonics];
        double sum = 0;
        for (var n = 0; n < Harmonics; n++)
        {
            // A log is most often flat, then three-cornered; ripples are small.
            var (sin, cos) = Math.SinCos(random.Angle());
            var size = random.Between(0.3, 1) / (n + 2);
            (waves[n], sum) = ((size * cos, size * sin), sum + size * size);
        }
        return [.. waves.Select(each => (each.Cos * wave / Math.Sqrt(sum), each.Sin * wave / Math.Sqrt(sum)))];
    }

    private static LogFlat[] Flats(Random random, double wave) =>
        random.Chance(0.4) ? [new(random.Angle(), 1 - random.Between(0.5, 1.5) * wave)] : [];

    // Along a ray, from the rim inwards; it gapes for the first few millimetres.
    private static (Gap Gap, Check Check) Open(Random random, Face face, Point pith, int seed)
    {
        var at = face.At(random.NextDouble() * face.LengthMm);
        var away = at - pith;
        var angle = Math.Atan2(away.Y, away.X);
        var (length, width) = (random.Between(3, 10), random.Between(0.8, 3));
        return (
            new(at - Point.Towards(angle) * length, angle, length, width),
            new Check(at, angle + Math.PI, random.Between(15, 0.8 * away.Length + 15), 0.7 * width, 0, seed * 53 + 19)
        );
    }
}

namespace Alburnum.DrawnSections;

/// <summary>Sections on which nothing is treated, or only with what leaves no colour: wood, camera and light of the heartwood set, seeds of their own.</summary>
public static class SapwoodScenes
{
    private const int FirstSeed = 400;

    /// <summary>Pine and white oak as their reagents colour them (data/heartwood-reagents.yaml).</summary>
    private static readonly IReadOnlyList<Timber> Reacted =
    [
        Timber.Pine with
        {
            Name = "pine",
            Earlywood = Colour.Of("#CDA664"),
            Latewood = Colour.Of("#AD7C3C"),
            HeartEarlywood = Colour.Of("#BC4A36"),
            HeartLatewood = Colour.Of("#8A2E24"),
        },
        Timber.Oak with
        {
            Name = "white-oak",
            HeartEarlywood = Colour.Of("#383C2C"),
            HeartLatewood = Colour.Of("#252420"),
        },
    ];

    /// <summary>The scene of a kind and a seed; the same number always gives the same scene.</summary>
    public static SectionScene Of(SapwoodKind kind, int seed)
    {
        var random = new Random(3571 * (int)kind + seed * 86243 + 17);
        var isAllSapwood = kind is SapwoodKind.AllSapwood or SapwoodKind.AllSapwoodIndicator;
        var wood =
            !isAllSapwood ? HeartwoodKind.Clear
            : random.Chance(0.5) ? HeartwoodKind.None
            : HeartwoodKind.Stained;
        var scene = HeartwoodScenes.Of(wood, FirstSeed + 100 * (int)kind + seed);
        return scene with
        {
            Name = $"sapwood-{kind.ToString().ToLowerInvariant()}-{seed:000}",
            Grain =
                kind == SapwoodKind.HeartwoodReagent
                    ? scene.Grain with
                    {
                        Timber = random.OneOf(Reacted),
                    }
                    : scene.Grain,
            Treatment = new Treatment(0, 0, 0, 0, scene.Seed)
            {
                FloorMm = 0,
                RingStepMm = 0,
                StreakMm = 0,
                CornerMm = 0,
            },
            Indicator = Unreacted(kind, random),
            Spray = scene.Spray with { Halo = null },
        };
    }

    /// <summary>A reagent that looks the same everywhere.</summary>
    private static Indicator Unreacted(SapwoodKind kind, Random random)
    {
        var indicator = random
            .OneOf([
                Indicator.CopperBlue,
                Indicator.CopperBlue,
                Indicator.DarkGreen,
                Indicator.Magenta,
                Indicator.BoronRed,
            ])
            .Strayed(0.2, random);
        return kind is SapwoodKind.IndicatorOnly or SapwoodKind.AllSapwoodIndicator
            ? indicator with
            {
                Preservative = Film.None,
                Treated = indicator.Untreated,
            }
            : Indicator.None with
            {
                Preservative = Film.None,
            };
    }
}

namespace Alburnum.DrawnSections;

/// <summary>What a film of reagent does to the colour of wood.</summary>
/// <param name="Absorbance">How it filters the wood below.</param>
/// <param name="Pigment">The colour it has itself.</param>
/// <param name="Cover">How much its own colour hides the wood, 0 to 1.</param>
public sealed record Film(Colour Absorbance, Colour Pigment, float Cover)
{
    public static readonly Film None = new(default, default, 0);

    /// <summary>Wood seen through an amount of this film; 1 is a full spray.</summary>
    public Colour Over(Colour wood, float amount, float woodLightness)
    {
        // Ridges and rings stay visible through a pigment: it follows the lightness of the wood.
        var body = Pigment * (0.45f + 0.55f * Math.Min(wood.Luminance / woodLightness, 1.8f));
        return wood.Through(Absorbance, amount).Towards(body, Cover * (1 - MathF.Exp(-1.6f * amount)));
    }
}

/// <summary>The colours that tell treated wood from untreated.</summary>
/// <param name="Name">copper-blue, dark-green, magenta, boron-red or none.</param>
/// <param name="Preservative">What treatment alone does to the wood's colour.</param>
/// <param name="Untreated">The reagent where it finds nothing.</param>
/// <param name="Treated">The reagent where it finds preservative.</param>
public sealed record Indicator(string Name, Film Preservative, Film Untreated, Film Treated)
{
    private static readonly Film Greenish = new(new(0.38f, 0.18f, 0.30f), Colour.Of("#7E8260"), 0.22f);

    public static readonly Indicator CopperBlue = new(
        "copper-blue",
        Greenish,
        new(new(0.04f, 0.42f, 0.55f), Colour.Of("#C9694E"), 0.36f),
        new(new(1.7f, 1.05f, 0.2f), Colour.Of("#2A3868"), 0.62f)
    );

    public static readonly Indicator DarkGreen = new(
        "dark-green",
        Greenish,
        new(new(0.12f, 0.15f, 0.2f), Colour.Of("#C8A06A"), 0.05f),
        new(new(1.7f, 1.35f, 1.4f), Colour.Of("#22302A"), 0.7f)
    );

    public static readonly Indicator Magenta = new(
        "magenta",
        Greenish,
        new(new(0.03f, 0.2f, 0.75f), Colour.Of("#D3A04A"), 0.36f),
        new(new(0.35f, 1.5f, 0.45f), Colour.Of("#97335E"), 0.6f)
    );

    public static readonly Indicator BoronRed = new(
        "boron-red",
        new(new(0.05f, 0.05f, 0.08f), Colour.Of("#C9B48C"), 0.05f),
        new(new(0.01f, 0.08f, 0.85f), Colour.Of("#D9BA54"), 0.36f),
        new(new(0.2f, 1.2f, 1.0f), Colour.Of("#A9463A"), 0.55f)
    );

    public static readonly Indicator None = new(
        "none",
        new(new(0.6f, 0.25f, 0.42f), Colour.Of("#747C5C"), 0.34f),
        Film.None,
        Film.None
    );

    public static readonly IReadOnlyList<Indicator> All = [CopperBlue, DarkGreen, Magenta, BoronRed, None];

    /// <summary>Another bottle, another batch: the same reagent with its colours strayed by about <paramref name="spread"/>.</summary>
    public Indicator Strayed(double spread, Random random) =>
        this with
        {
            Preservative = Stray(Preservative, spread, random),
            Untreated = Stray(Untreated, spread, random),
            Treated = Stray(Treated, spread, random),
        };

    private static Film Stray(Film film, double spread, Random random)
    {
        float Factor() => (float)Math.Exp(spread * (2 * random.NextDouble() - 1));
        return new(
            film.Absorbance * new Colour(Factor(), Factor(), Factor()),
            film.Pigment * new Colour(Factor(), Factor(), Factor()) * Factor(),
            Math.Clamp(film.Cover * Factor(), 0, 0.9f)
        );
    }
}

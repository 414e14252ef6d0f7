using Alburnum.Impregnation;
using Alburnum.Measures;
using Alburnum.Timber;

namespace Alburnum.Assaying;

/// <summary>Oven-dry mass of wood in a volume of the analytical zone.</summary>
public abstract record ZoneDensity
{
    private protected ZoneDensity() { }

    /// <summary>The density, kg/m³.</summary>
    public abstract Estimate KgPerM3 { get; }
}

/// <summary>It was measured, or stated by whoever asks.</summary>
/// <param name="Stated">The density, kg/m³. Above 0.</param>
public sealed record StatedZoneDensity(Estimate Stated) : ZoneDensity
{
    /// <summary>Whether anything says how uncertain it is; false: the standard uncertainty is written 0 and means nothing.</summary>
    public bool IsUncertaintyKnown { get; init; } = true;

    /// <inheritdoc/>
    public override Estimate KgPerM3 => Stated;
}

/// <summary>It was taken from the usual density of the timber at 12 % moisture.</summary>
public sealed record UsualZoneDensity : ZoneDensity
{
    private const double MoisturePercent = 12;

    private UsualZoneDensity(Species species, Fact<DensityRange> density, Fact<double> variation) =>
        (Species, Density, Variation) = (species, density, variation);

    /// <summary>The timber.</summary>
    public Species Species { get; }

    /// <summary>Its density at 12 %, kg/m³.</summary>
    public Fact<DensityRange> Density { get; }

    /// <summary>Coefficient of variation of the density within a species, above 0 to 1.</summary>
    public Fact<double> Variation { get; }

    /// <summary>Oven-dry mass in the volume at 12 %, kg/m³: the density over 1.12.</summary>
    public double InVolumeAt12KgPerM3 => Density.Value.TypicalKgPerM3 / (1 + MoisturePercent / 100);

    /// <summary>Oven-dry mass in the green volume, kg/m³.</summary>
    public double InGreenVolumeKgPerM3 => 1000 * WoodDensity.BasicFrom12(Density.Value.TypicalKgPerM3);

    /// <summary>Whether the ends of the published density say more of how trees differ than the variation does.</summary>
    public bool IsSpreadByEnds => EndsAt12KgPerM3 > Variation.Value * Density.Value.TypicalKgPerM3;

    /// <summary>Standard uncertainty because trees differ, kg/m³.</summary>
    public double SpreadKgPerM3 =>
        Math.Max(EndsAt12KgPerM3 / Density.Value.TypicalKgPerM3, Variation.Value) * MiddleKgPerM3;

    /// <summary>Standard uncertainty because the volume may be that of the wood green or at 12 %, kg/m³: half of what lies between, over √3 (JCGM 100:2008, 4.3.7).</summary>
    public double VolumeKgPerM3 => Math.Abs(InVolumeAt12KgPerM3 - InGreenVolumeKgPerM3) / 2 / Math.Sqrt(3);

    /// <inheritdoc/>
    /// <remarks>The middle between the volume at 12 % and the green volume.</remarks>
    public override Estimate KgPerM3 => new(MiddleKgPerM3, UncertaintyBudget.Combine(SpreadKgPerM3, VolumeKgPerM3));

    private double MiddleKgPerM3 => InVolumeAt12KgPerM3 / 2 + InGreenVolumeKgPerM3 / 2;

    // Any density between the ends with even chance, as it scatters about the value taken, which need not be their middle.
    private double EndsAt12KgPerM3 =>
        Density.Value is { LowKgPerM3: { } low, HighKgPerM3: { } high, TypicalKgPerM3: var taken }
            ? UncertaintyBudget.Combine((high - low) / Math.Sqrt(12), (high + low) / 2 - taken)
            : 0;

    /// <summary>That of a species; null where its density is not known.</summary>
    /// <param name="species">The timber.</param>
    /// <param name="variation">Coefficient of variation of the density within a species, above 0 to 1.</param>
    public static UsualZoneDensity? Of(Species species, Fact<double> variation)
    {
        ArgumentNullException.ThrowIfNull(species);
        ArgumentNullException.ThrowIfNull(variation);
        return species.Density is { } density ? new(species, density, variation) : null;
    }
}

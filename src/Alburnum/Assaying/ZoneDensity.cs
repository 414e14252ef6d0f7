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
    /// <inheritdoc/>
    public override Estimate KgPerM3 => Stated;
}

/// <summary>It was taken from the usual density of the timber at 12 % moisture.</summary>
public sealed record UsualZoneDensity : ZoneDensity
{
    // Coefficient of variation of the specific gravity within a species: Wood Handbook (FPL-GTR-282, 2021), table 5-6.
    private const double VariationWithinSpecies = 0.10;
    private const double MoisturePercent = 12;

    private UsualZoneDensity(Species species, Fact<DensityRange> density) => (Species, Density) = (species, density);

    /// <summary>The timber.</summary>
    public Species Species { get; }

    /// <summary>Its density at 12 %, kg/m³.</summary>
    public Fact<DensityRange> Density { get; }

    /// <summary>Standard uncertainty because trees differ, kg/m³.</summary>
    public double SpreadKgPerM3 => VariationWithinSpecies * OvenDryKgPerM3;

    /// <summary>Standard uncertainty because the volume may be that of the wood green or at 12 %, kg/m³: any in between, with even chance.</summary>
    public double VolumeKgPerM3
    {
        get
        {
            var basic = WoodDensity.BasicFrom12(Density.Value.TypicalKgPerM3);
            return Math.Abs(OvenDryKgPerM3 - 1000 * basic) / Math.Sqrt(12);
        }
    }

    /// <inheritdoc/>
    /// <remarks>Density at 12 % over 1.12: the same volume without its water.</remarks>
    public override Estimate KgPerM3 => new(OvenDryKgPerM3, UncertaintyBudget.Combine(SpreadKgPerM3, VolumeKgPerM3));

    private double OvenDryKgPerM3 => Density.Value.TypicalKgPerM3 / (1 + MoisturePercent / 100);

    /// <summary>That of a species; null where its density is not known.</summary>
    public static UsualZoneDensity? Of(Species species)
    {
        ArgumentNullException.ThrowIfNull(species);
        return species.Density is { } density ? new(species, density) : null;
    }
}

namespace Alburnum.Impregnation.Incising;

/// <summary>What design codes take off the strength of incised timber.</summary>
public sealed record IncisingPenalty
{
    /// <summary>Where the factors come from.</summary>
    public required Provenance Source { get; init; }

    /// <summary>Factor on the modulus of elasticity.</summary>
    public required double ModulusOfElasticity { get; init; }

    /// <summary>Factor on bending, tension, compression along the grain and shear.</summary>
    public required double Strength { get; init; }

    /// <summary>Factor on compression across the grain.</summary>
    public required double Bearing { get; init; }

    /// <summary>Deepest cut the factors hold for, mm.</summary>
    public required double GreatestDepthMm { get; init; }

    /// <summary>Longest cut the factors hold for, mm.</summary>
    public required double GreatestLengthMm { get; init; }

    /// <summary>Densest pattern the factors hold for, per m².</summary>
    public required double GreatestDensityPerM2 { get; init; }

    /// <summary>Where the factors do not hold for a pattern; empty where they do.</summary>
    public IReadOnlyList<BeyondFactors> Beyond(IncisingPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        List<BeyondFactors> beyond = [];
        if (pattern.DepthMm > GreatestDepthMm)
            beyond.Add(new CutsTooDeep(pattern.DepthMm, GreatestDepthMm));
        if (pattern.LengthMm > GreatestLengthMm)
            beyond.Add(new CutsTooLong(pattern.LengthMm, GreatestLengthMm));
        if (pattern.DensityPerM2 > GreatestDensityPerM2)
            beyond.Add(new CutsTooDense(pattern.DensityPerM2, GreatestDensityPerM2));
        return beyond;
    }
}

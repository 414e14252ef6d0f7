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

    /// <summary>Why the factors do not hold for a pattern, one sentence each; empty where they do.</summary>
    public IReadOnlyList<string> Beyond(IncisingPattern pattern)
    {
        var reasons = new List<string>();
        if (pattern.DepthMm > GreatestDepthMm)
            reasons.Add(
                FormattableString.Invariant(
                    $"The cuts are {pattern.DepthMm:0.#} mm deep; the code's factors hold up to {GreatestDepthMm:0.#} mm."
                )
            );
        if (pattern.LengthMm > GreatestLengthMm)
            reasons.Add(
                FormattableString.Invariant(
                    $"The cuts are {pattern.LengthMm:0.#} mm long; the code's factors hold up to {GreatestLengthMm:0.#} mm."
                )
            );
        if (pattern.DensityPerM2 > GreatestDensityPerM2)
            reasons.Add(
                FormattableString.Invariant(
                    $"There are {pattern.DensityPerM2:0} cuts to the m²; the code's factors hold up to {GreatestDensityPerM2:0}."
                )
            );
        return reasons;
    }

    /// <summary>The penalty for a pattern in words, for the sheet.</summary>
    public string InWords(IncisingPattern pattern) =>
        Beyond(pattern) is { Count: > 0 } reasons
            ? string.Join(" ", reasons) + " Strength must be shown by test, or by the section less the cuts."
            : FormattableString.Invariant(
                $"Design strength times {Strength:0.00} (bending, tension, compression along the grain, shear), stiffness times {ModulusOfElasticity:0.00}, bearing times {Bearing:0.00}."
            );
}

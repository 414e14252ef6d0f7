using Alburnum.Impregnation.Prediction;

namespace Alburnum.Workflows.Impregnation;

/// <summary>Where the product of a charge is expected, the walls of its timber taking up so much.</summary>
public sealed record ProductInCharge
{
    /// <summary>On whose word they do.</summary>
    public required WallsBasis Basis { get; init; }

    /// <summary>Product in the analytical zone, kg/m³.</summary>
    public required Estimate ZoneKgPerM3 { get; init; }

    /// <summary>Product in the whole timber, kg/m³.</summary>
    public required Estimate MeanKgPerM3 { get; init; }

    /// <summary>Mean depth of the product in the middle piece, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Product kept beyond what the solution kept carries, as a share of that. 0 or more.</summary>
    public required double SelectiveShare { get; init; }

    /// <summary>Strength of what is left in the tank, % of product by mass; null where it is not known how much that is.</summary>
    public required Estimate? StrengthAfterPercent { get; init; }

    /// <summary>Over depth, under the middle of a face of the pieces that make up most of the charge; litres count the working solution that would carry the product. Empty where the timber is incised.</summary>
    public required IReadOnlyList<DepthBand> Bands { get; init; }

    /// <summary>Product in a litre of the working solution, kg.</summary>
    public required double KgPerL { get; init; }
}

using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Documents;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>nothing, given, for comparison, everything.</summary>
public sealed class WallsBasisConverter : WordConverter<WallsBasis>;

/// <summary>Where the product of one piece among many is expected, the walls taking up so much. Fields as in docs/json/predict.md.</summary>
public sealed record PieceProductDocument
{
    /// <summary>On whose word they do.</summary>
    [JsonConverter(typeof(WallsBasisConverter))]
    public required WallsBasis Walls { get; init; }

    /// <summary>Product in the analytical zone, kg/m³.</summary>
    public required Spread ZoneKgPerM3 { get; init; }

    /// <summary>Product in the whole piece, kg/m³.</summary>
    public required Spread MeanKgPerM3 { get; init; }

    /// <summary>Mean depth of the product, mm.</summary>
    public required Spread DepthMm { get; init; }

    /// <summary>The same over depth; empty where the wood is incised.</summary>
    public required IReadOnlyList<ProductBandDocument> Bands { get; init; }

    /// <summary>What a prediction says.</summary>
    internal static PieceProductDocument Of(ExpectedProduct expected, TreatingPrediction prediction)
    {
        var kg = prediction.KgPerL!.Value;
        return new()
        {
            Walls = expected.Basis,
            ZoneKgPerM3 = ProductBandDocument.Times(expected.Quick.ZoneLPerM3, kg),
            MeanKgPerM3 = ProductBandDocument.Times(expected.Quick.KeptLPerM3, kg),
            DepthMm = expected.Quick.MeanMm,
            Bands = prediction.Asked.Prediction.Incising is null ? ProductBandDocument.Of(expected.Bands, kg) : [],
        };
    }
}

/// <summary>Where the product of a charge is expected, the walls of its timber taking up so much. Fields as in docs/json/charge.md.</summary>
public sealed record ChargeProductDocument
{
    /// <summary>On whose word they do.</summary>
    [JsonConverter(typeof(WallsBasisConverter))]
    public required WallsBasis Walls { get; init; }

    /// <summary>Product in the analytical zone, kg/m³.</summary>
    public required Estimate ZoneKgPerM3 { get; init; }

    /// <summary>Product in the whole timber, kg/m³.</summary>
    public required Estimate MeanKgPerM3 { get; init; }

    /// <summary>Mean depth of the product in the middle piece, mm.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Product kept beyond what the solution kept carries, as a share of that.</summary>
    public required double SelectiveShare { get; init; }

    /// <summary>Strength of what is left in the tank, % of product by mass; null where it is not known how much that is.</summary>
    public Estimate? StrengthAfterPercent { get; init; }

    /// <summary>Over depth, under the middle of a face; empty where the timber is incised.</summary>
    public required IReadOnlyList<ProductBandDocument> Bands { get; init; }

    /// <summary>What is expected of a charge.</summary>
    internal static ChargeProductDocument Of(ProductInCharge product) =>
        new()
        {
            Walls = product.Basis,
            ZoneKgPerM3 = product.ZoneKgPerM3,
            MeanKgPerM3 = product.MeanKgPerM3,
            DepthMm = product.DepthMm,
            SelectiveShare = product.SelectiveShare,
            StrengthAfterPercent = product.StrengthAfterPercent,
            Bands = ProductBandDocument.Of(product.Bands, product.KgPerL),
        };
}

/// <summary>Product in one band of depth under the middle of a face, in slow, middle and fast wood.</summary>
public sealed record ProductBandDocument
{
    /// <summary>Where the band begins, mm.</summary>
    public required double FromMm { get; init; }

    /// <summary>Where it ends, mm.</summary>
    public required double ToMm { get; init; }

    /// <summary>Product in the band, kg/m³.</summary>
    public required Spread KgPerM3 { get; init; }

    /// <summary>Product from the face to the band's end, kg/m³: what an assay of that zone finds.</summary>
    public required Spread AssayKgPerM3 { get; init; }

    internal static IReadOnlyList<ProductBandDocument> Of(IReadOnlyList<DepthBand> bands, double kgPerL) =>
        [
            .. bands.Select(band => new ProductBandDocument
            {
                FromMm = band.FromMm,
                ToMm = band.ToMm,
                KgPerM3 = Times(band.InBand, kgPerL),
                AssayKgPerM3 = Times(band.ToFace, kgPerL),
            }),
        ];

    internal static Spread Times(Spread spread, double factor) =>
        new(spread.Low * factor, spread.Middle * factor, spread.High * factor);
}

using Alburnum.Requirements;

namespace Alburnum.Assaying;

/// <summary>How a laboratory's figures become the retention that is required.</summary>
public sealed record AssayBasis
{
    /// <summary>Substances that the retention counts together, such as CuO, or Cu, Cr and As; empty: what was measured, as it was reported.</summary>
    public IReadOnlyList<Compound> CountedAs { get; init; } = [];

    /// <summary>Product that the retention counts; null where it counts substances.</summary>
    public ProductFormula? Product { get; init; }

    /// <summary>The kind of preservative that the product is; null where it is not known.</summary>
    public Preservative? ProductKind { get; init; }

    /// <summary>Oven-dry density of the zone; null where it is not known.</summary>
    public ZoneDensity? Density { get; init; }

    /// <summary>Depth of the zone, mm; null where it is not known.</summary>
    public double? ZoneDepthMm { get; init; }
}

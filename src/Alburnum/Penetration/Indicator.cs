namespace Alburnum.Penetration;

/// <summary>A reagent (or none) and the colours it leaves on treated and on untreated wood.</summary>
/// <param name="Key">Short name as typed by the user, for instance "copper-blue".</param>
/// <param name="Name">Name for people.</param>
/// <param name="TreatedColours">Colours seen on treated wood in even white light, sRGB as 0xRRGGBB. At least one.</param>
/// <param name="UntreatedColours">Colours seen on untreated wood in even white light, sRGB as 0xRRGGBB. At least one.</param>
/// <param name="BleedMm">How far the colour is drawn past the true front, mm (mean of its fall-off); with uncertainty.</param>
/// <param name="Provenance">Where the colours come from.</param>
public sealed record Indicator(
    string Key,
    string Name,
    IReadOnlyList<int> TreatedColours,
    IReadOnlyList<int> UntreatedColours,
    Estimate BleedMm,
    Provenance Provenance
)
{
    /// <summary>What treated wood looks like, in words.</summary>
    public required string TreatedInWords { get; init; }

    /// <summary>What untreated wood looks like, in words.</summary>
    public required string UntreatedInWords { get; init; }

    /// <summary>Least content that colours, mg per kg of wood; null where no figure is known.</summary>
    public Fact<double>? LeastContentMgPerKg { get; init; }

    /// <summary>True where the colour alone is weak evidence, as without a reagent.</summary>
    public bool IsWeakEvidence { get; init; }

    /// <summary>What to mind when it is used, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

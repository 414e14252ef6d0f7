namespace Alburnum.Penetration;

/// <summary>Least content of an element that a reagent colours on wood, known to lie between two contents that were tried.</summary>
/// <param name="Element">Symbol of the element, for instance "Cu". Of another element that the reagent colours it says nothing.</param>
/// <param name="AboveMgPerKg">Greatest content that was not seen, mg per kg of wood.</param>
/// <param name="AtMostMgPerKg">Least content that was seen, mg per kg of wood.</param>
/// <param name="Scope">Wood and preservative that it was tried on.</param>
/// <param name="Provenance">Where it comes from.</param>
public sealed record DetectionLimit(
    string Element,
    double AboveMgPerKg,
    double AtMostMgPerKg,
    string Scope,
    Provenance Provenance
);

/// <summary>A reagent (or none) and the colours it leaves on treated and on untreated wood.</summary>
/// <param name="Key">Short name as typed by the user, for instance "copper-blue".</param>
/// <param name="Name">Name for people.</param>
/// <param name="TreatedColours">Colours seen on treated wood in even white light, sRGB as 0xRRGGBB. At least one.</param>
/// <param name="UntreatedColours">Colours seen on untreated wood in even white light, sRGB as 0xRRGGBB. At least one.</param>
/// <param name="BleedMm">How far the half-way point of the main change of colour lies past the front, mm; with uncertainty.</param>
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

    /// <summary>Least content that colours; null where no figure is known.</summary>
    public DetectionLimit? Detection { get; init; }

    /// <summary>True where the colour alone is weak evidence, as without a reagent.</summary>
    public bool IsWeakEvidence { get; init; }

    /// <summary>What to mind when it is used, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

namespace Alburnum.Timber;

/// <summary>What one source says of a timber on a scale of its own: orientation only, since scales do not correspond.</summary>
/// <param name="Scale">Name of the scale.</param>
/// <param name="Means">What its degrees mean.</param>
/// <param name="SpeciesNames">Common names of the timbers it speaks of, as the catalogue shows them where it has them.</param>
/// <param name="Says">What it says of them.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record OtherScale(
    string Scale,
    string Means,
    IReadOnlyList<string> SpeciesNames,
    string Says,
    Provenance Provenance
);

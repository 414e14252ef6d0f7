namespace Alburnum.Requirements;

/// <summary>What EN 335 says of a use class.</summary>
/// <param name="UseClass">The class.</param>
/// <param name="Situation">Where such timber stands.</param>
/// <param name="Moisture">How wet it gets.</param>
/// <param name="Agents">What may attack it, with a source and standing of its own.</param>
/// <param name="Provenance">Source and standing of the rest.</param>
public sealed record UseClassFacts(
    UseClass UseClass,
    string Situation,
    string Moisture,
    Fact<string> Agents,
    Provenance Provenance
);

/// <summary>Something that readers of use classes get wrong, between editions or between countries.</summary>
/// <param name="UseClasses">Classes it concerns.</param>
/// <param name="Sentence">One sentence.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record UseClassTrap(IReadOnlyList<UseClass> UseClasses, string Sentence, Provenance Provenance);

/// <summary>A rough match between systems: orientation only, never compliance.</summary>
/// <param name="UseClasses">European use classes.</param>
/// <param name="Situation">The situation in words.</param>
/// <param name="AustralianNewZealand">Hazard class there.</param>
/// <param name="American">Use category there.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record Equivalence(
    IReadOnlyList<UseClass> UseClasses,
    string Situation,
    string AustralianNewZealand,
    string American,
    Provenance Provenance
);

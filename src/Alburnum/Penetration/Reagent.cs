namespace Alburnum.Penetration;

/// <summary>What can be sprayed on a fresh cut to show a preservative, and how far it is to be believed.</summary>
/// <param name="Key">Short name, such as "chrome-azurol-s".</param>
/// <param name="Name">Name for people.</param>
/// <param name="Shows">Symbols of the elements that it colours; empty where none decides.</param>
/// <param name="Preservatives">Keys of the preservatives that it shows by themselves.</param>
/// <param name="Provenance">Where its colours and its preparation come from.</param>
public sealed record Reagent(
    string Key,
    string Name,
    IReadOnlyList<string> Shows,
    IReadOnlyList<string> Preservatives,
    Provenance Provenance
)
{
    /// <summary>What treated wood looks like.</summary>
    public required string Treated { get; init; }

    /// <summary>What untreated wood looks like.</summary>
    public required string Untreated { get; init; }

    /// <summary>Name under which photographs of it are measured; null where they are not.</summary>
    public required string? IndicatorKey { get; init; }

    /// <summary>Least content that colours; null where no figure is known.</summary>
    public required DetectionLimit? Detection { get; init; }

    /// <summary>How it is made up and put on, in general.</summary>
    public required string Preparation { get; init; }

    /// <summary>Where its limits come from: what it cannot show, what misleads it and how to photograph it.</summary>
    public required Provenance Limits { get; init; }

    /// <summary>What it cannot show, one sentence each.</summary>
    public required IReadOnlyList<string> CannotShow { get; init; }

    /// <summary>What misleads it, one sentence each.</summary>
    public required IReadOnlyList<string> Misleads { get; init; }

    /// <summary>How to photograph it, one sentence each.</summary>
    public required IReadOnlyList<string> Photograph { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>How a laboratory finds a preservative, in one or more sentences.</summary>
/// <param name="Elements">Elements that it finds.</param>
/// <param name="Preservatives">Keys of preservatives that it is for, where no element decides.</param>
/// <param name="Says">The sentences.</param>
/// <param name="Provenance">Where it comes from.</param>
public sealed record AnalysisMethod(
    IReadOnlyList<string> Elements,
    IReadOnlyList<string> Preservatives,
    string Says,
    Provenance Provenance
);

/// <summary>What is known of showing preservatives.</summary>
/// <param name="Reagents">Reagents, in the order in which they are offered.</param>
/// <param name="Analyses">What a laboratory does.</param>
/// <param name="Always">What goes for every reagent, one sentence each.</param>
public sealed record ReagentShelf(
    IReadOnlyList<Reagent> Reagents,
    IReadOnlyList<AnalysisMethod> Analyses,
    IReadOnlyList<Fact<string>> Always
);

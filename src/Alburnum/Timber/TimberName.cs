namespace Alburnum.Timber;

/// <summary>What a timber's name stands for.</summary>
public enum TimberKind
{
    /// <summary>Solid wood of one species; of several, the name is a question.</summary>
    Species,

    /// <summary>A product glued from lamellae or veneers: glued laminated timber, plywood.</summary>
    Glued,

    /// <summary>A board of chips, strands or fibres.</summary>
    Board,

    /// <summary>Wood whose substance was changed by heat, acetic anhydride, furfuryl alcohol or the like.</summary>
    Modified,

    /// <summary>Several species sold together.</summary>
    Mixture,
}

/// <summary>A name under which timber is sold or spoken of.</summary>
/// <param name="Name">The name.</param>
/// <param name="Is">The species that it may mean, each as the catalogue names it; may be empty for what is no single species.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="Decides">What decides between several, one sentence; empty where it means one.</param>
/// <param name="Says">What it is, and what a code for solid timber says of it; empty for a species.</param>
/// <param name="Where">Where it is said.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record TimberName(
    string Name,
    IReadOnlyList<Species> Is,
    TimberKind Kind,
    string Decides,
    string Says,
    IReadOnlyList<string> Where,
    Provenance Provenance
)
{
    /// <summary>Species it may mean of which it is not known how treatable their heartwood is.</summary>
    public IReadOnlyList<Species> OfUnknownTreatability =>
        [.. Is.Where(species => species.HeartwoodTreatability is null)];

    /// <summary>The species that treatment reaches least; null where that of any is not known, for it may be the one.</summary>
    public Species? LeastTreatable =>
        OfUnknownTreatability.Count > 0
            ? null
            : Is.OrderByDescending(species => species.HeartwoodTreatability!.Value.High)
                .ThenByDescending(species => species.SapwoodTreatability?.Value.High ?? 0)
                .FirstOrDefault();
}

/// <summary>What was named is no single species: glued, a board, modified wood or a mixture.</summary>
/// <param name="Timber">What it is.</param>
public sealed record NoSpecies(TimberName Timber) : Lookup<Species>
{
    /// <inheritdoc/>
    public override string Expected(string expected) =>
        Timber.Says.Length > 0 ? $"{expected}; {Timber.Says.TrimEnd('.')}" : expected;
}

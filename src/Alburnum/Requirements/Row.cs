namespace Alburnum.Requirements;

/// <summary>One row of a rulebook: where all its conditions hold, its demand holds.</summary>
/// <param name="Key">Name of the row, unique in its rulebook.</param>
/// <param name="Subject">What it speaks about.</param>
/// <param name="When">Conditions, all of which must hold; empty for a row that always holds.</param>
/// <param name="Demand">What it demands.</param>
/// <param name="Overrides">Keys of general rows that this row is an exception to.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record Row(
    string Key,
    Subject Subject,
    IReadOnlyList<Condition> When,
    Demand Demand,
    IReadOnlyList<string> Overrides,
    Provenance Provenance
)
{
    /// <summary>Key of the analytical zone that the row's depth names, by which a copy confirms it: one for all rows that name the same class, otherwise the row's own; null where it names none.</summary>
    public string? ZoneKey =>
        Demand is PenetrationDemand { Zone: not null } depth
            ? $"zone-{(depth.DefinedBy is null ? Key : depth.Name)}"
            : null;

    /// <summary>True where it asks about the field.</summary>
    public bool Asks(Field field) => When.Any(condition => condition.Field == field);

    // Groups of species are taken to be apart.
    internal static bool MayHoldTogether(IEnumerable<Condition> some, IReadOnlyList<Condition> others) =>
        some.All(each => others.All(other => each.Field != other.Field || each.MayHoldWith(other)));
}

/// <summary>A row, and a field on which it failed or stayed open.</summary>
/// <param name="Row">The row.</param>
/// <param name="Asked">What the row asks for.</param>
/// <param name="Found">What the enquiry says.</param>
public sealed record Miss(Row Row, Condition Asked, Known Found)
{
    /// <summary>The field.</summary>
    public Field Field => Asked.Field;
}

/// <summary>A group of species that a rulebook defines for its own rows.</summary>
/// <param name="Name">Name used in the rows.</param>
/// <param name="Types">Conifers, broadleaves or both; empty for both.</param>
/// <param name="Genera">Genera in the group; empty for any.</param>
/// <param name="ExceptGenera">Genera left out.</param>
/// <param name="Names">Common or botanical names in the group; empty for any.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record SpeciesGroup(
    string Name,
    IReadOnlyList<Timber.WoodType> Types,
    IReadOnlyList<string> Genera,
    IReadOnlyList<string> ExceptGenera,
    IReadOnlyList<string> Names,
    Provenance Provenance
)
{
    /// <summary>True where the species belongs to the group.</summary>
    public bool Contains(Timber.Species species)
    {
        ArgumentNullException.ThrowIfNull(species);
        return (Types.Count == 0 || Types.Contains(species.Type))
            && (Genera.Count == 0 || species.Genera.Any(Has(Genera)))
            && !species.Genera.Any(Has(ExceptGenera))
            && (Names.Count == 0 || Has(Names)(species.Name) || species.BotanicalNames.Any(Has(Names)));

        static Func<string, bool> Has(IReadOnlyList<string> list) =>
            name => list.Contains(name, StringComparer.OrdinalIgnoreCase);
    }
}

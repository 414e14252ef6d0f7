namespace Alburnum.Timber;

/// <summary>All species, found by their own names and by those that people use.</summary>
public sealed class SpeciesCatalogue
{
    private readonly NameIndex<Species> _own;
    private readonly NameIndex<Meaning> _names;

    /// <summary>A catalogue of the given species.</summary>
    /// <param name="all">The species.</param>
    /// <param name="names">What they, and what is no species, are called.</param>
    public SpeciesCatalogue(IReadOnlyList<Species> all, IReadOnlyList<TimberName> names)
    {
        ArgumentNullException.ThrowIfNull(all);
        ArgumentNullException.ThrowIfNull(names);
        All = all;
        _own = new(all, OwnNames);
        _names = new(
            [
                .. names.Select(name => new Meaning([name.Name], Of(name), name)),
                .. all.Select(species => new Meaning(OwnNames(species), new Found<Species>(species), null)),
            ],
            meaning => meaning.Names
        );
    }

    /// <summary>Every species, in the order of the file.</summary>
    public IReadOnlyList<Species> All { get; }

    /// <summary>The species of that name; or the question which, what it is where it is no species, or what may have been meant.</summary>
    /// <param name="name">Common name, botanical name or a name of the trade.</param>
    public Lookup<Species> Find(string name) =>
        _names.Bearers(name) switch
        {
            [] => new NotFound<Species>(Near(name)),
            [var (_, one), ..] and var bearers when bearers.Count == 1 || one.Said is not null => one.Means,
            var several => new Several<Species>([.. several.Select(bearer => bearer.Name)], ""),
        };

    /// <summary>The species by its own name, as data write it: a name of the catalogue goes before the same word said of several.</summary>
    /// <param name="name">Name in the catalogue, botanical name or a name of one species.</param>
    public Species? Named(string name) =>
        ((_own.Find(name) as Found<Species>) ?? (Find(name) as Found<Species>))?.Value;

    /// <summary>What is known of a name beside the species' own; null where nothing is.</summary>
    public TimberName? Called(string name) => _names.Bearers(name) is [var (_, first), ..] ? first.Said : null;

    /// <summary>Every species that the name may mean; empty where it names none.</summary>
    public IReadOnlyList<Species> Meanings(string name) =>
        Called(name)?.Is ?? [.. _own.Bearers(name).Select(bearer => bearer.Value)];

    /// <summary>Names that may have been meant, nearest first.</summary>
    public IReadOnlyList<string> Near(string name) => _names.Near(name);

    /// <summary>The species of that name; refuses a name that is not one species'.</summary>
    /// <param name="name">Common name, botanical name or a name of the trade.</param>
    /// <param name="field">Option or field that the name was given in, for the message.</param>
    /// <exception cref="InputRefusedException">No such species, or several; the message offers what may have been meant.</exception>
    public Species Get(string name, string field = "species") =>
        Find(name).OrRefused(name, field, "a species in the catalogue");

    private static Lookup<Species> Of(TimberName called) =>
        called switch
        {
            { Kind: not TimberKind.Species } => new NoSpecies(called),
            { Is: [var one] } => new Found<Species>(one),
            _ => new Several<Species>([.. called.Is.Select(species => species.Name)], called.Decides),
        };

    private static IEnumerable<string> OwnNames(Species species) => [species.Name, .. species.BotanicalNames];

    // What people say goes before a species' own name, where both are the same word.
    private sealed record Meaning(IEnumerable<string> Names, Lookup<Species> Means, TimberName? Said);
}

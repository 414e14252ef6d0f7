namespace Alburnum.Timber;

/// <summary>All species, found by common name, botanical name or synonym.</summary>
public sealed class SpeciesCatalogue
{
    private readonly NameIndex<Species> _names;

    /// <summary>A catalogue of the given species.</summary>
    public SpeciesCatalogue(IReadOnlyList<Species> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        All = all;
        _names = new NameIndex<Species>(all, species => [species.Name, .. species.BotanicalNames, .. species.Synonyms]);
    }

    /// <summary>Every species, in the order of the file.</summary>
    public IReadOnlyList<Species> All { get; }

    /// <summary>The species of that name, or what may have been meant.</summary>
    /// <param name="name">Common name, botanical name or synonym.</param>
    public Lookup<Species> Find(string name) => _names.Find(name);

    /// <summary>The species of that name; refuses a name that nothing, or more than one species, bears.</summary>
    /// <param name="name">Common name, botanical name or synonym.</param>
    /// <param name="field">Option or field that the name was given in, for the message.</param>
    /// <exception cref="InputRefusedException">No such species, or several; the message offers what may have been meant.</exception>
    public Species Get(string name, string field = "species") => _names.Get(name, field, "a species in the catalogue");
}

namespace Alburnum.Requirements;

/// <summary>A kind of building part that codes of practice speak of.</summary>
/// <param name="Name">Name shown, in the singular.</param>
/// <param name="Synonyms">Other names in use.</param>
public sealed record Component(string Name, IReadOnlyList<string> Synonyms);

/// <summary>All components, found by any of their names.</summary>
public sealed class ComponentCatalogue
{
    private readonly NameIndex<Component> _names;

    /// <summary>A catalogue of the given components.</summary>
    public ComponentCatalogue(IReadOnlyList<Component> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        All = all;
        _names = new NameIndex<Component>(all, component => [component.Name, .. component.Synonyms]);
    }

    /// <summary>Every component, in the order of the file.</summary>
    public IReadOnlyList<Component> All { get; }

    /// <summary>The component of that name, or what may have been meant.</summary>
    public Lookup<Component> Find(string name) => _names.Find(name);
}

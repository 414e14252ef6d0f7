namespace Alburnum.Requirements;

/// <summary>A kind of building part that codes of practice speak of.</summary>
/// <param name="Name">Name shown, in the singular.</param>
public sealed record Component(string Name);

/// <summary>A name under which a building part is spoken of, and what goes with it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Group">Where it belongs, for instance "fence".</param>
/// <param name="Is">The components of codes that it may mean; empty where no code here speaks of it.</param>
/// <param name="Exposure">What of its exposure the name settles.</param>
/// <param name="Life">Usual service life, which may rest on another source than the name; null where it is not known.</param>
/// <param name="Decides">What decides between two meanings, one sentence; empty where it means one thing.</param>
/// <param name="Provenance">Source and standing of the name and of what it settles of the exposure.</param>
public sealed record ComponentName(
    string Name,
    string Group,
    IReadOnlyList<Component> Is,
    Exposure Exposure,
    Fact<DesiredServiceLife>? Life,
    string Decides,
    Provenance Provenance
)
{
    /// <summary>The component of codes; null where no code here speaks of it, or where the name is a question.</summary>
    public Component? Component => Is is [var one] && !IsQuestion ? one : null;

    /// <summary>Narrower names in the catalogue that it may mean, beside the components; empty where it means one thing.</summary>
    public IReadOnlyList<string> Narrower { get; init; } = [];

    /// <summary>Every name with which the question can be answered: of components, then narrower ones.</summary>
    public IReadOnlyList<string> Meanings => [.. Is.Select(component => component.Name), .. Narrower];

    /// <summary>True where it can mean two things.</summary>
    public bool IsQuestion => Is.Count > 1 || Decides.Length > 0;
}

/// <summary>All components, found by any of their names.</summary>
public sealed class ComponentCatalogue
{
    private readonly NameIndex<ComponentName> _names;

    /// <summary>A catalogue of the given components.</summary>
    /// <param name="all">What codes speak of.</param>
    /// <param name="names">What these, and what no code speaks of, are called.</param>
    public ComponentCatalogue(IReadOnlyList<Component> all, IReadOnlyList<ComponentName> names)
    {
        ArgumentNullException.ThrowIfNull(all);
        ArgumentNullException.ThrowIfNull(names);
        All = all;
        _names = new([.. names, .. all.Select(Plain)], name => [name.Name]);
    }

    /// <summary>Every component, in the order of the file.</summary>
    public IReadOnlyList<Component> All { get; }

    /// <summary>What goes by that name; or the question which, or what may have been meant.</summary>
    public Lookup<ComponentName> Find(string name) =>
        Called(name) switch
        {
            null => new NotFound<ComponentName>(Near(name)),
            { IsQuestion: true } question => new Several<ComponentName>(question.Meanings, question.Decides),
            var called => new Found<ComponentName>(called),
        };

    /// <summary>The component by its own name, as data write it, otherwise by a name that means it alone; null where there is none.</summary>
    public Component? Named(string name) =>
        All.FirstOrDefault(component => string.Equals(component.Name, name, StringComparison.Ordinal))
        ?? (Find(name) as Found<ComponentName>)?.Value.Component;

    /// <summary>What is known of a name, question or not; null where nothing is.</summary>
    public ComponentName? Called(string name) => _names.Bearers(name) is [var (_, first), ..] ? first : null;

    /// <summary>Names that may have been meant, nearest first.</summary>
    public IReadOnlyList<string> Near(string name) => _names.Near(name);

    private static ComponentName Plain(Component component) =>
        new(
            component.Name,
            "",
            [component],
            new Exposure(),
            null,
            "",
            new Provenance(Standing.CommonPractice, "common practice", "", "", "")
        );
}

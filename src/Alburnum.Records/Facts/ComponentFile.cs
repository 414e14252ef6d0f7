using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>components.yaml</c> and <c>component-names.yaml</c>: names only; what a code says of a component stands in its rulebook.</summary>
internal static class ComponentFile
{
    /// <summary>What codes speak of.</summary>
    public static IReadOnlyList<Component> Read(FactRow root)
    {
        var all = new List<Component>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        _ = root.Provenance();
        foreach (var row in root.Rows("components"))
        {
            var name = row.Text("name");
            if (!seen.Add(NameKey.Of(name)))
                row.Refuse("name", name, "a unique name, however its words are joined or counted");
            all.Add(new Component(name));
        }
        return all;
    }

    /// <summary>What these, and what no code speaks of, are called.</summary>
    public static IReadOnlyList<ComponentName> ReadNames(FactRow root, IReadOnlyList<Component> components)
    {
        var known = components.ToDictionary(component => component.Name, StringComparer.Ordinal);
        var rows = root.Rows("names");
        var names = rows.Select(row => row.OptionalText("name")).ToHashSet(StringComparer.Ordinal);
        return rows.Named(
            "a component of components.yaml",
            known,
            "component",
            (row, name, meant) => Name(row, name, meant, names)
        );
    }

    private static ComponentName Name(
        FactRow row,
        string name,
        IReadOnlyList<Component> components,
        HashSet<string> names
    )
    {
        var narrower = row.Texts("narrower");
        foreach (var each in narrower.Where(each => !names.Contains(each)))
            row.Refuse("narrower", each, "a name of component-names.yaml");
        var decides = row.OptionalText("decides");
        if (decides.Length > 0 && components.Count + narrower.Count < 2)
            row.Refuse("decides", decides, "two meanings or more, as components or narrower names");
        var exposure = row.OptionalRow("exposure");
        return new(
            name,
            row.Text("group"),
            components,
            exposure is null ? new Exposure() : ExposureReader.Place(new RowFields(exposure)),
            Life(row),
            decides,
            row.Provenance()
        )
        {
            Narrower = narrower,
        };
    }

    // The row's own source, unless the life names another.
    private static Fact<DesiredServiceLife>? Life(FactRow row) =>
        !row.Has("lifeYears") ? null
        : !row.IsText("lifeYears") && row.OptionalRow("lifeYears") is { } cell
            ? new(new(cell.Whole("is", Ranges.LifeYears)), cell.Provenance())
        : new(new(row.Whole("lifeYears", Ranges.LifeYears)), row.Provenance());
}

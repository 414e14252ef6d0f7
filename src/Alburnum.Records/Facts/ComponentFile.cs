using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>components.yaml</c>: names only; what a code says of a component stands in its rulebook.</summary>
internal static class ComponentFile
{
    public static IReadOnlyList<Component> Read(FactRow root)
    {
        var all = new List<Component>();
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        _ = root.Provenance();
        foreach (var row in root.Rows("components"))
        {
            var name = row.Text("name");
            if (!seen.Add(name))
                row.Refuse("name", name, "a unique name");
            all.Add(new Component(name, row.Texts("synonyms")));
        }
        return all;
    }
}

using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>use-classes.yaml</c> and <c>equivalence.yaml</c>.</summary>
internal static class UseClassFile
{
    /// <summary>The classes as a file writes one of them.</summary>
    public static readonly (string, UseClass)[] Single =
    [
        .. Enum.GetValues<UseClass>().Select(each => (each.Label(), each)),
    ];

    public static IReadOnlyList<UseClassFacts> ReadClasses(FactRow root)
    {
        var all = new List<UseClassFacts>();
        foreach (var row in root.Rows("classes"))
        {
            all.Add(
                new UseClassFacts(
                    row.Word("useClass", Single),
                    row.Text("situation"),
                    row.Text("moisture"),
                    Agents(row),
                    row.Provenance()
                )
            );
        }
        return all;
    }

    // The row's own source, unless the agents name another.
    private static Fact<string> Agents(FactRow row) =>
        !row.IsText("agents") && row.OptionalRow("agents") is { } cell
            ? new(cell.Text("are"), cell.Provenance())
            : new(row.Text("agents"), row.Provenance());

    public static IReadOnlyList<UseClassTrap> ReadTraps(FactRow root)
    {
        var all = new List<UseClassTrap>();
        foreach (var row in root.Rows("traps"))
        {
            _ = row.Text("key");
            all.Add(new UseClassTrap(UseClasses(row), row.Text("says"), row.Provenance()));
        }
        return all;
    }

    public static IReadOnlyList<Equivalence> ReadEquivalences(FactRow root)
    {
        var provenance = root.Provenance();
        var all = new List<Equivalence>();
        foreach (var row in root.Rows("rows"))
        {
            all.Add(
                new Equivalence(
                    UseClasses(row),
                    row.Text("situation"),
                    row.Text("australianNewZealand"),
                    row.Text("american"),
                    provenance
                )
            );
        }
        return all;
    }

    /// <summary>The classes of a row's <c>useClasses</c>.</summary>
    public static IReadOnlyList<UseClass> UseClasses(FactRow row)
    {
        var classes = new List<UseClass>();
        foreach (var text in row.Texts("useClasses"))
        {
            var parsed = UseClassWords.Parse(text);
            if (parsed.Count == 0)
                row.Refuse("useClasses", text, "1, 2, 3, 3.1, 3.2, 4 or 5");
            classes.AddRange(parsed);
        }
        return classes;
    }
}

using Alburnum.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>common-choices.yaml</c>.</summary>
internal static class CommonChoicesFile
{
    private static readonly (string, bool)[] Kinds = [("treated", true), ("heartwood", false)];

    public static CommonChoices Read(FactRow root, ComponentCatalogue components, SpeciesCatalogue species)
    {
        List<CommonTimber> timbers = [];
        foreach (var row in root.Rows("timbers"))
        {
            _ = row.Text("key");
            timbers.Add(
                new CommonTimber(
                    Component(row, "component", row.Text("component"), components),
                    row.Has("where") ? row.Texts("where") : [],
                    row.Word("sold", Kinds),
                    [.. row.Texts("species").Select(name => Species(row, name, species))],
                    row.Has("upTo") ? row.Quantity("upTo", Units.Length, Ranges.SectionMm) : null,
                    row.Provenance()
                )
            );
        }
        List<CommonDesign> designs = [];
        foreach (var row in root.Rows("designs"))
        {
            _ = row.Text("key");
            var useClass = row.Text("useClass");
            if (UseClassWords.Parse(useClass) is not [var one])
            {
                row.Refuse("useClass", useClass, "1, 2, 3.1, 3.2, 4 or 5");
                continue;
            }
            _ = row.Provenance();
            designs.Add(
                new(one, [.. row.Texts("components").Select(name => Component(row, "components", name, components))])
            );
        }
        List<string> rounds = [];
        foreach (var row in root.Rows("rounds"))
        {
            _ = (row.Text("key"), row.Provenance());
            rounds.AddRange(row.Texts("components").Select(name => Component(row, "components", name, components)));
        }
        return new CommonChoices(timbers, designs, rounds);
    }

    private static string Component(FactRow row, string field, string name, ComponentCatalogue components)
    {
        if (!components.All.Any(each => string.Equals(each.Name, name, StringComparison.Ordinal)))
            row.Refuse(field, name, "a component of components.yaml");
        return name;
    }

    private static string Species(FactRow row, string name, SpeciesCatalogue species)
    {
        if (!species.All.Any(each => string.Equals(each.Name, name, StringComparison.Ordinal)))
            row.Refuse("species", name, "a species of timber/species.yaml");
        return name;
    }
}

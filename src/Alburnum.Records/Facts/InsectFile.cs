using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>insects.yaml</c>.</summary>
internal static class InsectFile
{
    private static readonly (string, WoodType?)[] Woods =
    [
        ("softwood", WoodType.Softwood),
        ("hardwood", WoodType.Hardwood),
        ("both", null),
    ];

    public static IReadOnlyList<Insect> Read(FactRow root)
    {
        var all = new List<Insect>();
        foreach (var row in root.Rows("insects"))
            all.Add(
                new Insect(
                    row.Text("name"),
                    row.Texts("synonyms"),
                    row.Word("attacks", Woods),
                    row.Text("says"),
                    row.Provenance()
                )
            );
        return all;
    }
}

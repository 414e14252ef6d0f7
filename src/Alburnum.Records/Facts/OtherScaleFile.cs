using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>timber/other-scales.yaml</c>.</summary>
internal static class OtherScaleFile
{
    public static IReadOnlyList<OtherScale> Read(FactRow root, SpeciesCatalogue species)
    {
        var all = new List<OtherScale>();
        foreach (var scale in root.Rows("scales"))
        {
            var (name, means, provenance) = (scale.Text("name"), scale.Text("means"), scale.Provenance());
            foreach (var row in scale.Rows("rows"))
            {
                var known = row.Texts("species");
                foreach (var each in known.Where(each => species.Named(each) is null))
                    row.Refuse("species", each, "a species of timber/species.yaml");
                all.Add(new OtherScale(name, means, [.. known, .. row.Texts("others")], row.Text("is"), provenance));
            }
        }
        return all;
    }
}

using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>heartwood-reagents.yaml</c>: reagents that tell heartwood from sapwood by colour.</summary>
internal static class HeartwoodReagentFile
{
    /// <summary>All of them, in the order of the file.</summary>
    internal static IReadOnlyList<HeartwoodReagent> Read(FactRow root)
    {
        var all = new List<HeartwoodReagent>();
        foreach (var row in root.Rows("rows"))
        {
            var key = row.Text("key");
            if (all.Exists(each => string.Equals(each.Key, key, StringComparison.OrdinalIgnoreCase)))
                row.Refuse("key", key, "a unique key");
            var (heartwood, heartwoodColours) = IndicatorFile.Zone(row, "heartwood");
            var (sapwood, sapwoodColours) = IndicatorFile.Zone(row, "sapwood");
            all.Add(
                new HeartwoodReagent(key, row.Text("name"), heartwoodColours, sapwoodColours, row.Provenance())
                {
                    HeartwoodInWords = heartwood,
                    SapwoodInWords = sapwood,
                    Timbers = row.Text("timbers"),
                    Cautions = row.Texts("cautions"),
                }
            );
        }
        if (all.Count == 0)
            root.Refuse("rows", "none", "at least one reagent");
        return all;
    }
}

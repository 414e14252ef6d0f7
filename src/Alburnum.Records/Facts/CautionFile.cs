namespace Alburnum.Records.Facts;

/// <summary>Reads <c>cautions.yaml</c>: the sentences printed under every result.</summary>
internal static class CautionFile
{
    /// <summary>The cautions in the order in which they are printed.</summary>
    internal static IReadOnlyList<string> Read(FactRow root)
    {
        var cautions = new List<string>();
        Read(root, cautions);
        return cautions;
    }

    private static void Read(FactRow root, List<string> cautions)
    {
        _ = root.Provenance();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in root.Rows("cautions"))
        {
            var key = row.Text("key");
            if (!seen.Add(key))
                row.Refuse("key", key, "a unique key");
            cautions.Add(row.Text("text"));
        }
    }
}

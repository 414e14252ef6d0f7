using Alburnum.Preservatives;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>preservatives.yaml</c>: kinds of preservative, what they can do and what they cannot.</summary>
internal static class PreservativeFile
{
    private static readonly (string, bool)[] YesNo = [("yes", true), ("no", false)];

    /// <summary>All of them, in the order of the file.</summary>
    internal static IReadOnlyList<Preservative> Read(FactRow root)
    {
        var all = new List<Preservative>();
        foreach (var row in root.Rows("preservatives"))
        {
            var key = row.Text("key");
            if (all.Exists(each => string.Equals(each.Key, key, StringComparison.OrdinalIgnoreCase)))
                row.Refuse("key", key, "a unique key");
            all.Add(
                new Preservative(
                    key,
                    row.Text("name"),
                    [.. row.Texts("codes"), .. row.Texts("alsoCalled")],
                    row.Text("kind"),
                    row.Texts("activeElements"),
                    row.Provenance()
                )
                {
                    ProtectsAgainst = row.Texts("protectsAgainst"),
                    IsFixed = row.Word("fixedInWood", YesNo),
                    AppliedBy = row.Texts("appliedBy"),
                    UseClasses = row.Texts("useClasses"),
                    Limits = row.Texts("limits"),
                    Restrictions =
                    [
                        .. row.OptionalRows("restrictions")
                            .Select(each => new Restriction(each.Text("says"), each.Provenance())),
                    ],
                }
            );
        }
        return all;
    }
}

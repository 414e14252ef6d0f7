using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>reagents.yaml</c>: what shows which preservative, and what a laboratory does.</summary>
internal static class ReagentFile
{
    /// <summary>All of it.</summary>
    /// <param name="root">The file.</param>
    /// <param name="indicators">Indicators that photographs are measured by.</param>
    /// <param name="preservatives">Preservatives that rows may name.</param>
    internal static ReagentShelf Read(
        FactRow root,
        IReadOnlyList<Indicator> indicators,
        PreservativeCatalogue preservatives
    )
    {
        var limits = root.OptionalRow("limits");
        if (limits is null)
            root.Refuse("limits", "nothing", "source and standing of what reagents cannot show");
        var provenance = limits?.Provenance() ?? new(Standing.FromMemory, "", "", "", "");
        return new(
            [.. root.Rows("reagents").Select(row => Reagent(row, provenance, indicators, preservatives))],
            [
                .. root.Rows("analyses")
                    .Select(row => new AnalysisMethod(
                        row.Texts("elements"),
                        Keys(row, preservatives),
                        row.Text("says"),
                        row.Provenance()
                    )),
            ],
            [.. root.Rows("always").Select(row => new Fact<string>(row.Text("says"), row.Provenance()))]
        );
    }

    /// <summary>The row's preservatives by their keys.</summary>
    internal static IReadOnlyList<string> Keys(
        FactRow row,
        PreservativeCatalogue preservatives,
        string field = "preservatives"
    )
    {
        var keys = row.Texts(field);
        foreach (var key in keys.Where(key => preservatives.All.All(each => each.Key != key)))
            row.Refuse(field, key, "the key of a preservative in preservatives.yaml");
        return keys;
    }

    private static Reagent Reagent(
        FactRow row,
        Provenance limits,
        IReadOnlyList<Indicator> indicators,
        PreservativeCatalogue preservatives
    )
    {
        var key = row.OptionalText("indicator");
        var indicator = indicators.FirstOrDefault(each => each.Key == key);
        if (key.Length > 0 && indicator is null)
            row.Refuse("indicator", key, string.Join(", ", indicators.Select(each => each.Key)));
        return new(
            row.Text("key"),
            indicator?.Name ?? row.Text("name"),
            row.Texts("shows"),
            Keys(row, preservatives),
            row.Provenance()
        )
        {
            Treated = indicator?.TreatedInWords ?? row.Text("treated"),
            Untreated = indicator?.UntreatedInWords ?? row.Text("untreated"),
            IndicatorKey = indicator?.Key,
            Detection = indicator?.Detection,
            Preparation = row.Text("preparation"),
            Limits = limits,
            CannotShow = row.Texts("cannotShow"),
            Misleads = row.Texts("misleads"),
            Photograph = row.Texts("photograph"),
            Cautions = indicator?.Cautions ?? row.Texts("cautions"),
        };
    }
}

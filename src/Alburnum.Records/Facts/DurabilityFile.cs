using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>durability.yaml</c> and <c>usual-reach.yaml</c>.</summary>
internal static class DurabilityFile
{
    /// <summary>The verdicts and their signs in the table.</summary>
    private static readonly (string Sign, DurabilityVerdict Verdict)[] Signs =
    [
        ("o", DurabilityVerdict.Enough),
        ("(o)", DurabilityVerdict.NormallyEnough),
        ("(o)-(x)", DurabilityVerdict.Depends),
        ("(x)", DurabilityVerdict.NormallyTreat),
        ("x", DurabilityVerdict.Treat),
    ];

    private static readonly (string, bool)[] YesNo = [("yes", true), ("no", false)];

    public static IReadOnlyList<DurabilityRow> ReadMatrix(FactRow root)
    {
        var all = new List<DurabilityRow>();
        foreach (var row in root.Rows("matrix"))
        {
            _ = row.Text("key");
            var useClass = row.Text("useClass");
            var classes = UseClassWords.Parse(useClass);
            if (classes.Count == 0)
                row.Refuse("useClass", useClass, "1, 2, 3, 4 or 5");
            all.Add(new DurabilityRow(classes, Verdicts(row), row.Provenance()));
        }
        if (!Enum.GetValues<UseClass>().All(each => all.Exists(row => row.UseClasses.Contains(each))))
            root.Refuse("matrix", "a use class without a row", "a row for every use class");
        return all;
    }

    public static IReadOnlyList<YearsInGround> ReadYears(FactRow root)
    {
        var all = new List<YearsInGround>();
        foreach (var row in root.Rows("yearsInGround"))
        {
            _ = row.Text("key");
            if (!row.Has("fromYears") && !row.Has("toYears"))
                row.Refuse("fromYears", "nothing", "fromYears, toYears or both");
            all.Add(
                new YearsInGround(row.Whole("durability", 1, 5), Years("fromYears"), Years("toYears"), row.Provenance())
            );

            int? Years(string field) => row.Has(field) ? row.Whole(field, Ranges.LifeYears) : null;
        }
        return all;
    }

    public static UsualReach ReadReach(FactRow root)
    {
        var all = new List<ReachRow>();
        foreach (var row in root.Rows("rows"))
        {
            _ = row.Text("key");
            all.Add(
                new ReachRow(
                    row.Whole("treatability", 1, 4),
                    row.Word("incised", YesNo),
                    row.Quantity("atLeast", Units.Length, Ranges.MeasuredDepthMm),
                    row.Provenance()
                )
            );
        }
        return new UsualReach(all);
    }

    private static List<DurabilityVerdict> Verdicts(FactRow row)
    {
        var verdicts = new List<DurabilityVerdict>();
        foreach (var sign in row.Texts("verdicts"))
        {
            var known = Signs.Where(each => string.Equals(each.Sign, sign, StringComparison.Ordinal)).ToList();
            if (known.Count == 1)
                verdicts.Add(known[0].Verdict);
            else
                row.Refuse("verdicts", sign, string.Join(", ", Signs.Select(each => each.Sign)));
        }
        if (verdicts.Count != 5)
            row.Refuse("verdicts", "not five verdicts", "one verdict for each durability class from 1 to 5");
        return verdicts;
    }
}

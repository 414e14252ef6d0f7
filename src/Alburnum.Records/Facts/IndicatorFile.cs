using System.Globalization;
using Alburnum.Penetration;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>indicators.yaml</c>: the indicators that may have been sprayed and the colours that they leave.</summary>
internal static class IndicatorFile
{
    private static readonly (string, bool)[] Evidence = [("weak", true), ("strong", false)];

    /// <summary>All of them, in the order of the file.</summary>
    internal static IReadOnlyList<Indicator> Read(FactRow root)
    {
        var all = new List<Indicator>();
        foreach (var row in root.Rows("rows"))
        {
            var key = row.Text("key");
            if (all.Exists(each => string.Equals(each.Key, key, StringComparison.OrdinalIgnoreCase)))
                row.Refuse("key", key, "a unique key");
            var (treated, treatedColours) = Zone(row, "treated");
            var (untreated, untreatedColours) = Zone(row, "untreated");
            all.Add(
                new Indicator(key, row.Text("name"), treatedColours, untreatedColours, Bleed(row), row.Provenance())
                {
                    TreatedInWords = treated,
                    UntreatedInWords = untreated,
                    IsWeakEvidence = row.Has("evidence") && row.Word("evidence", Evidence),
                    Detection = Detection(row),
                    Cautions = row.Texts("cautions"),
                }
            );
        }
        if (all.Count == 0)
            root.Refuse("rows", "none", "at least one indicator");
        return all;
    }

    internal static (string Looks, IReadOnlyList<int> Colours) Zone(FactRow row, string field)
    {
        var zone = row.OptionalRow(field);
        if (zone is null)
        {
            row.Refuse(field, "nothing", "looks and colours");
            return ("", []);
        }
        var colours = zone.Texts("colours").Select(text => Colour(zone, text)).ToList();
        if (colours.Count == 0)
            zone.Refuse("colours", "nothing", "one colour or more, such as \"#2B3F8C\"");
        return (zone.Text("looks"), colours);
    }

    private static int Colour(FactRow row, string text)
    {
        if (
            text.Length == 7
            && text[0] == '#'
            && int.TryParse(
                text.AsSpan(1),
                NumberStyles.AllowHexSpecifier,
                CultureInfo.InvariantCulture,
                out var colour
            )
        )
            return colour;
        row.Refuse("colours", text, "a colour such as \"#2B3F8C\"");
        return 0;
    }

    private static Estimate Bleed(FactRow row)
    {
        var bleed = row.OptionalRow("bleed");
        if (bleed is not null)
        {
            return new(
                bleed.Quantity("mean", Units.Length, 0, 5),
                bleed.Quantity("standardUncertainty", Units.Length, 0.001, 5)
            );
        }
        row.Refuse("bleed", "nothing", "mean and standardUncertainty");
        return new(0, 0);
    }

    private static DetectionLimit? Detection(FactRow row)
    {
        if (row.OptionalRow("detection") is not { } content)
            return null;
        var above = content.Number("aboveMgPerKg", 0, 100_000);
        return new(
            content.Text("element"),
            above,
            content.Number("atMostMgPerKg", above, 100_000),
            content.Text("scope"),
            content.Provenance()
        );
    }
}

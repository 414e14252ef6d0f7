using System.Globalization;
using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>timber/species.yaml</c>.</summary>
internal static class SpeciesFile
{
    private static readonly (string, WoodType)[] Types =
    [
        ("softwood", WoodType.Softwood),
        ("hardwood", WoodType.Hardwood),
    ];

    private static readonly string[] Bands = ["vs", "s", "m", "b", "x"];

    public static IReadOnlyList<Species> Read(FactRow root)
    {
        var all = new List<Species>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in root.Rows("species"))
        {
            var name = row.Text("name");
            if (!seen.Add(NameKey.Of(name)))
                row.Refuse("name", name, "a unique name, however its words are joined or counted");
            var botanical = row.Texts("botanical");
            if (botanical.Count == 0)
                row.Refuse("botanical", "nothing", "at least one botanical name");
            all.Add(
                new Species(
                    name,
                    botanical,
                    row.Word("type", Types),
                    Cell(row, "durability", ReadClasses(5)),
                    Cell(row, "heartwoodTreatability", ReadClasses(4)),
                    Cell(row, "sapwoodTreatability", ReadClasses(4)),
                    Cell(row, "sapwoodWidth", ReadWidth),
                    Cell(row, "densityKgPerM3", ReadDensity),
                    row.OptionalText("notes")
                )
            );
        }
        return all;
    }

    private static Fact<T>? Cell<T>(FactRow row, string field, Func<FactRow, T> read)
    {
        var cell = row.OptionalRow(field);
        return cell is null ? null : new Fact<T>(read(cell), cell.Provenance());
    }

    private static Func<FactRow, ClassRange> ReadClasses(int worst) =>
        cell =>
        {
            var text = cell.Text("is");
            if (ClassRange.TryParse(text, out var range) && range.High <= worst)
                return range;
            cell.Refuse(
                "is",
                text,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a class from 1 to {worst}, or a range such as 2-3 or 3-4v"
                )
            );
            return new ClassRange(1, 1);
        };

    private static SapwoodWidth ReadWidth(FactRow cell)
    {
        var text = cell.Text("is");
        var ends = text.Split('-').Select(end => Array.IndexOf(Bands, end)).ToList();
        if (ends.Count <= 2 && ends.TrueForAll(end => end >= 0) && ends[0] <= ends[^1])
            return new SapwoodWidth((SapwoodBand)ends[0], (SapwoodBand)ends[^1]);
        cell.Refuse("is", text, "vs, s, m, b or x, or a range such as s-m");
        return default;
    }

    private static DensityRange ReadDensity(FactRow cell)
    {
        double? Figure(string field) => cell.Has(field) ? cell.Number(field, Ranges.DensityKgPerM3) : null;
        var density = new DensityRange(Figure("low"), Figure("mean"), Figure("high"));
        if (density is { LowKgPerM3: null, MeanKgPerM3: null, HighKgPerM3: null })
            cell.Refuse("mean", "nothing", "low, mean or high");
        return density;
    }
}

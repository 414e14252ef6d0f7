using Alburnum.Facts;
using Alburnum.Impregnation.Diffusing;

namespace Alburnum.Records.Facts;

/// <summary>Reads how fast boron spreads in wood.</summary>
internal static class BoronFile
{
    /// <summary>The law of the file.</summary>
    internal static BoronLaw? Read(FactRow root)
    {
        var rows = new List<(double, double)>();
        var sources = new List<Provenance>();
        foreach (var row in root.Rows("diffusion"))
        {
            var before = rows.Count > 0 ? rows[^1].Item1 + 0.1 : 0;
            rows.Add(
                (
                    row.Number("moisturePercent", Ranges.MoisturePercent with { Low = before }),
                    1e-12 * row.Number("um2PerS", 1e-3, 1e4)
                )
            );
            sources.Add(row.Provenance());
        }
        var per10K = Factor(root, "temperature", "per10K", 5, sources);
        var factor = Factor(root, "spread", "factor", 100, sources);
        if (rows.Count >= 2)
            return new BoronLaw(rows, per10K, factor, Together(sources));
        root.Refuse("diffusion", "fewer than two rows", "two rows or more");
        return null;
    }

    // The weakest standing, every document named once.
    private static Provenance Together(List<Provenance> sources) =>
        new(
            Provenance.Weakest(sources.Select(source => source.Standing)),
            string.Join("; ", sources.Select(source => source.Document).Distinct(StringComparer.Ordinal)),
            "",
            "",
            ""
        );

    private static double Factor(FactRow root, string name, string field, double most, List<Provenance> sources)
    {
        var row = root.OptionalRow(name);
        if (row is null)
        {
            root.Refuse(name, "nothing", $"{field}, source and standing");
            return 1;
        }
        sources.Add(row.Provenance());
        return row.Number(field, 1, most);
    }
}

using Alburnum.Impregnation.Diffusing;

namespace Alburnum.Records.Facts;

/// <summary>Reads how fast boron spreads in wood.</summary>
public static class BoronFile
{
    private const string Name = "impregnation/boron.yaml";

    /// <summary>The law, or every problem in its file.</summary>
    /// <param name="dataFolder">The data folder, for instance <see cref="FactLibrary.DefaultFolder"/>.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static BoronLaw Read(string dataFolder)
    {
        var path = Path.Combine(dataFolder, Name);
        if (!File.Exists(path))
            throw new InputRefusedException(
                new InputProblem(Name, 0, "", "", "no such file", $"a file in {dataFolder}")
            );
        var problems = new List<InputProblem>();
        var rows = new List<(double, double)>();
        var sources = new List<Provenance>();
        double per10K = 1,
            factor = 1;
        FactFile.Read(
            path,
            Name,
            problems,
            root =>
            {
                foreach (var row in root.Rows("diffusion"))
                {
                    using (row)
                    {
                        var before = rows.Count > 0 ? rows[^1].Item1 + 0.1 : 0;
                        rows.Add(
                            (row.Number("moisturePercent", before, 300), 1e-12 * row.Number("um2PerS", 1e-3, 1e4))
                        );
                        sources.Add(row.Provenance());
                    }
                }
                per10K = Factor(root, "temperature", "per10K", 5, sources);
                factor = Factor(root, "spread", "factor", 100, sources);
            }
        );
        if (problems.Count == 0 && rows.Count < 2)
            problems.Add(new InputProblem(Name, 0, "", "diffusion", "fewer than two rows", "two rows or more"));
        return problems.Count == 0
            ? new BoronLaw(rows, per10K, factor, Together(sources))
            : throw new InputRefusedException(problems);
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
        using var row = root.OptionalRow(name);
        if (row is null)
        {
            root.Refuse(name, "nothing", $"{field}, source and standing");
            return 1;
        }
        sources.Add(row.Provenance());
        return row.Number(field, 1, most);
    }
}

using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>heartwood-reagents.yaml</c>: reagents that tell heartwood from sapwood by colour.</summary>
public static class HeartwoodReagentFile
{
    private const string FileName = "heartwood-reagents.yaml";

    /// <summary>All reagents, in the order of the file.</summary>
    /// <param name="dataFolder">The data folder, for instance <see cref="FactLibrary.DefaultFolder"/>.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static IReadOnlyList<HeartwoodReagent> Load(string dataFolder)
    {
        var path = Path.Combine(dataFolder, FileName);
        var problems = new List<InputProblem>();
        IReadOnlyList<HeartwoodReagent> reagents = [];
        if (File.Exists(path))
            FactFile.Read(path, FileName, problems, root => reagents = Read(root));
        else
            problems.Add(new InputProblem(FileName, 0, "", "", "no such file", $"a file in {dataFolder}"));
        return problems.Count == 0 ? reagents : throw new InputRefusedException(problems);
    }

    internal static IReadOnlyList<HeartwoodReagent> Read(FactRow root)
    {
        var all = new List<HeartwoodReagent>();
        foreach (var row in root.Rows("rows"))
        {
            using (row)
            {
                var key = row.Text("key");
                if (all.Exists(each => string.Equals(each.Key, key, StringComparison.OrdinalIgnoreCase)))
                    row.Refuse("key", key, "a key of its own");
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
        }
        if (all.Count == 0)
            root.Refuse("rows", "none", "at least one reagent");
        return all;
    }
}

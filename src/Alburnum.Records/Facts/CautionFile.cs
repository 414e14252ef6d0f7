namespace Alburnum.Records.Facts;

/// <summary>Reads <c>cautions.yaml</c>: the sentences printed under every result.</summary>
public static class CautionFile
{
    private const string FileName = "cautions.yaml";

    /// <summary>The cautions in the order in which they are printed.</summary>
    /// <param name="dataFolder">The data folder, for instance <see cref="FactLibrary.DefaultFolder"/>.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static IReadOnlyList<string> Load(string dataFolder)
    {
        var path = Path.Combine(dataFolder, FileName);
        var problems = new List<InputProblem>();
        var cautions = new List<string>();
        if (File.Exists(path))
            FactFile.Read(path, FileName, problems, root => Read(root, cautions));
        else
            problems.Add(new InputProblem(FileName, 0, "", "", "no such file", $"a file in {dataFolder}"));
        return problems.Count == 0 ? cautions : throw new InputRefusedException(problems);
    }

    private static void Read(FactRow root, List<string> cautions)
    {
        _ = root.Provenance();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in root.Rows("cautions"))
        {
            using (row)
            {
                var key = row.Text("key");
                if (!seen.Add(key))
                    row.Refuse("key", key, "a key of its own");
                cautions.Add(row.Text("text"));
            }
        }
    }
}

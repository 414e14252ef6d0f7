using Alburnum.Records.Facts;

namespace Alburnum.Records.Charges;

/// <summary>Reads a charge's file. Its fields are described in docs/how-to/plan-a-charge.md.</summary>
public static class ChargeFile
{
    /// <summary>The charge, or every problem in the file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="facts">Species, schedules and incising patterns that it may name.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static ChargeOrder Read(string path, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var problems = new List<InputProblem>();
        ChargeOrder? order = null;
        FactFile.ReadText(
            PlainFile.Text(path, path, "a charge file"),
            path,
            problems,
            root => order = new ChargeReader(path, facts, problems).OfFile(root)
        );
        return problems.Count == 0 && order is not null ? order : throw new InputRefusedException(problems);
    }
}

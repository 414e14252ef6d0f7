using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Tables;

/// <summary>Reads archived enquiries, one a row; columns as in docs/how-to/find-a-requirement.md, each of them optional.</summary>
public static class EnquiryTable
{
    /// <summary>Reads every row, or refuses with every problem.</summary>
    /// <param name="table">The table.</param>
    /// <param name="facts">Names of components, species and preservatives.</param>
    /// <param name="rulebooks">Rulebooks that are asked.</param>
    /// <exception cref="InputRefusedException">The table has a column that is not an enquiry's, no row, or a cell that cannot be read.</exception>
    public static IReadOnlyList<Enquiry> Read(Table table, FactLibrary facts, params IReadOnlyList<Rulebook> rulebooks)
    {
        var problems = new List<InputProblem>();
        var enquiries = TableLine.ReadAll(
            table,
            [],
            [.. EnquiryFields.All.Select(field => field.Column)],
            problems,
            line => EnquiryReader.Read(new LineFields(line), facts, rulebooks),
            "enquiries"
        );
        return problems.Count == 0 ? enquiries : throw new InputRefusedException(problems);
    }
}

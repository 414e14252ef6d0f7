using Alburnum.Acceptance;
using Alburnum.Facts;

namespace Alburnum.Records.Tables;

/// <summary>
/// Reads composite assays: <c>sample</c>, <c>retention_kg_per_m3</c> ("&lt; 0.5" where nothing was found down to 0.5) and, for every value,
/// <c>u_kg_per_m3</c>, its standard uncertainty.
/// </summary>
public static class AssayTable
{
    private const string RetentionColumn = "retention_kg_per_m3";
    private const string UncertaintyColumn = "u_kg_per_m3";

    /// <summary>Every assay of the table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="problems">Gains what is wrong.</param>
    /// <returns>Not to be used where problems were noted.</returns>
    public static IReadOnlyList<Assay> Read(Table table, List<InputProblem> problems) =>
        [
            .. TableLine
                .ReadAll(table, ["sample", RetentionColumn], [UncertaintyColumn], problems, Assay)
                .OfType<Assay>(),
        ];

    private static Assay? Assay(TableLine line)
    {
        var sample = line.RequiredText("sample");
        var (retention, u) = (line.Text(RetentionColumn), line.Text(UncertaintyColumn));
        var assay = WrittenValue.ReadAssay(u.Length > 0 ? $"{retention} ± {u}" : retention, sample);
        if (assay is null)
            line.Refuse(
                RetentionColumn,
                retention.Length == 0 ? "nothing"
                    : u.Length == 0 ? $"\"{retention}\" without {UncertaintyColumn}"
                    : WrittenValue.Read(retention) is null ? $"\"{retention}\""
                    : $"\"{retention}\" with {UncertaintyColumn} \"{u}\"",
                $"a number, {Ranges.MeasuredRetentionKgPerM3.InWords}, with its standard uncertainty in {UncertaintyColumn}; or \"< 0.5\" below detection"
            );
        return assay;
    }
}

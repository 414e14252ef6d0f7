using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Facts;

namespace Alburnum.Records.Tables;

/// <summary>Pieces with one measured value each, to be judged by variables.</summary>
/// <param name="Measure">What was measured.</param>
/// <param name="Pieces">Number of each piece and its value.</param>
public sealed record ValuedPieces(Measure Measure, IReadOnlyList<(string Piece, CensoredReading Reading)> Pieces);

/// <summary>
/// Reads values of whole pieces: <c>piece</c> and <c>retention_kg_per_m3</c> or <c>least_depth_mm</c>. A value may be cut off: "&lt; 0.5"
/// below detection, "&gt; 25" as far as could be read.
/// </summary>
public static class ValueTable
{
    private static readonly (string Column, Measure Measure, NumberRange Range)[] Measures =
    [
        ("retention_kg_per_m3", new(MeasureKind.Retention, "retention", "kg/m³"), Ranges.MeasuredRetentionKgPerM3),
        ("least_depth_mm", new(MeasureKind.Depth, "least depth", "mm"), Ranges.MeasuredDepthMm),
    ];

    /// <summary>True where a table's columns are those of values.</summary>
    public static bool IsOne(Table table) =>
        Array.Exists(Measures, known => table.Columns.Contains(known.Column, StringComparer.Ordinal));

    /// <summary>Reads a table.</summary>
    /// <param name="table">The table.</param>
    /// <exception cref="InputRefusedException">Anything is missing or wrong; carries every problem found.</exception>
    public static ValuedPieces Read(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (!IsOne(table))
            throw new InputRefusedException(
                new InputProblem(
                    table.Name,
                    table.HeaderLine,
                    "",
                    "",
                    $"the columns {string.Join(", ", table.Columns)}",
                    $"piece and {string.Join(" or ", Measures.Select(known => known.Column))}"
                )
            );
        var (column, measure, range) = Array.Find(
            Measures,
            known => table.Columns.Contains(known.Column, StringComparer.Ordinal)
        );
        List<InputProblem> problems = [];
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var pieces = TableLine.ReadAll(
            table,
            ["piece", column],
            [],
            problems,
            line => (line.OwnText("piece", first, "piece"), Reading(line, column, range))
        );
        return problems.Count == 0 ? new(measure, pieces) : throw new InputRefusedException(problems);
    }

    private static CensoredReading Reading(TableLine line, string column, NumberRange range)
    {
        var text = line.Text(column);
        if (WrittenValue.Read(text) is { Value: > 0, StandardUncertainty: null } written && range.Holds(written.Value))
            return new(written.Value, written.Censoring);
        line.Refuse(
            column,
            text.Length > 0 ? $"\"{text}\"" : "nothing",
            $"a number above 0, up to {range.High} {range.Unit}, \"<\" before a detection limit, \">\" before a depth that is only a lower limit"
        );
        return default;
    }
}

using System.Globalization;
using Alburnum.Acceptance.History;
using Alburnum.Facts;

namespace Alburnum.Records.Tables;

/// <summary>One charge of a plant's history.</summary>
/// <param name="Number">Number of the charge.</param>
/// <param name="Values">Its measures in the order of the table's columns; null where a cell is empty. Overwritten by the next charge.</param>
public readonly record struct ChargeRow(string Number, IReadOnlyList<double?> Values);

/// <summary>Reads a plant's history, charge by charge, without keeping it: a million charges take the memory of one line and their numbers.</summary>
/// <remarks>
/// A column <c>charge</c>, and any of <c>mean_depth_mm</c>, <c>minimum_depth_mm</c>, <c>retention_kg_per_m3</c>, <c>uptake_l_per_m3</c> and
/// <c>strength_percent</c>, oldest charge first. The unit stands in the column's name; a cell is a plain number. A column named
/// <c>date</c> only shows that they stand in order.
/// </remarks>
public sealed class ChargeTable
{
    private const int ProblemsMax = 50;
    private const string ChargeColumn = "charge";
    private const string DateColumn = "date";
    private const string Mean = "mean_depth_mm";
    private const string Minimum = "minimum_depth_mm";

    private static readonly (string Column, Measure Measure, NumberRange Range)[] Known =
    [
        (Mean, new(MeasureKind.Depth, "mean depth", "mm"), Ranges.MeasuredDepthMm),
        (Minimum, new(MeasureKind.Depth, "minimum depth", "mm"), Ranges.MeasuredDepthMm),
        ("retention_kg_per_m3", new(MeasureKind.Retention, "retention", "kg/m³"), Ranges.MeasuredRetentionKgPerM3),
        ("uptake_l_per_m3", new(MeasureKind.Uptake, "uptake", "l/m³"), Ranges.UptakeLPerM3),
        ("strength_percent", new(MeasureKind.Strength, "solution strength", "%"), Ranges.MeasuredStrengthPercent),
    ];

    private readonly Table _table;
    private readonly List<string> _columns;
    private readonly IReadOnlyList<NumberRange> _ranges;

    private ChargeTable(Table table, IReadOnlyList<string> columns)
    {
        _table = table;
        _columns = [.. columns];
        _ranges = [.. columns.Select(RangeOf)];
        Measures = [.. columns.Select(column => MeasureOf(column)!)];
    }

    /// <summary>The measures that the table has, in the order of its columns.</summary>
    public IReadOnlyList<Measure> Measures { get; }

    /// <summary>Takes a table for a history.</summary>
    /// <param name="table">The table.</param>
    /// <exception cref="InputRefusedException">Its columns are those of another table altogether.</exception>
    public static ChargeTable Of(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        string[] measured =
        [
            .. table.Columns.Where(name => MeasureOf(name) is not null).Distinct(StringComparer.Ordinal),
        ];
        if (measured.Length > 0 && table.Columns.Contains(ChargeColumn, StringComparer.Ordinal))
            return new(table, measured);
        // One message, not one for each of its columns.
        throw new InputRefusedException(
            new InputProblem(
                table.Name,
                table.HeaderLine,
                "",
                "",
                $"the columns {string.Join(", ", table.Columns)}",
                $"{ChargeColumn} and any of {string.Join(", ", Known.Select(known => known.Column))}"
            )
        );
    }

    /// <summary>The charges, oldest first. Take what is wanted of each before asking for the next: its list of values is used again.</summary>
    /// <param name="stop">Stops between charges.</param>
    /// <exception cref="InputRefusedException">A column or row is wrong; thrown at the end of the table, or at the fiftieth problem.</exception>
    public IEnumerable<ChargeRow> Charges(CancellationToken stop)
    {
        List<InputProblem> problems = [];
        Dictionary<string, int> first = new(StringComparer.Ordinal);
        (DateOnly, int)? latest = null;
        var values = new double?[_columns.Count];
        var lines = TableLine.Of(
            _table,
            [ChargeColumn],
            [DateColumn, .. Known.Select(known => known.Column)],
            problems
        );
        foreach (var line in lines)
        {
            stop.ThrowIfCancellationRequested();
            line.DayInOrder(DateColumn, ref latest);
            var row = Read(line, values, first);
            if (problems.Count >= ProblemsMax)
                break;
            if (problems.Count == 0)
                yield return row;
        }
        if (first.Count == 0 && problems.Count == 0)
            problems.Add(
                new InputProblem(
                    _table.Name,
                    _table.HeaderLine,
                    "",
                    "",
                    "no charges",
                    "one row or more below the column names"
                )
            );
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
    }

    private ChargeRow Read(TableLine line, double?[] values, Dictionary<string, int> first)
    {
        var number = line.OwnText(ChargeColumn, first, "charge");
        for (var i = 0; i < values.Length; i++)
        {
            var cell = line.Text(_columns[i]);
            values[i] = null;
            if (cell.Length == 0)
                continue;
            if (
                double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                && _ranges[i].Holds(value)
            )
                values[i] = value;
            else
                line.Refuse(
                    _columns[i],
                    TableLine.Shown(cell),
                    $"a plain number, {_ranges[i].InWords}, as the column's name says",
                    number
                );
        }
        if (Value(Minimum) is { } minimum && minimum > Value(Mean))
            line.Refuse(Minimum, $"\"{line.Text(Minimum)}\"", $"at most {Mean}", number);
        return new(number, values);

        double? Value(string column) => _columns.IndexOf(column) is >= 0 and var i ? values[i] : null;
    }

    private static Measure? MeasureOf(string name) => Array.Find(Known, known => known.Column == name).Measure;

    private static NumberRange RangeOf(string name) => Array.Find(Known, known => known.Column == name).Range;
}

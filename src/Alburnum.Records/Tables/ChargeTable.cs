using System.Globalization;
using Alburnum.Acceptance.History;

namespace Alburnum.Records.Tables;

/// <summary>One charge of a plant's history.</summary>
/// <param name="Number">Number of the charge.</param>
/// <param name="Values">Its measures in the order of the table's columns; null where a cell is empty. Overwritten by the next charge.</param>
public readonly record struct ChargeRow(string Number, IReadOnlyList<double?> Values);

/// <summary>Reads a plant's history, charge by charge, without keeping it: a million charges take the memory of one line and their numbers.</summary>
/// <remarks>
/// A column <c>charge</c>, and any of <c>mean_depth_mm</c>, <c>minimum_depth_mm</c>, <c>retention_kg_m3</c>, <c>uptake_l_m3</c> and
/// <c>strength_percent</c>, oldest charge first. The unit stands in the column's name; a cell is a plain number. A column named
/// <c>date</c> is passed over.
/// </remarks>
public sealed class ChargeTable
{
    private const int ProblemsMax = 50;
    private const string ChargeColumn = "charge";
    private const string DateColumn = "date";

    private static readonly (string Column, Measure Measure)[] Known =
    [
        ("mean_depth_mm", new("mean depth", "mm")),
        ("minimum_depth_mm", new("minimum depth", "mm")),
        ("retention_kg_m3", new("retention", "kg/m³")),
        ("uptake_l_m3", new("uptake", "l/m³")),
        ("strength_percent", new("solution strength", "%")),
    ];

    private readonly TableText _text;
    private readonly int _chargeAt;
    private readonly int[] _measureAt;
    private readonly int _columns;

    private ChargeTable(TableText text, int columns, int chargeAt, int[] measureAt, IReadOnlyList<Measure> measures)
    {
        _text = text;
        _columns = columns;
        _chargeAt = chargeAt;
        _measureAt = measureAt;
        Measures = measures;
    }

    /// <summary>The measures that the table has, in the order of its columns.</summary>
    public IReadOnlyList<Measure> Measures { get; }

    /// <summary>Reads the column names.</summary>
    /// <param name="text">The table.</param>
    /// <exception cref="InputRefusedException">Its columns are not those of a history.</exception>
    public static ChargeTable Open(TableText text)
    {
        string[] names = [.. text.ColumnNames()];
        var path = text.Name;
        List<InputProblem> problems = [];
        var expected = $"{ChargeColumn}, {string.Join(", ", Known.Select(known => known.Column))}";
        var at = Enumerable.Range(0, names.Length).Where(i => MeasureOf(names[i]) is not null).ToArray();
        if (at.Length == 0 || !names.Contains(ChargeColumn, StringComparer.Ordinal))
        {
            // Another table altogether: one message, not one for each of its columns.
            throw new InputRefusedException(
                new InputProblem(
                    path,
                    1,
                    "",
                    "",
                    $"the columns {string.Join(", ", names)}",
                    $"{ChargeColumn} and any of {string.Join(", ", Known.Select(known => known.Column))}; or lots: {LotTable.ColumnsInWords}"
                )
            );
        }
        foreach (var name in names.Where(name => !IsKnown(name)))
            problems.Add(new InputProblem(path, 1, "", name, "an unknown column", expected));
        foreach (var twice in names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1))
            problems.Add(new InputProblem(path, 1, "", twice.Key, "the column twice", "each column once"));
        return problems.Count == 0
            ? new(text, names.Length, Array.IndexOf(names, ChargeColumn), at, [.. at.Select(i => MeasureOf(names[i])!)])
            : throw new InputRefusedException(problems);
    }

    /// <summary>The charges, oldest first. Take what is wanted of each before asking for the next: its list of values is used again.</summary>
    /// <param name="stop">Stops between charges.</param>
    /// <exception cref="InputRefusedException">A row is wrong; thrown at the end of the table, or at the fiftieth problem.</exception>
    public IEnumerable<ChargeRow> Charges(CancellationToken stop)
    {
        List<InputProblem> problems = [];
        HashSet<string> numbers = new(StringComparer.Ordinal);
        var values = new double?[_measureAt.Length];
        var line = 1;
        foreach (var text in _text.Lines.Skip(1))
        {
            line++;
            stop.ThrowIfCancellationRequested();
            if (text.Length == 0)
                continue;
            var before = problems.Count;
            var row = Read(text, line, values, numbers, problems);
            if (problems.Count >= ProblemsMax)
                throw new InputRefusedException(problems);
            if (problems.Count == before)
                yield return row;
        }
        if (numbers.Count == 0)
            problems.Add(
                new InputProblem(_text.Name, 1, "", "", "no charges", "one row or more below the column names")
            );
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
    }

    private ChargeRow Read(
        string text,
        int line,
        double?[] values,
        HashSet<string> numbers,
        List<InputProblem> problems
    )
    {
        Span<Range> cells = stackalloc Range[_columns + 1];
        var count = text.AsSpan().Split(cells, ',');
        if (count != _columns)
        {
            problems.Add(
                new InputProblem(
                    _text.Name,
                    line,
                    "",
                    "",
                    $"{count} cells",
                    $"{_columns}, as many as there are columns (no comma within a cell)"
                )
            );
            return default;
        }
        var number = new string(text.AsSpan()[cells[_chargeAt]].Trim(" \""));
        if (number.Length == 0)
            problems.Add(new InputProblem(_text.Name, line, "", ChargeColumn, "nothing", "the charge's number"));
        else if (!numbers.Add(number))
            problems.Add(
                new InputProblem(
                    _text.Name,
                    line,
                    number,
                    ChargeColumn,
                    $"\"{number}\" a second time",
                    "a number of its own for each charge"
                )
            );
        for (var i = 0; i < values.Length; i++)
        {
            var cell = text.AsSpan()[cells[_measureAt[i]]].Trim(" \"");
            values[i] = null;
            if (cell.IsEmpty)
                continue;
            if (
                double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                && value is >= 0 and <= 100_000
            )
                values[i] = value;
            else
                problems.Add(
                    new InputProblem(
                        _text.Name,
                        line,
                        number,
                        Known.First(known => known.Measure == Measures[i]).Column,
                        $"\"{cell}\"",
                        $"a plain number from 0, in {Measures[i].Unit} as the column's name says"
                    )
                );
        }
        return new(number, values);
    }

    private static bool IsKnown(string name) => name is ChargeColumn or DateColumn || MeasureOf(name) is not null;

    private static Measure? MeasureOf(string name) => Array.Find(Known, known => known.Column == name).Measure;
}

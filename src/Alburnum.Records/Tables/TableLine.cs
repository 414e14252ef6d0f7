using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Facts;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Tables;

/// <summary>One line of a table by its columns' names. Whatever is wrong is noted with line and column, and reading goes on.</summary>
internal sealed partial class TableLine
{
    private readonly Table _table;
    private readonly FrozenDictionary<string, int> _columns;
    private readonly List<InputProblem> _problems;
    private readonly TableRow _row;

    private TableLine(Table table, FrozenDictionary<string, int> columns, List<InputProblem> problems, TableRow row)
    {
        _table = table;
        _columns = columns;
        _problems = problems;
        _row = row;
    }

    /// <summary>Line in the file, from 1.</summary>
    public int Line => _row.Line;

    /// <summary>The lines of a table, one by one; none where its columns are not those expected, which is noted.</summary>
    /// <param name="table">The table.</param>
    /// <param name="columns">Columns that must be there.</param>
    /// <param name="optional">Columns that may be there.</param>
    /// <param name="problems">Gains all problems found.</param>
    public static IEnumerable<TableLine> Of(
        Table table,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        List<InputProblem> problems
    )
    {
        if (!HasColumns(table, columns, optional, problems))
            yield break;
        var places = table
            .Columns.Select((column, place) => KeyValuePair.Create(column, place))
            .ToFrozenDictionary(StringComparer.Ordinal);
        foreach (var row in table.Rows)
        {
            if (row.Cells.Count == table.Columns.Count)
                yield return new(table, places, problems, row);
            else
                problems.Add(
                    new InputProblem(
                        table.Name,
                        row.Line,
                        "",
                        "",
                        $"{row.Cells.Count} cells",
                        $"{table.Columns.Count}, as many as there are columns (a cell with a comma in it goes in quotes)"
                    )
                );
        }
    }

    /// <summary>Reads a whole table of one row or more.</summary>
    /// <param name="table">The table.</param>
    /// <param name="columns">Columns that must be there.</param>
    /// <param name="optional">Columns that may be there.</param>
    /// <param name="problems">Gains all problems found.</param>
    /// <param name="read">Turns one line into what it stands for.</param>
    /// <param name="rows">What its rows are called where there are none.</param>
    /// <returns>Every row; not to be used where problems were noted.</returns>
    public static IReadOnlyList<T> ReadAll<T>(
        Table table,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        List<InputProblem> problems,
        Func<TableLine, T> read,
        string rows = "rows"
    )
    {
        var before = problems.Count;
        var all = Of(table, columns, optional, problems).Select(read).ToList();
        if (all.Count == 0 && problems.Count == before)
            problems.Add(
                new InputProblem(
                    table.Name,
                    table.HeaderLine,
                    "",
                    "",
                    $"no {rows}",
                    "one row or more below the column names"
                )
            );
        return all;
    }

    /// <summary>The text in a column; empty where the column or the cell is.</summary>
    public string Text(string column) => _columns.TryGetValue(column, out var place) ? _row.Cells[place] : "";

    /// <summary>A text that must be there.</summary>
    public string RequiredText(string column)
    {
        var text = Text(column);
        if (text.Length == 0)
            Refuse(column, "nothing", "a text");
        return text;
    }

    /// <summary>A text that must be there and that no line before has.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="seen">The lines at which each text stood first; gains this one.</param>
    /// <param name="what">What each text names, for instance "lot".</param>
    public string OwnText(string column, Dictionary<string, int> seen, string what)
    {
        var text = RequiredText(column);
        if (text.Length > 0 && !seen.TryAdd(text, Line))
            Refuse(column, $"\"{text}\", already on line {seen[text]}", $"a different one for each {what}");
        return text;
    }

    /// <summary>Notes a day that is none, or that lies before the latest above it: the oldest line stands first. An empty cell says nothing.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="latest">The latest day above and its line; null where there is none. Becomes this one.</param>
    public void DayInOrder(string column, ref (DateOnly Day, int Line)? latest)
    {
        var text = Text(column);
        if (text.Length == 0 || latest is { Line: 0 })
            return;
        if (DayOf(text) is not { } day)
            Refuse(column, $"\"{text}\"", DateText.Expected);
        else if (day < latest?.Day)
        {
            Refuse(column, text, $"no day before that of line {latest.Value.Line}: the oldest stands first");
            // Of a table that stands upside down one line says it for all.
            latest = (DateOnly.MaxValue, 0);
        }
        else
            latest = (day, Line);
    }

    // A workbook may give the time of day as well, or count days without a date's format.
    private static DateOnly? DayOf(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days < 1_000_000
            ? new DateOnly(1899, 12, 30).AddDays(days)
            : DateText.Read(text.Split(' ')[0]);

    /// <summary>A number in a range; the least where none was read, which is noted.</summary>
    public double Number(string column, NumberRange range)
    {
        if (OptionalNumber(column, range) is { } number)
            return number;
        if (Text(column).Length == 0)
            Refuse(column, "nothing", range.InWords);
        return range.Low;
    }

    /// <summary>A whole number in a range; the least where none was read, which is noted.</summary>
    public int Whole(string column, NumberRange range) => (int)Number(column, range);

    /// <summary>A number in a range; null where the cell is empty or was refused.</summary>
    public double? OptionalNumber(string column, NumberRange range)
    {
        var text = Text(column);
        if (text.Length == 0)
            return null;
        if (
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && range.Holds(number)
        )
            return number;
        Refuse(column, Shown(text), range.InWords);
        return null;
    }

    /// <summary>True where a number in one of these columns, on whichever line of the table, has a decimal point.</summary>
    /// <param name="columns">The columns.</param>
    public bool HasDecimalPoint(IReadOnlyList<string> columns) =>
        columns.Any(column =>
            _columns.TryGetValue(column, out var place)
            && _table.Rows.Any(row => place < row.Cells.Count && DecimalPoint().IsMatch(row.Cells[place]))
        );

    [GeneratedRegex(@"[0-9]\.[0-9]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex DecimalPoint();

    /// <summary>Notes a problem with a cell of this line.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="found">What was found.</param>
    /// <param name="expected">What was expected.</param>
    /// <param name="row">What the row is called; empty where its line is enough.</param>
    public void Refuse(string column, string found, string expected, string row = "") =>
        _problems.Add(new InputProblem(_table.Name, Line, row, column, found, expected));

    /// <summary>What stands where a number belongs, in quotes; a comma in place of the decimal point is named.</summary>
    public static string Shown(string text) =>
        text.Split(',') is [var whole, var decimals]
        && int.TryParse(whole, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)
        && decimals.Length > 0
        && decimals.All(char.IsAsciiDigit)
            ? $"\"{text}\", with a decimal comma"
            : $"\"{text}\"";

    private static bool HasColumns(
        Table table,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        List<InputProblem> problems
    )
    {
        var before = problems.Count;
        void Refuse(string column, string found, string expected) =>
            problems.Add(new InputProblem(table.Name, table.HeaderLine, "", column, found, expected));
        foreach (var missing in columns.Except(table.Columns, StringComparer.Ordinal))
            Refuse(missing, "no such column", $"the columns {string.Join(", ", columns)}");
        foreach (var unknown in table.Columns.Except(columns.Concat(optional), StringComparer.Ordinal))
            Refuse(unknown, "an unknown column", string.Join(", ", columns.Concat(optional)));
        foreach (
            var twice in table.Columns.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1)
        )
            Refuse(twice.Key, "the column twice", "each column once");
        return problems.Count == before;
    }
}

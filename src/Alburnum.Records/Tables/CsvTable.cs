using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Alburnum.Records.Tables;

/// <summary>A table of readings with named columns. Whatever is wrong is noted with its line and column, and reading goes on.</summary>
public sealed class CsvTable
{
    private readonly string _name;
    private readonly List<InputProblem> _problems;

    private CsvTable(string name, List<InputProblem> problems)
    {
        _name = name;
        _problems = problems;
    }

    /// <summary>Reads a table row by row.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="name">Name for messages.</param>
    /// <param name="columns">Columns that must be there.</param>
    /// <param name="optional">Columns that may be there.</param>
    /// <param name="problems">Gains all problems of the file.</param>
    /// <param name="read">Turns one row into what it stands for.</param>
    /// <returns>Every row read; not to be used where problems were noted.</returns>
    public static IReadOnlyList<T> Read<T>(
        string path,
        string name,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        List<InputProblem> problems,
        Func<CsvLine, T> read
    )
    {
        if (!File.Exists(path))
        {
            problems.Add(new InputProblem(name, 0, "", "", "no such file", "a table in CSV"));
            return [];
        }
        using var text = new StringReader(FileTrouble.Refusing(name, "a table in CSV", () => File.ReadAllText(path)));
        return Read(text, name, columns, optional, problems, read);
    }

    /// <summary>Reads a table that is open already.</summary>
    internal static IReadOnlyList<T> Read<T>(
        TextReader text,
        string name,
        IReadOnlyList<string> columns,
        IReadOnlyList<string> optional,
        List<InputProblem> problems,
        Func<CsvLine, T> read
    )
    {
        using var csv = new CsvReader(
            text,
            new CsvConfiguration(CultureInfo.InvariantCulture) { BadDataFound = null, MissingFieldFound = null }
        );
        var table = new CsvTable(name, problems);
        return table.CheckHeader(csv, columns, optional) ? table.Rows(csv, read) : [];
    }

    internal void Refuse(int line, string column, string found, string expected) =>
        _problems.Add(new InputProblem(_name, line, "", column, found, expected));

    private bool CheckHeader(CsvReader csv, IReadOnlyList<string> columns, IReadOnlyList<string> optional)
    {
        if (!csv.Read() || !csv.ReadHeader())
        {
            Refuse(1, "", "an empty file", $"a first line that names the columns {string.Join(", ", columns)}");
            return false;
        }
        var before = _problems.Count;
        var header = csv.HeaderRecord!;
        foreach (var missing in columns.Except(header, StringComparer.Ordinal))
            Refuse(1, missing, "no such column", $"the columns {string.Join(", ", columns)}");
        foreach (var unknown in header.Except(columns.Concat(optional), StringComparer.Ordinal))
            Refuse(1, unknown, "an unknown column", string.Join(", ", columns.Concat(optional)));
        return _problems.Count == before;
    }

    private List<T> Rows<T>(CsvReader csv, Func<CsvLine, T> read)
    {
        var rows = new List<T>();
        while (csv.Read())
            rows.Add(read(new CsvLine(this, csv)));
        return rows;
    }
}

/// <summary>One line of a table.</summary>
public sealed class CsvLine
{
    private readonly CsvTable _table;
    private readonly CsvReader _csv;

    internal CsvLine(CsvTable table, CsvReader csv)
    {
        _table = table;
        _csv = csv;
    }

    /// <summary>Line in the file, from 1.</summary>
    public int Line => _csv.Context.Parser!.RawRow;

    /// <summary>The text in a column; empty where the column or the cell is.</summary>
    public string Text(string column) => _csv.TryGetField<string>(column, out var text) ? (text ?? "").Trim() : "";

    /// <summary>A text that must be there.</summary>
    public string RequiredText(string column)
    {
        var text = Text(column);
        if (text.Length == 0)
            Refuse(column, "nothing", "a text");
        return text;
    }

    /// <summary>A number in a range.</summary>
    public double Number(string column, double low, double high)
    {
        if (OptionalNumber(column, low, high) is { } number)
            return number;
        if (Text(column).Length == 0)
            Refuse(column, "nothing", Range(low, high));
        return low;
    }

    /// <summary>A number in a range; null where the cell is empty or was refused.</summary>
    public double? OptionalNumber(string column, double low, double high)
    {
        var text = Text(column);
        if (text.Length == 0)
            return null;
        if (
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && number >= low
            && number <= high
        )
            return number;
        Refuse(column, $"\"{text}\"", Range(low, high));
        return null;
    }

    /// <summary>Notes a problem with a cell of this line.</summary>
    public void Refuse(string column, string found, string expected) => _table.Refuse(Line, column, found, expected);

    private static string Range(double low, double high) =>
        string.Create(CultureInfo.InvariantCulture, $"a number, {low:0.####} to {high:0.####}");
}

namespace Alburnum.Records.Tables;

/// <summary>One row of a table.</summary>
/// <param name="Line">Line of the file, or row of the sheet, at which it begins; from 1.</param>
/// <param name="Cells">Its cells as text, trimmed; empty where a cell is blank.</param>
public readonly record struct TableRow(int Line, IReadOnlyList<string> Cells)
{
    /// <summary>True where no cell says anything.</summary>
    public bool IsBlank => Cells.All(cell => cell.Length == 0);
}

/// <summary>A table as cells, from a CSV file or from one sheet of a workbook: the same table gives the same cells either way.</summary>
/// <remarks>
/// The first row that says anything names the columns; blank rows are passed over. Rows are read as they are asked for, so that a plant's
/// history of any length takes the memory of one row.
/// </remarks>
public sealed class Table
{
    /// <summary>What a table may come as.</summary>
    public const string Expected = "a table in CSV, or a workbook (.xlsx)";

    /// <summary>Columns by the names they had once, with the one name that the quantity has everywhere now.</summary>
    private static readonly (string Old, string Now)[] Renamed =
    [
        ("retention_kg_m3", "retention_kg_per_m3"),
        ("uptake_l_m3", "uptake_l_per_m3"),
        ("below_kg_per_m3", "retention_kg_per_m3 with \"< 0.5\" in it where nothing was found down to 0.5"),
    ];

    private readonly IEnumerable<TableRow> _rows;

    private Table(string name, TableRow header, IEnumerable<TableRow> rows)
    {
        Name = name;
        HeaderLine = header.Line;
        Columns = Trimmed(header.Cells, 0);
        _rows = rows;
    }

    /// <summary>Name for messages: the file, and the sheet where it has one.</summary>
    public string Name { get; }

    /// <summary>Names of the columns.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>Line that names the columns.</summary>
    public int HeaderLine { get; }

    /// <summary>The rows below the column names that say anything; read anew each time. Cells without a column are there only where they say something.</summary>
    /// <exception cref="InputRefusedException">The file cannot be read to its end.</exception>
    public IEnumerable<TableRow> Rows =>
        _rows
            .Where(row => row.Line > HeaderLine && !row.IsBlank)
            .Select(row => row with { Cells = Trimmed(row.Cells, Columns.Count) });

    /// <summary>Opens a table.</summary>
    /// <param name="path">Path of the file; a workbook by its name's ending, everything else is read as CSV.</param>
    /// <param name="sheet">Name of the sheet; null takes the only visible one.</param>
    /// <exception cref="InputRefusedException">No such file or sheet, a choice of sheets and none named, or no table.</exception>
    public static Table Open(string path, string? sheet)
    {
        return Read(path, () => PlainFile.Open(path, path, Expected), sheet);
    }

    /// <summary>Reads a table that is kept anywhere.</summary>
    /// <param name="name">Name for messages; its ending tells a workbook.</param>
    /// <param name="open">Opens the file, once for each reading of it.</param>
    /// <param name="sheet">Name of the sheet; null takes the only visible one.</param>
    /// <exception cref="InputRefusedException">No such sheet, a choice of sheets and none named, or no table.</exception>
    internal static Table Read(string name, Func<Stream> open, string? sheet)
    {
        var kind = Path.GetExtension(name).ToLowerInvariant();
        if (kind is ".xlsx" or ".xlsm")
        {
            var wanted = Workbook.SheetOf(name, open, sheet);
            return Filled($"{name}, sheet \"{wanted}\"", Workbook.Rows(name, open, wanted));
        }
        if (kind is ".xls" or ".ods" or ".xlsb")
            throw Refused(name, 0, "", $"a {Path.GetExtension(name)} file", $"{Expected}: save it as one of these");
        return sheet is null
            ? Filled(name, Csv.Rows(name, open))
            : throw Refused(name, 0, "sheet", $"\"{sheet}\"", "no sheet, since CSV has none");
    }

    // Without this an empty table would be blamed for the columns that it lacks, and a picture for odd ones.
    private static Table Filled(string name, IEnumerable<TableRow> rows)
    {
        if (rows.Cast<TableRow?>().FirstOrDefault(row => !row!.Value.IsBlank) is not { } header)
            throw Refused(name, 1, "", "no rows", "a line that names the columns, and rows below it");
        if (header.Cells.Any(cell => cell.Contains('\0', StringComparison.Ordinal)))
            throw Refused(name, header.Line, "", "a file that is not text", Expected);
        if (header.Cells is [var only] && only.AsSpan().IndexOfAny(';', '\t') is >= 0 and var at)
            throw Refused(
                name,
                header.Line,
                "",
                only[at] == ';' ? "semicolons between the columns" : "tabs between the columns",
                $"{Expected}, with commas between the columns and points in the numbers"
            );
        foreach (var (old, now) in Renamed)
            if (header.Cells.Contains(old, StringComparer.Ordinal))
                throw Refused(name, header.Line, old, "a column by its former name", now);
        return new(name, header, rows);
    }

    private static IReadOnlyList<string> Trimmed(IReadOnlyList<string> cells, int least)
    {
        var count = cells.Count;
        while (count > least && cells[count - 1].Length == 0)
            count--;
        return count == cells.Count ? cells : [.. cells.Take(count)];
    }

    private static InputRefusedException Refused(string name, int line, string field, string found, string expected) =>
        new(new InputProblem(name, line, "", field, found, expected));
}

namespace Alburnum.Records.Tables;

/// <summary>A table as lines of comma-separated text: a CSV file as it is, or one sheet of a workbook, a line for each row.</summary>
/// <param name="Name">Name for messages: the file, and the sheet where it has one.</param>
/// <param name="Lines">Its lines, read as they are asked for; line n is row n of the sheet.</param>
public sealed record TableText(string Name, IEnumerable<string> Lines)
{
    /// <summary>What a table may come as.</summary>
    public const string Expected = "a table in CSV, or a workbook (.xlsx)";

    /// <summary>Opens a table.</summary>
    /// <param name="path">Path of the file; a workbook by its name's ending, everything else is read as CSV.</param>
    /// <param name="sheet">Name of the sheet; null takes the only visible one.</param>
    /// <exception cref="InputRefusedException">No such file or sheet, a choice of sheets and none named, or not a workbook.</exception>
    public static TableText Open(string path, string? sheet)
    {
        if (!File.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "no such file", Expected));
        if (Workbook.IsOne(path))
            return Workbook.Sheet(path, sheet);
        if (Path.GetExtension(path).ToLowerInvariant() is ".xls" or ".ods" or ".xlsb")
            throw new InputRefusedException(
                new InputProblem(
                    path,
                    0,
                    "",
                    "",
                    $"a {Path.GetExtension(path)} file",
                    $"{Expected}: save it as one of these"
                )
            );
        return sheet is null
            ? new(path, File.ReadLines(path))
            : throw new InputRefusedException(
                new InputProblem(path, 0, "", "sheet", $"\"{sheet}\"", "no sheet, since CSV has none")
            );
    }

    /// <summary>The names of its columns; empty where the table is.</summary>
    public IReadOnlyList<string> ColumnNames() =>
        [.. (Lines.FirstOrDefault() ?? "").TrimStart('\uFEFF').Split(',').Select(name => name.Trim(' ', '"'))];

    /// <summary>The whole as one text, for tables of readings; a plant's history is read line by line instead.</summary>
    internal TextReader Reader() => new StringReader(string.Join('\n', Lines));
}

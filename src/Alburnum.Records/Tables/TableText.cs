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
        if (Directory.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "a folder", Expected));
        if (!File.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "no such file", Expected));
        if (Workbook.IsOne(path))
            return Filled(Workbook.Sheet(path, sheet));
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
            ? Filled(new(path, Readable(path)))
            : throw new InputRefusedException(
                new InputProblem(path, 0, "", "sheet", $"\"{sheet}\"", "no sheet, since CSV has none")
            );
    }

    // Without this an empty table would be blamed for the columns that it lacks, and a picture for odd ones.
    private static TableText Filled(TableText table)
    {
        var first = table.Lines.FirstOrDefault(line => line.Trim(' ', ',', '\uFEFF').Length > 0);
        if (first is not null && !first.Contains('\0'))
            return table;
        throw new InputRefusedException(
            first is null
                ? new InputProblem(table.Name, 1, "", "", "no rows", "a line that names the columns, and rows below it")
                : new InputProblem(table.Name, 1, "", "", "a file that is not text", Expected)
        );
    }

    // Line by line; what hinders the reading is told in words, at whichever line it does.
    private static IEnumerable<string> Readable(string path)
    {
        using var text = FileTrouble.Refusing(path, Expected, () => new StreamReader(path));
        Func<string?> next = text.ReadLine;
        while (FileTrouble.Refusing(path, Expected, next) is { } line)
            yield return line;
    }

    /// <summary>The names of its columns; empty where the table is.</summary>
    public IReadOnlyList<string> ColumnNames() =>
        [.. (Lines.FirstOrDefault() ?? "").TrimStart('\uFEFF').Split(',').Select(name => name.Trim(' ', '"'))];

    /// <summary>The whole as one text, for tables of readings; a plant's history is read line by line instead.</summary>
    internal TextReader Reader() => new StringReader(string.Join('\n', Lines));
}

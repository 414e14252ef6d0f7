using System.Globalization;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Alburnum.Records.Tables;

/// <summary>Reads one sheet of a workbook (.xlsx) as lines of CSV, row by row, so that thousands of charges are never held at once.</summary>
/// <remarks>Values are taken as stored, formulas by the result stored with them. Row n becomes line n; an empty row an empty line.</remarks>
internal static class Workbook
{
    // A workbook is a zip: what it unpacks to is bounded before it is read.
    private const long CharactersMax = 2_000_000_000;
    private const int RowsMax = 1_048_576;
    private const int ColumnsMax = 256;

    public static bool IsOne(string path) => Path.GetExtension(path).ToLowerInvariant() is ".xlsx" or ".xlsm";

    public static TableText Sheet(string path, string? sheet)
    {
        var names = Read(path, document => VisibleSheets(document).Select(found => found.Name!.Value!).ToList());
        var listed = string.Join(", ", names.Select(name => $"\"{name}\""));
        if (sheet is null && names.Count != 1)
            throw Refused(path, "sheet", $"{names.Count} sheets ({listed})", "--sheet with the name of one of them");
        var wanted = sheet ?? names[0];
        if (!names.Contains(wanted, StringComparer.Ordinal))
            throw Refused(path, "sheet", $"\"{wanted}\"", $"one of {listed}");
        return new($"{path}, sheet \"{wanted}\"", Lines(path, wanted));
    }

    private static IEnumerable<string> Lines(string path, string sheet)
    {
        using var document = Open(path);
        var part = (WorksheetPart)
            document.WorkbookPart!.GetPartById(
                VisibleSheets(document).First(found => found.Name!.Value == sheet).Id!.Value!
            );
        var shared = SharedTexts(document);
        using var reader = OpenXmlReader.Create(part);
        using var rows = Rows(reader, shared).GetEnumerator();
        var (line, columns) = (0, 0);
        while (Next(path, rows))
        {
            var (number, cells) = rows.Current;
            for (; line < number - 1; line++)
                yield return "";
            line++;
            columns = Math.Max(columns, line == 1 ? cells.Count : 0);
            if (cells.Count > 0)
                while (cells.Count < columns)
                    cells.Add("");
            yield return string.Join(',', cells);
        }
    }

    private static IEnumerable<(int Number, List<string> Cells)> Rows(
        OpenXmlReader reader,
        IReadOnlyList<string> shared
    )
    {
        var number = 0;
        List<string> cells = [];
        while (reader.Read())
        {
            if (reader.ElementType == typeof(Row))
            {
                if (reader.IsStartElement)
                {
                    number = Attribute(reader, "r") is { } r ? int.Parse(r, CultureInfo.InvariantCulture) : number + 1;
                    if (number is < 1 or > RowsMax)
                        throw new InvalidDataException($"row {number}");
                    cells = [];
                }
                if (reader.IsEndElement)
                    yield return (number, Trimmed(cells));
            }
            else if (reader.ElementType == typeof(Cell) && reader.IsStartElement)
            {
                var column = Attribute(reader, "r") is { } at ? Column(at) : cells.Count;
                if (column is < 0 or >= ColumnsMax)
                    throw new InvalidDataException($"column {column + 1}");
                while (cells.Count < column)
                    cells.Add("");
                cells.Add(Quoted(Text(reader, shared)));
            }
        }
    }

    /// <summary>What the cell at the reader's place says; leaves the reader at the cell's end.</summary>
    private static string Text(OpenXmlReader reader, IReadOnlyList<string> shared)
    {
        var kind = Attribute(reader, "t") ?? "n";
        var text = "";
        while (!(reader.ElementType == typeof(Cell) && reader.IsEndElement) && reader.Read())
            if (
                reader.IsStartElement && (reader.ElementType == typeof(CellValue) || reader.ElementType == typeof(Text))
            )
                text += reader.GetText();
        return kind switch
        {
            "s" when text.Length > 0 => shared[int.Parse(text, CultureInfo.InvariantCulture)],
            "b" => text == "1" ? "yes" : "no",
            // Sheets store 7.4 as 7.4000000000000004: the shortest digits that mean the same number are what was typed.
            "n" when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) =>
                value.ToString("R", CultureInfo.InvariantCulture),
            _ => text,
        };
    }

    private static string[] SharedTexts(SpreadsheetDocument document) =>
        document.WorkbookPart!.SharedStringTablePart?.SharedStringTable is { } table
            ? [.. table.Elements<SharedStringItem>().Select(item => string.Concat(Written(item)))]
            : [];

    /// <summary>The text of an item without the reading aids of East Asian scripts.</summary>
    private static IEnumerable<string> Written(SharedStringItem item) =>
        item.Descendants<Text>().Where(text => text.Parent is not PhoneticRun).Select(text => text.Text);

    private static IEnumerable<Sheet> VisibleSheets(SpreadsheetDocument document) =>
        document.WorkbookPart!.Workbook?.Sheets?.Elements<Sheet>().Where(IsVisible) ?? [];

    private static bool IsVisible(Sheet sheet) =>
        sheet is { Name.Value: not null, Id.Value: not null }
        && (sheet.State is null || sheet.State.Value == SheetStateValues.Visible);

    private static List<string> Trimmed(List<string> cells)
    {
        while (cells.Count > 0 && cells[^1].Length == 0)
            cells.RemoveAt(cells.Count - 1);
        return cells;
    }

    /// <summary>A cell as CSV; a line break within it becomes a space, so that a row stays a line.</summary>
    private static string Quoted(string text)
    {
        var line = text.ReplaceLineEndings(" ").Trim();
        return line.AsSpan().IndexOfAny(',', '"') < 0
            ? line
            : $"\"{line.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    /// <summary>Column from 0 of a reference such as "C12".</summary>
    private static int Column(string reference)
    {
        var column = 0;
        foreach (var letter in reference.TakeWhile(char.IsAsciiLetterUpper).Take(4))
            column = column * 26 + (letter - 'A' + 1);
        return column - 1;
    }

    private static string? Attribute(OpenXmlReader reader, string name)
    {
        foreach (var attribute in reader.Attributes)
            if (attribute.LocalName == name)
                return attribute.Value;
        return null;
    }

    private static SpreadsheetDocument Open(string path) =>
        Guarded(
            path,
            () =>
            {
                var document = SpreadsheetDocument.Open(
                    path,
                    isEditable: false,
                    new OpenSettings { MaxCharactersInPart = CharactersMax }
                );
                return document.WorkbookPart is null ? throw new InvalidDataException("no workbook in it") : document;
            }
        );

    private static T Read<T>(string path, Func<SpreadsheetDocument, T> read)
    {
        using var document = Open(path);
        return Guarded(path, () => read(document));
    }

    private static bool Next(string path, IEnumerator<(int, List<string>)> rows) => Guarded(path, rows.MoveNext);

    private static T Guarded<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception broken)
            when (broken
                    is OpenXmlPackageException
                        or FileFormatException
                        or InvalidDataException
                        or XmlException
                        or FormatException
                        or OverflowException
                        or ArgumentException
                        or IndexOutOfRangeException
                        or IOException
            )
        {
            throw Refused(path, "", $"a file that cannot be read as a workbook ({broken.Message})", TableText.Expected);
        }
    }

    private static InputRefusedException Refused(string path, string field, string found, string expected) =>
        new(new InputProblem(path, 0, "", field, found, expected));
}

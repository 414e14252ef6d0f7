using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Alburnum.Records.Tables;

/// <summary>Reads one sheet of a workbook (.xlsx) row by row, so that thousands of charges are never held at once.</summary>
/// <remarks>
/// Values are taken as stored, formulas by the result stored with them. A number in a date's format is written as a date, since that is
/// what the sheet shows and what its CSV would say.
/// </remarks>
internal static class Workbook
{
    // A workbook is a zip: what a part of it unpacks to is bounded, since one cell may be all of it and is held whole. A hundred thousand rows are less.
    private const long CharactersMax = 1 << 26;
    private const int RowsMax = 1_048_576;
    private const int ColumnsMax = 256;

    /// <summary>The sheet that is meant.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="open">Opens the file.</param>
    /// <param name="sheet">Its name as given; null takes the only visible one.</param>
    /// <exception cref="InputRefusedException">No such sheet, a choice and none named, or no workbook.</exception>
    public static string SheetOf(string name, Func<Stream> open, string? sheet)
    {
        var names = Guarded(
            name,
            () =>
            {
                using var file = open();
                using var document = Open(file);
                return VisibleSheets(document).Select(found => found.Name!.Value!).ToList();
            }
        );
        var listed = string.Join(", ", names.Select(found => $"\"{found}\""));
        if (sheet is null && names.Count != 1)
            throw Refused(name, "sheet", $"{names.Count} sheets ({listed})", "one sheet, or the name of one of them");
        var wanted = sheet ?? names[0];
        return names.Contains(wanted, StringComparer.Ordinal)
            ? wanted
            : throw Refused(name, "sheet", $"\"{wanted}\"", $"one of {listed}");
    }

    /// <summary>The rows of a sheet that hold anything, each as wide as the first.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="open">Opens the file.</param>
    /// <param name="sheet">A sheet that it has.</param>
    /// <exception cref="InputRefusedException">The file is damaged, at whichever row that shows.</exception>
    public static IEnumerable<TableRow> Rows(string name, Func<Stream> open, string sheet)
    {
        using var rows = Rows(open, sheet).GetEnumerator();
        var columns = 0;
        while (Guarded(name, rows.MoveNext))
        {
            var (number, cells) = rows.Current;
            if (columns == 0)
                columns = cells.Count;
            while (cells.Count < columns)
                cells.Add("");
            yield return new(number, cells);
        }
    }

    private static IEnumerable<(int Number, List<string> Cells)> Rows(Func<Stream> open, string sheet)
    {
        using var file = open();
        using var document = Open(file);
        var book = document.WorkbookPart!;
        var part = (WorksheetPart)
            book.GetPartById(VisibleSheets(document).First(found => found.Name!.Value == sheet).Id!.Value!);
        var texts = new CellTexts(book);
        using var reader = OpenXmlReader.Create(part);
        var number = 0;
        List<string> cells = [];
        while (reader.Read())
        {
            if (reader.ElementType == typeof(Row) && reader.IsStartElement)
            {
                number = Within(
                    Attribute(reader, "r") is { } r ? int.Parse(r, CultureInfo.InvariantCulture) : number + 1,
                    RowsMax,
                    "row"
                );
                cells = [];
            }
            else if (reader.ElementType == typeof(Cell) && reader.IsStartElement)
            {
                var column = Within(
                    Attribute(reader, "r") is { } at ? Column(at) : cells.Count + 1,
                    ColumnsMax,
                    "column"
                );
                while (cells.Count < column - 1)
                    cells.Add("");
                cells.Add(texts.Read(reader));
            }
            if (reader.ElementType == typeof(Row) && reader.IsEndElement && cells.Exists(cell => cell.Length > 0))
                yield return (number, Trimmed(cells));
        }
    }

    private static int Within(int number, int most, string what) =>
        number >= 1 && number <= most ? number : throw new InvalidDataException($"{what} {number}");

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

    /// <summary>Column from 1 of a reference such as "C12".</summary>
    private static int Column(string reference)
    {
        var column = 0;
        foreach (var letter in reference.TakeWhile(char.IsAsciiLetterUpper).Take(4))
            column = column * 26 + (letter - 'A' + 1);
        return column;
    }

    internal static string? Attribute(OpenXmlReader reader, string name)
    {
        foreach (var attribute in reader.Attributes)
            if (attribute.LocalName == name)
                return attribute.Value;
        return null;
    }

    private static SpreadsheetDocument Open(Stream file)
    {
        var document = SpreadsheetDocument.Open(
            file,
            isEditable: false,
            new OpenSettings { MaxCharactersInPart = CharactersMax }
        );
        return document.WorkbookPart is null ? throw new InvalidDataException("no workbook in it") : document;
    }

    private static T Guarded<T>(string name, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception broken)
            // A damaged file shows at any depth of the package's readers, in whatever exception it meets there.
            when (broken is not (InputRefusedException or OperationCanceledException or OutOfMemoryException))
        {
            throw Refused(name, "", $"a file that cannot be read as a workbook ({broken.Message})", Table.Expected);
        }
    }

    private static InputRefusedException Refused(string name, string field, string found, string expected) =>
        new(new InputProblem(name, 0, "", field, found, expected));
}

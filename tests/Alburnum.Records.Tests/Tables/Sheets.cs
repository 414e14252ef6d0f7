using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Alburnum.Records.Tests.Tables;

/// <summary>Writes small workbooks for tests.</summary>
internal static class Sheets
{
    /// <summary>A workbook with one sheet after the other; a cell is a number, a day, a text, or null for none.</summary>
    public static void Write(string path, params (string Name, bool IsHidden, object?[][] Rows)[] sheets)
    {
        using var document = SpreadsheetDocument.Create(path, SpreadsheetDocumentType.Workbook);
        var book = document.AddWorkbookPart();
        book.Workbook = new(new DocumentFormat.OpenXml.Spreadsheet.Sheets());
        book.AddNewPart<WorkbookStylesPart>().Stylesheet = new(
            new NumberingFormats(new NumberingFormat { NumberFormatId = 164, FormatCode = "dd\\.mm\\.yyyy" }),
            new CellFormats(new CellFormat { NumberFormatId = 0 }, new CellFormat { NumberFormatId = 164 })
        );
        var shared = book.AddNewPart<SharedStringTablePart>();
        shared.SharedStringTable = new();
        uint id = 0;
        foreach (var (name, isHidden, rows) in sheets)
        {
            var part = book.AddNewPart<WorksheetPart>();
            part.Worksheet = new(new SheetData(rows.Select((row, i) => Row(row, i + 1, shared.SharedStringTable))));
            book.Workbook.Sheets!.Append(
                new Sheet
                {
                    Name = name,
                    SheetId = ++id,
                    Id = book.GetIdOfPart(part),
                    State = isHidden ? SheetStateValues.Hidden : SheetStateValues.Visible,
                }
            );
        }
    }

    private static Row Row(object?[] cells, int number, SharedStringTable shared) =>
        new(
            cells
                .Select((cell, column) => (cell, column))
                .Where(at => at.cell is not null)
                .Select(at => Cell(at.cell!, at.column, number, shared))
        )
        {
            RowIndex = (uint)number,
        };

    private static Cell Cell(object value, int column, int row, SharedStringTable shared)
    {
        var reference = $"{(char)('A' + column)}{row}";
        if (value is double number)
            return new(new CellValue(number.ToString("G17", CultureInfo.InvariantCulture)))
            {
                CellReference = reference,
            };
        if (value is DateOnly day)
            return new(
                new CellValue(day.ToDateTime(TimeOnly.MinValue).ToOADate().ToString("R", CultureInfo.InvariantCulture))
            )
            {
                CellReference = reference,
                StyleIndex = 1,
            };
        if (value is string text && text.StartsWith("inline:", StringComparison.Ordinal))
            return new(new InlineString(new Text(text["inline:".Length..])))
            {
                CellReference = reference,
                DataType = CellValues.InlineString,
            };
        shared.Append(new SharedStringItem(new Text((string)value)));
        return new(new CellValue(shared.Count() - 1)) { CellReference = reference, DataType = CellValues.SharedString };
    }
}

using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Alburnum.Records.Tables;

/// <summary>What a workbook's cells say, as its CSV would have it.</summary>
internal sealed class CellTexts
{
    // ECMA-376 part 1, 18.8.30: the formats with a number of their own that write dates and times.
    private static readonly HashSet<uint> DateFormats = [14, 15, 16, 17, 22];

    private readonly string[] _shared;
    private readonly bool[] _isDate;
    private readonly bool _is1904;

    public CellTexts(WorkbookPart book)
    {
        _shared = book.SharedStringTablePart?.SharedStringTable is { } table
            ? [.. table.Elements<SharedStringItem>().Select(item => string.Concat(Written(item)))]
            : [];
        _isDate = book.WorkbookStylesPart?.Stylesheet is { } styles ? [.. Dates(styles)] : [];
        _is1904 = book.Workbook?.WorkbookProperties?.Date1904?.Value ?? false;
    }

    /// <summary>What the cell at the reader's place says; leaves the reader at the cell's end.</summary>
    public string Read(OpenXmlReader reader)
    {
        var kind = Workbook.Attribute(reader, "t") ?? "n";
        var style = Workbook.Attribute(reader, "s") is { } s ? int.Parse(s, CultureInfo.InvariantCulture) : 0;
        var text = "";
        while (!(reader.ElementType == typeof(Cell) && reader.IsEndElement) && reader.Read())
            if (
                reader.IsStartElement && (reader.ElementType == typeof(CellValue) || reader.ElementType == typeof(Text))
            )
                text += reader.GetText();
        return Csv.Written(
            kind switch
            {
                "s" when text.Length > 0 => _shared[int.Parse(text, CultureInfo.InvariantCulture)],
                "b" => text == "1" ? "yes" : "no",
                "n" when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) => style
                    < _isDate.Length
                && _isDate[style]
                    ? Date(value)
                    : Number(value),
                _ => text,
            }
        );
    }

    // Sheets store 7.4 as 7.4000000000000004: the shortest digits that mean the same number are what was typed.
    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private string Date(double days)
    {
        // Days are counted from 1900-01-01 with a 29th of February that was not, or from 1904-01-01.
        var first = _is1904 ? new DateTime(1904, 1, 1) : new DateTime(1899, 12, 30);
        if (days is < 61 or > 2_958_465)
            return Number(days);
        var date = first.AddDays(days);
        return date.ToString(
            date.TimeOfDay < TimeSpan.FromSeconds(0.5) ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss",
            CultureInfo.InvariantCulture
        );
    }

    /// <summary>For each cell style, whether it writes a date.</summary>
    private static IEnumerable<bool> Dates(Stylesheet styles)
    {
        var own = (styles.NumberingFormats?.Elements<NumberingFormat>() ?? [])
            .Where(format => format.NumberFormatId is not null && IsDate(format.FormatCode?.Value ?? ""))
            .Select(format => format.NumberFormatId!.Value)
            .ToHashSet();
        return (styles.CellFormats?.Elements<CellFormat>() ?? []).Select(format =>
            format.NumberFormatId?.Value is { } number && (DateFormats.Contains(number) || own.Contains(number))
        );
    }

    /// <summary>True where a format writes day or year; what stands in quotes or brackets is not part of it.</summary>
    private static bool IsDate(string format)
    {
        var (isQuoted, isBracketed) = (false, false);
        foreach (var letter in format)
        {
            if (letter == '"')
                isQuoted = !isQuoted;
            else if (!isQuoted && letter is '[' or ']')
                isBracketed = letter == '[';
            else if (!isQuoted && !isBracketed && letter is 'd' or 'y' or 'D' or 'Y')
                return true;
        }
        return false;
    }

    /// <summary>The text of an item without the reading aids of East Asian scripts.</summary>
    private static IEnumerable<string> Written(SharedStringItem item) =>
        item.Descendants<Text>().Where(text => text.Parent is not PhoneticRun).Select(text => text.Text);
}

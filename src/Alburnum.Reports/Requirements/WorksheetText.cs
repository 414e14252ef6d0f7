using Alburnum.Records.Tables;
using Alburnum.Records.Worksheets;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Requirements;

/// <summary>A worksheet as plain lines, and as a table to fill in.</summary>
public static class WorksheetText
{
    private static readonly System.Buffers.SearchValues<char> InQuotes = System.Buffers.SearchValues.Create(",\"\n\r");

    /// <summary>The cells, line by line.</summary>
    /// <param name="sheet">The worksheet.</param>
    /// <param name="fileOption">What writes the table, as the reader writes it.</param>
    public static IEnumerable<string> Lines(WorksheetDocument sheet, string fileOption)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        yield return RulebookText.Line(sheet.Rulebook);
        foreach (var cell in sheet.Cells)
        {
            (string, string) subject = ("subject", RequirementWords.Current.Rows.Say(cell.Subject)),
                when = ("when", cell.When),
                now = ("now", cell.Now ?? Said("rulebooks.no-row"));
            yield return cell.AskedBy == 0
                ? Said("rulebooks.unread-not-asked", subject, when, now)
                : Said("rulebooks.unread", ("count", Figures.Whole(cell.AskedBy)), subject, when, now);
            yield return $"    {cell.Key}";
        }
        yield return Said(
            "rulebooks.unread-of",
            ("cells", Figures.Whole(sheet.Cells.Count)),
            ("enquiries", Figures.Whole(sheet.Enquiries)),
            ("option", fileOption)
        );
    }

    /// <summary>The cells as CSV, with empty columns for what the copy says.</summary>
    public static string Csv(WorksheetDocument sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var lines = sheet.Cells.Select(cell =>
            (IEnumerable<string>)
                [
                    Figures.Whole(cell.AskedBy),
                    cell.Key,
                    RequirementWords.Current.Rows.Say(cell.Subject),
                    cell.When,
                    cell.Now ?? "",
                    cell.Standing is { } standing ? Wording.Current.Say(standing) : Said("rows.not-known"),
                    .. WorksheetTable.ToFillIn.Select(_ => ""),
                ]
        );
        return string.Concat(
            lines
                .Prepend(WorksheetTable.Asked.Concat(WorksheetTable.ToFillIn))
                .Select(cells => $"{string.Join(',', cells.Select(SpreadsheetText.Inert).Select(Cell))}\n")
        );
    }

    private static string Cell(string text) =>
        text.AsSpan().ContainsAny(InQuotes) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}

using System.Globalization;

namespace Alburnum.Records.Tables;

/// <summary>Texts in tables that are written for a spreadsheet.</summary>
public static class SpreadsheetText
{
    private const char AsText = '\'';

    /// <summary>
    /// A cell that a spreadsheet shows and does not carry out: a text that begins as a formula does gets an apostrophe before it. Numbers stay numbers.
    /// </summary>
    /// <remarks>The signs are those that spreadsheet programs take for the start of a formula (CWE-1236).</remarks>
    public static string Inert(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return
            cell is ['=' or '+' or '-' or '@' or '\t' or '\r', ..]
            && !double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? AsText + cell
            : cell;
    }
}

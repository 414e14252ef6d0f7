using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace Alburnum.Records.Tables;

/// <summary>Reads comma-separated text (RFC 4180) as rows of cells.</summary>
internal static class Csv
{
    // As much as a workbook's cell holds: a quote that is never closed would otherwise swallow the file.
    private const int CellCharactersMax = 32_767;

    private const string ClosingQuotes = "a closing quote for every quote";

    private static readonly CsvConfiguration Configuration = new(CultureInfo.InvariantCulture)
    {
        TrimOptions = TrimOptions.Trim,
        IgnoreBlankLines = false,
        BadDataFound = null,
        MaxFieldSize = CellCharactersMax,
    };

    /// <summary>The rows, read as they are asked for.</summary>
    /// <param name="name">Name for messages.</param>
    /// <param name="open">Opens the file.</param>
    /// <exception cref="InputRefusedException">The file cannot be read, or a cell has no end.</exception>
    public static IEnumerable<TableRow> Rows(string name, Func<Stream> open)
    {
        using var text = PlainFile.Reader(open());
        using var parser = new CsvParser(text, Configuration);
        var line = 1;
        while (Next(name, open, line, parser))
        {
            RefuseOpenQuote(name, line, parser.RawRecord);
            yield return new(line, [.. Enumerable.Range(0, parser.Count).Select(i => Written(parser[i]))]);
            line = parser.RawRow + 1;
        }
    }

    /// <summary>A cell's text as both kinds of table give it: a line break within it is a space.</summary>
    public static string Written(string cell) =>
        (cell.AsSpan().ContainsAny('\n', '\r') ? cell.ReplaceLineEndings(" ") : cell).Trim();

    // Each quoted cell has two, and a quote within one is doubled. Within a single line an odd one may be a sign for inches.
    private static void RefuseOpenQuote(string name, int line, string record)
    {
        if (
            record.TrimEnd('\r', '\n').Contains('\n', StringComparison.Ordinal)
            && record.Count(sign => sign == '"') % 2 == 1
        )
            throw new InputRefusedException(
                new InputProblem(name, line, "", "", "a quote that is opened and not closed", ClosingQuotes)
            );
    }

    private static bool Next(string name, Func<Stream> open, int line, CsvParser parser)
    {
        try
        {
            return FileTrouble.Refusing(name, Table.Expected, parser.Read);
        }
        catch (DecoderFallbackException)
        {
            throw PlainFile.NotUtf8(open, name);
        }
        catch (MaxFieldSizeException)
        {
            throw new InputRefusedException(
                new InputProblem(
                    name,
                    line,
                    "",
                    "",
                    $"a cell of more than {CellCharactersMax.ToString(CultureInfo.InvariantCulture)} characters",
                    ClosingQuotes
                )
            );
        }
    }
}

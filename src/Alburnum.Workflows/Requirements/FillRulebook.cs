using System.Text.RegularExpressions;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Records.Worksheets;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Requirements;

/// <summary>A rulebook of the user's, made from a worksheet.</summary>
/// <param name="Text">The text of its file.</param>
/// <param name="Confirmed">Number of rows that the copy confirms.</param>
/// <param name="Written">Number of rows that say what the copy says.</param>
public sealed record FilledIn(string Text, int Confirmed, int Written);

/// <summary>Reads a worksheet that was filled in from a printed code into a rulebook of the user's.</summary>
public static partial class FillRulebook
{
    private const string ZoneExpected =
        "nothing, which confirms the zone; for another zone, a row of your own in the file";

    private const string RetentionExpected =
        "a plain multiple of the critical value, 0.01 to 20, such as 1.5; or an amount with its unit, such as 6.4 kg/m3";

    /// <summary>Reads it; refuses every line that cannot be read, and a value for a row of which nothing is known and which covers more than one cell.</summary>
    /// <param name="rulebook">Name of the rulebook that ships, on which the user's is based.</param>
    /// <param name="table">The worksheet.</param>
    /// <param name="facts">The rulebooks that ship, and the commonest enquiries.</param>
    /// <param name="today">Today, where the reader is.</param>
    /// <param name="shown">What the worksheet shows of a cell: what it shows may be written. Null where it shows nothing.</param>
    /// <exception cref="InputRefusedException">There is no such rulebook, nothing is filled in, or a line cannot be read.</exception>
    public static FilledIn Run(
        string rulebook,
        Table table,
        FactLibrary facts,
        DateOnly today,
        Func<WorksheetCell, string?> shown
    )
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(facts);
        var book = facts.Rulebooks.Named(rulebook);
        var lines = WorksheetTable.Read(table, today);
        if (lines.Count == 0)
            throw new InputRefusedException(
                new InputProblem(table.Name, 0, "", "", "no line filled in", "a value or initials in at least one line")
            );
        var asked = Worksheet.Of(book, facts.CommonestEnquiries);
        var rows = asked
            .Select(cell => (cell.Key, cell.Row))
            .Concat(book.Rows.Select(row => (row.Key, Row: row)))
            .Concat(book.Rows.Where(row => row.ZoneKey is not null).Select(row => (Key: row.ZoneKey!, Row: row)))
            .DistinctBy(each => each.Key, StringComparer.Ordinal)
            .ToDictionary(each => each.Key, each => each.Row, StringComparer.Ordinal);
        var problems = new List<InputProblem>();
        var cells = new List<(Row Row, WorksheetLine Line)>();
        foreach (var written in lines)
        {
            if (!rows.TryGetValue(written.Key, out var row))
            {
                problems.Add(Problem(table, written, "key", written.Key, $"a key of the worksheet of {book.Name}"));
                continue;
            }
            var line = AsShown(book, row, written, facts, shown);
            if (line.Value.Length > 0 && Worksheet.IsTooWide(row, book))
                problems.Add(Problem(table, line, "value", line.Value, PartsOf(row, asked)));
            else if (Fault(book, row, line, facts, out var read) is { } fault)
                problems.Add(Problem(table, line, fault.Field, fault.Found, fault.Expected));
            else
                // What the copy says as the rulebook does is confirmed by it.
                cells.Add((row, IsSame(row, line, read) ? line with { Value = "" } : line));
        }
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        var confirmed = cells.Count(cell => cell.Line.Value.Length == 0);
        return new(FilledRulebook.Write(book, cells), confirmed, cells.Count - confirmed);
    }

    // A word alone says no other reason than the rulebook has.
    private static bool IsSame(Row row, WorksheetLine line, Demand? read) =>
        row.Demand.Equals(read)
        || (FilledRulebook.IsWordAlone(row, line.Value) && read?.GetType() == row.Demand.GetType());

    private static string PartsOf(Row row, IReadOnlyList<WorksheetCell> asked)
    {
        var parts = asked.Where(cell => cell.Row.Overrides.Contains(row.Key, StringComparer.Ordinal)).ToList();
        return parts.Count > 0
            ? $"a value for each of its cells, not one for all: {string.Join(", ", parts.Select(cell => cell.Key))}"
            : "rows of your own in the file, each with the timber, form and life that it holds for, not one value for all";
    }

    // What the worksheet shows of a demand, or of a zone, is read as that; whatever else was written stays as it is.
    private static WorksheetLine AsShown(
        Rulebook book,
        Row row,
        WorksheetLine line,
        FactLibrary facts,
        Func<WorksheetCell, string?> shown
    )
    {
        bool IsShown(WorksheetCell cell) =>
            line.Value.Length > 0
            && string.Equals(shown(cell), line.Value, StringComparison.OrdinalIgnoreCase)
            && cell.Row.Demand is not UnknownCell;
        if (ZoneOf(row, line) is { } zone)
            return IsShown(new(row, 1) { Zone = zone }) ? line with { Value = "" } : line;
        return IsShown(new(row, 1))
            ? line with
            {
                Value = "",
            }
            : Plain(line.Value)
                .Select(value => line with { Value = value })
                .FirstOrDefault(plain =>
                    Fault(book, row, plain, facts, out var read) is null
                    && read is not null
                    && IsShown(new(row with { Demand = read }, 1))
                )
                ?? line;
    }

    private static Fact<AnalyticalZone>? ZoneOf(Row row, WorksheetLine line) =>
        line.Key == row.ZoneKey ? (row.Demand as PenetrationDemand)?.Zone : null;

    // What may stand in a sentence as its value: the name before a colon, the last word, a number.
    private static IEnumerable<string> Plain(string value) =>
        value.Length == 0
            ? []
            : [value.Split(": ")[0], value.Split(' ')[^1], .. Numbers().Matches(value).Select(match => match.Value)];

    [GeneratedRegex(@"[0-9]{1,4}(\.[0-9]{1,4})?", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();

    // One line alone as a rulebook: what is wrong with that is wrong with the line.
    private static InputProblem? Fault(Rulebook book, Row row, WorksheetLine line, FactLibrary facts, out Demand? read)
    {
        read = null;
        if (row.Demand is UnknownCell && line.Value.Length == 0)
            return new(
                "",
                line.Line,
                row.Key,
                "value",
                "nothing",
                "what the copy says, since nothing is known here that could be confirmed"
            );
        var zone = ZoneOf(row, line);
        if (zone is not null && line.Value.Length > 0)
            return new("", line.Line, row.Key, "value", line.Value, ZoneExpected);
        // A value of one's own goes round what holds a confirmation to the edition.
        if (ReadCopy.EditionFault(zone?.Provenance.Edition ?? book.Edition, line.Edition) is { } edition)
            return new("", line.Line, row.Key, "edition", line.Edition, edition);
        try
        {
            var own = RulebookFile.FromText(FilledRulebook.Write(book, [(row, line)]), facts);
            read = own.Rows.FirstOrDefault(each => each.Key == row.Key)?.Demand;
            return null;
        }
        catch (InputRefusedException refused)
        {
            var first = refused.Problems[0];
            var isValue = line.Value.Length > 0 && first.Field is not ("initials" or "edition");
            return first with
            {
                Field = isValue ? "value" : first.Field,
                Expected = isValue ? ValueExpected(row, first.Expected) : first.Expected,
            };
        }
    }

    private static string ValueExpected(Row row, string asRow) =>
        row switch
        {
            { Subject: Subject.Penetration } => $"{asRow}, a depth in words, {FilledRulebook.InsteadOfDepthExpected}",
            { Demand: RetentionFactor } or { Subject: Subject.Retention, Demand: UnknownCell } => RetentionExpected,
            _ => asRow,
        };

    private static InputProblem Problem(Table table, WorksheetLine line, string field, string found, string expected) =>
        new(table.Name, line.Line, line.Key, field, found, expected);
}

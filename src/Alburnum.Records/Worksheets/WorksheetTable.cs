using Alburnum.Records.Facts;
using Alburnum.Records.Tables;

namespace Alburnum.Records.Worksheets;

/// <summary>What a person wrote beside one cell of a rulebook, from a printed copy of the code.</summary>
/// <param name="Line">Line of the table, from 1.</param>
/// <param name="Key">Key of the cell's row.</param>
/// <param name="Value">What the copy says; empty where it says what the rulebook does.</param>
/// <param name="Edition">Edition of the copy.</param>
/// <param name="Table">Table or clause.</param>
/// <param name="Page">Page; may be empty.</param>
/// <param name="Initials">Who read it.</param>
/// <param name="Date">When, YYYY-MM-DD.</param>
public sealed record WorksheetLine(
    int Line,
    string Key,
    string Value,
    string Edition,
    string Table,
    string Page,
    string Initials,
    string Date
);

/// <summary>Reads a worksheet that was filled in; lines that nobody filled in are passed over.</summary>
public static class WorksheetTable
{
    private const string KeyColumn = "key";
    private const string ValueColumn = "value";

    /// <summary>Columns that say what the cell is, in their order.</summary>
    public static IReadOnlyList<string> Asked { get; } = ["asked_by", KeyColumn, "subject", "when", "now", "standing"];

    /// <summary>Columns to fill in, in their order.</summary>
    public static IReadOnlyList<string> ToFillIn { get; } =
    [ValueColumn, "edition", "table", "page", "initials", "date"];

    /// <summary>Every line that was filled in.</summary>
    /// <param name="table">The table.</param>
    /// <param name="today">Today, where the reader is: no copy was read later.</param>
    /// <exception cref="InputRefusedException">A column is not a worksheet's, or a line is filled in by half.</exception>
    public static IReadOnlyList<WorksheetLine> Read(Table table, DateOnly today)
    {
        var problems = new List<InputProblem>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var lines = TableLine
            .ReadAll(
                table,
                [KeyColumn, .. ToFillIn],
                [.. Asked.Where(column => column != KeyColumn)],
                problems,
                line => ToFillIn.Any(column => line.Text(column).Length > 0) ? Filled(line, seen, today) : null
            )
            .OfType<WorksheetLine>()
            .ToList();
        return problems.Count == 0 ? lines : throw new InputRefusedException(problems);
    }

    private static WorksheetLine Filled(TableLine line, Dictionary<string, int> seen, DateOnly today)
    {
        var date = line.RequiredText("date");
        if (date.Length > 0 && DateText.Read(date) is null)
            line.Refuse("date", $"\"{date}\"", DateText.Expected);
        else if (date.Length > 0 && DateText.Read(date) > today)
            line.Refuse("date", date, DateText.NotAfter(today));
        return new(
            line.Line,
            line.OwnText(KeyColumn, seen, "cell"),
            line.Text(ValueColumn),
            line.RequiredText("edition"),
            line.RequiredText("table"),
            line.Text("page"),
            line.RequiredText("initials"),
            date
        );
    }
}

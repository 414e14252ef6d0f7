using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Alburnum.Records.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Worksheets;

/// <summary>Writes what a person read in a copy of a code as a rulebook that is based on one that ships.</summary>
public static partial class FilledRulebook
{
    private static readonly (Subject Subject, string Field, string Value)[] Written =
    [
        (Subject.UseClass, "useClass", "is"),
        (Subject.Life, "life", "years"),
        (Subject.Penetration, "penetration", "require"),
        (Subject.Retention, "retention", "factor"),
        (Subject.Moisture, "moisture", "maxPercent"),
        (Subject.Acceptance, "acceptance", "aqlPercent"),
    ];

    /// <summary>The file's text.</summary>
    /// <param name="basis">The rulebook that ships.</param>
    /// <param name="cells">The rows, each with what was written beside it, or beside the analytical zone that it names.</param>
    public static string Write(Rulebook basis, IReadOnlyList<(Row Row, WorksheetLine Line)> cells)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(cells);
        var text = new StringBuilder().Append("basedOn: ").Append(basis.Name).Append('\n');
        foreach (var (subject, field, value) in Written)
        {
            var rows = cells.Where(cell => cell.Row.Subject == subject && cell.Line.Value.Length > 0).ToList();
            if (rows.Count == 0)
                continue;
            text.Append(field).Append(":\n");
            foreach (var (row, line) in rows)
                Append(text, basis, row, line, IsAmount(row, line) ? "amount" : value);
        }
        var confirmed = cells.Where(cell => cell.Line.Value.Length == 0).ToList();
        if (confirmed.Count > 0)
            text.Append("confirmed:\n");
        foreach (var (_, line) in confirmed)
        {
            text.Append("  - { key: ")
                .Append(YamlText.Quoted(line.Key))
                .Append(", edition: ")
                .Append(YamlText.Quoted(line.Edition));
            text.Append(", table: ").Append(YamlText.Quoted(line.Table));
            if (line.Page.Length > 0)
                text.Append(", page: ").Append(YamlText.Quoted(line.Page));
            text.Append(", initials: ").Append(YamlText.Quoted(line.Initials)).Append(", date: ").Append(line.Date);
            text.Append(" }\n");
        }
        return text.ToString();
    }

    /// <summary>What a penetration's cell may hold where the copy asks for no depth, for messages.</summary>
    public const string InsteadOfDepthExpected =
        "\"not permitted\", \"none needed\" or \"not covered\", with a colon and why where the copy says it";

    /// <summary>True where a value says in a word that the code permits no such timber, needs no treatment or does not cover it, and not why.</summary>
    /// <param name="row">The row.</param>
    /// <param name="value">The value.</param>
    public static bool IsWordAlone(Row row, string value)
    {
        ArgumentNullException.ThrowIfNull(row);
        return InsteadOfDepth(row, value) is (_, "");
    }

    // The field of the row, and why, where the copy asks for no depth; null where it asks for one.
    private static (string Field, string Why)? InsteadOfDepth(Row row, string value)
    {
        if (row.Subject != Subject.Penetration || WithoutDepth().Match(value) is not { Success: true } found)
            return null;
        var field = found.Groups["word"].Value.ToUpperInvariant() switch
        {
            "NOT PERMITTED" => "notPermitted",
            "NOT COVERED" => "outsideScope",
            _ => "notNeeded",
        };
        return (field, found.Groups["why"].Value);
    }

    [GeneratedRegex(
        "^(?<word>not permitted|not covered|not needed|none needed|no preservative required)(?:[:;,.] ?(?<why>.*))?$",
        RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex WithoutDepth();

    // A retention is a multiple of the critical value, or an amount with its unit.
    private static bool IsAmount(Row row, WorksheetLine line) =>
        row.Subject == Subject.Retention && (row.Demand is FixedRetention || line.Value.Any(char.IsAsciiLetter));

    private static void Append(StringBuilder text, Rulebook basis, Row row, WorksheetLine line, string value)
    {
        text.Append("  - key: ").Append(YamlText.Quoted(row.Key)).Append('\n');
        if (row.When.Count > 0)
            text.Append("    when: { ").AppendJoin(", ", row.When.Select(When)).Append(" }\n");
        var place = ReadCopy.Place(line.Table, line.Page);
        // Where the copy gives no reason, its place stands for one.
        var (field, says) = InsteadOfDepth(row, line.Value) is { } instead
            ? (instead.Field, instead.Why.Length > 0 ? instead.Why : $"{basis.Document}, {line.Edition}, {place}.")
            : (value, line.Value);
        text.Append("    ").Append(field).Append(": ").Append(YamlText.Quoted(says)).Append('\n');
        if (row.Overrides.Count > 0)
            text.Append("    exceptionTo: [").AppendJoin(", ", row.Overrides.Select(YamlText.Quoted)).Append("]\n");
        text.Append("    source: { document: ").Append(YamlText.Quoted(basis.Document));
        text.Append(", edition: ")
            .Append(YamlText.Quoted(line.Edition))
            .Append(", place: ")
            .Append(YamlText.Quoted(place));
        text.Append(", howRead: copy, note: ").Append(YamlText.Quoted($"{line.Initials}, {line.Date}")).Append(" }\n");
        text.Append("    standing: published\n");
    }

    private static string When(Condition condition) =>
        condition switch
        {
            OneOf words => $"{words.Field.Key()}: [{string.Join(", ", words.Allowed.Select(YamlText.Quoted))}]",
            Between range when range.Low.Equals(range.High) => $"{range.Field.Key()}: {Number(range.Low)}",
            Between range => $"{range.Field.Key()}: {{ {string.Join(", ", Ends(range))} }}",
            _ => throw new ArgumentOutOfRangeException(nameof(condition), condition, "Not a condition."),
        };

    private static IEnumerable<string> Ends(Between range)
    {
        if (double.IsFinite(range.Low))
            yield return $"{(range.IncludesLow ? "from" : "above")}: {Number(range.Low)}";
        if (double.IsFinite(range.High))
            yield return $"{(range.IncludesHigh ? "upTo" : "below")}: {Number(range.High)}";
    }

    private static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);
}

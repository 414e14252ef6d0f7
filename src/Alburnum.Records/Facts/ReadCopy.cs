using System.Text.RegularExpressions;

namespace Alburnum.Records.Facts;

/// <summary>A copy of a code that a person read: its edition, and the place in it.</summary>
public static partial class ReadCopy
{
    /// <summary>What was expected in place of another edition, for messages; null where the copy is of the right one.</summary>
    /// <param name="rulebook">Edition of the rulebook, or of the document that a zone comes from; where it knows none, any may be named.</param>
    /// <param name="copy">Edition of the copy: "2014" is enough for "2011+A1:2014".</param>
    public static string? EditionFault(string rulebook, string copy)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        return rulebook.Any(char.IsAsciiDigit) && !rulebook.Contains(copy, StringComparison.OrdinalIgnoreCase)
            ? $"{rulebook}, the edition of this rulebook; for another edition, a row of your own"
            : null;
    }

    /// <summary>The place: "4" is table 4, "5.3" stays the clause that it is.</summary>
    internal static string Place(string table, string page)
    {
        var named = Bare().IsMatch(table) ? $"table {table}" : table;
        return page.Length > 0 ? $"{named}, page {page}" : named;
    }

    [GeneratedRegex("^[0-9]{1,3}[A-Za-z]?$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bare();
}

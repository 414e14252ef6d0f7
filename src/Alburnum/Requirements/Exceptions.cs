namespace Alburnum.Requirements;

/// <summary>Something wrong with the keys of a rulebook's rows or with what they override.</summary>
/// <param name="Row">The row at fault.</param>
/// <param name="ConcernsKey">True where the row's own key is at fault, false where what it overrides is.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What should stand there.</param>
public sealed record ExceptionFault(Row Row, bool ConcernsKey, string Found, string Expected)
{
    /// <summary>The fault as one sentence.</summary>
    public string InWords => $"Row \"{Row.Key}\": found {Found}, expected {Expected}.";
}

/// <summary>Rows as exceptions to other rows: every name must lead somewhere, and no chain may close on itself.</summary>
public static class Exceptions
{
    /// <summary>The first fault; null where there is none.</summary>
    public static ExceptionFault? FirstFault(IReadOnlyList<Row> rows) => Faults(rows).FirstOrDefault();

    /// <summary>Every fault, in the order of the rows.</summary>
    public static IEnumerable<ExceptionFault> Faults(IReadOnlyList<Row> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var byKey = new Dictionary<string, Row>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (!byKey.TryAdd(row.Key, row))
                yield return new ExceptionFault(row, true, "a key used before", "a key of its own");
        }
        foreach (var row in rows)
        {
            foreach (var key in row.Overrides)
            {
                if (!byKey.TryGetValue(key, out var general) || general.Subject != row.Subject)
                    yield return new ExceptionFault(
                        row,
                        false,
                        $"an exception to \"{key}\"",
                        "the key of a row about the same subject"
                    );
            }
            if (ReachesItself(row, byKey))
                yield return new ExceptionFault(
                    row,
                    false,
                    "a row that is an exception to itself",
                    "exceptions that end at a general row"
                );
        }
    }

    private static bool ReachesItself(Row start, Dictionary<string, Row> byKey)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var waiting = new Queue<string>(start.Overrides);
        while (waiting.TryDequeue(out var key))
        {
            if (string.Equals(key, start.Key, StringComparison.Ordinal))
                return true;
            if (!seen.Add(key) || !byKey.TryGetValue(key, out var row))
                continue;
            foreach (var next in row.Overrides)
                waiting.Enqueue(next);
        }
        return false;
    }
}

namespace Alburnum.Requirements;

/// <summary>Something wrong with the keys of a rulebook's rows or with what they override.</summary>
/// <param name="Row">The row at fault.</param>
public abstract record ExceptionFault(Row Row);

/// <summary>Another row before it has the same key.</summary>
/// <param name="Row">The row at fault.</param>
public sealed record KeyUsedBefore(Row Row) : ExceptionFault(Row);

/// <summary>The row is an exception to a key that no row about the same subject has.</summary>
/// <param name="Row">The row at fault.</param>
/// <param name="Key">The key.</param>
public sealed record ExceptionToNoRow(Row Row, string Key) : ExceptionFault(Row);

/// <summary>The row is an exception to itself, over one row or several.</summary>
/// <param name="Row">The row at fault.</param>
public sealed record ExceptionToItself(Row Row) : ExceptionFault(Row);

/// <summary>Rows as exceptions to other rows: every name must lead somewhere, and no chain may close on itself.</summary>
public static class Exceptions
{
    /// <summary>Every fault, in the order of the rows.</summary>
    public static IEnumerable<ExceptionFault> Faults(IReadOnlyList<Row> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var byKey = new Dictionary<string, Row>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (!byKey.TryAdd(row.Key, row))
                yield return new KeyUsedBefore(row);
        }
        foreach (var row in rows)
        {
            foreach (var key in row.Overrides)
            {
                if (!byKey.TryGetValue(key, out var general) || general.Subject != row.Subject)
                    yield return new ExceptionToNoRow(row, key);
            }
            if (ReachesItself(row, byKey))
                yield return new ExceptionToItself(row);
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

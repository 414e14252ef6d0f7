using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>Whether the tables of a store are those that the program makes, and hold what it writes there.</summary>
internal static class StoreTables
{
    /// <summary>What is missing, foreign or cannot be read, in words; empty where nothing is.</summary>
    public static async Task<IReadOnlyList<string>> TroublesAsync(StoreContext context, CancellationToken stop)
    {
        var shape = await OfShapeAsync(context, stop);
        return shape.Count > 0 ? shape : await OfRowsAsync(context, stop);
    }

    private static async Task<IReadOnlyList<string>> OfShapeAsync(StoreContext context, CancellationToken stop)
    {
        await using var connection = new SqliteConnection("Data Source=:memory:");
        await connection.OpenAsync(stop);
        await using var whole = new StoreContext(
            new DbContextOptionsBuilder<StoreContext>().UseSqlite(connection).Options
        );
        await whole.Database.EnsureCreatedAsync(stop);
        var (wanted, found) = (await ShapeAsync(whole, stop), await ShapeAsync(context, stop));
        return
        [
            .. wanted.Except(found, StringComparer.Ordinal).Select(missing => $"the {missing} is missing"),
            .. found
                .Except(wanted, StringComparer.Ordinal)
                .Where(foreign =>
                    foreign.StartsWith("trigger ", StringComparison.Ordinal)
                    || foreign.StartsWith("view ", StringComparison.Ordinal)
                )
                .Select(foreign => $"the {foreign} is not of this program's making"),
        ];
    }

    // Tables, columns, triggers and views by kind and name.
    private static async Task<HashSet<string>> ShapeAsync(StoreContext context, CancellationToken stop) =>
        [
            .. await context
                .Database.SqlQueryRaw<string>(
                    """
                    SELECT type || ' ' || name AS Value FROM sqlite_master
                    WHERE type IN ('table', 'trigger', 'view') AND name NOT LIKE 'sqlite_%'
                    UNION ALL
                    SELECT 'column ' || whole.name || '.' || part.name
                    FROM sqlite_master AS whole JOIN pragma_table_info(whole.name) AS part
                    WHERE whole.type = 'table' AND whole.name NOT LIKE 'sqlite_%'
                    """
                )
                .ToListAsync(stop),
        ];

    // Every row is read as what it is: SQLite keeps any value in any column.
    private static async Task<IReadOnlyList<string>> OfRowsAsync(StoreContext context, CancellationToken stop)
    {
        var troubles = new List<string>();
        await ReadAsync("run", context.Runs, run => run.CaseNumber);
        await ReadAsync("ledger", context.Ledger, entry => entry.CaseNumber + 1);
        return troubles;

        // SQLite reads 0 for a text in place of a number.
        async Task ReadAsync<T>(string table, IQueryable<T> rows, Func<T, int> number)
            where T : class
        {
            try
            {
                await foreach (var row in rows.AsNoTracking().AsAsyncEnumerable().WithCancellation(stop))
                    if (number(row) < 1)
                        throw new FormatException();
            }
            catch (Exception broken) when (StoreTrouble.IsUnreadable(broken))
            {
                troubles.Add($"the table {table} holds a value that cannot be read");
            }
        }
    }
}

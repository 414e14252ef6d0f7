using System.Text.Json;
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
        return shape.Count > 0 ? shape : [.. await OfRunsAsync(context, stop), .. await OfLedgerAsync(context, stop)];
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

    private static async Task<IReadOnlyList<string>> OfRunsAsync(StoreContext context, CancellationToken stop)
    {
        var troubles = new List<string>();
        try
        {
            var runs = context.Runs.AsNoTracking().Include(run => run.Photographs).AsAsyncEnumerable();
            await foreach (var run in runs.WithCancellation(stop))
            {
                // SQLite reads 0 for a text in place of a number.
                if (run.CaseNumber < 1)
                    troubles.Add($"run {run.Id} belongs to no case");
                else if (PhotographsOf(run.Document) is not { } named)
                    troubles.Add($"the document of run {run.Id} cannot be read");
                else if (named.Except(run.Photographs.Select(photograph => photograph.Sha256), StringComparer.Ordinal).Any())
                    troubles.Add($"run {run.Id} has lost a photograph that its document rests on");
            }
        }
        catch (Exception broken) when (StoreTrouble.IsUnreadable(broken))
        {
            troubles.Add("the table run holds a value that cannot be read");
        }
        return troubles;
    }

    // SHA-256 of each photograph that the pieces of a document were read from; null where it is no document.
    private static IReadOnlyList<string>? PhotographsOf(string document)
    {
        try
        {
            using var json = JsonDocument.Parse(document);
            return
            [
                .. json
                    .RootElement.GetProperty("pieces")
                    .EnumerateArray()
                    .Select(piece => piece.GetProperty("reading").GetProperty("sha256").GetString())
                    .OfType<string>(),
            ];
        }
        catch (Exception broken) when (broken is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return null;
        }
    }

    private static async Task<IReadOnlyList<string>> OfLedgerAsync(StoreContext context, CancellationToken stop)
    {
        try
        {
            var entries = await context.Ledger.AsNoTracking().OrderBy(entry => entry.Number).ToListAsync(stop);
            return entries.Index().Any(each => each.Item.Number != each.Index + 1)
                || (entries.Count == 0 && await context.Runs.AnyAsync(stop))
                ? ["entries of the ledger are missing"]
                : [];
        }
        catch (Exception broken) when (StoreTrouble.IsUnreadable(broken))
        {
            return ["the table ledger holds a value that cannot be read"];
        }
    }
}

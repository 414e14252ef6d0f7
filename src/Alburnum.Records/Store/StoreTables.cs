using Alburnum.Records.Ledger;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>Whether the tables of a store are those that the program makes, and hold what its ledger says.</summary>
internal static class StoreTables
{
    // The migrations' own, which a database that is made without them lacks.
    private const string Bookkeeping = "table __EFMigrationsHistory";

    /// <summary>More runs than any store will have.</summary>
    private const long MostRuns = int.MaxValue;

    /// <summary>What is damaged, missing, foreign or otherwise than it was entered; empty where nothing is.</summary>
    /// <param name="context">The tables.</param>
    /// <param name="place">Where they are, for messages.</param>
    /// <param name="stop">Signalled to give up.</param>
    public static async Task<IReadOnlyList<InputProblem>> FaultsAsync(
        StoreContext context,
        string place,
        CancellationToken stop
    )
    {
        var damages = await DamagesAsync(context, stop);
        if (damages.Count > 0)
            return [.. damages.Select(damage => Damaged(place, damage))];
        var shape = await FaultsOfShapeAsync(context, place, stop);
        return shape.Count > 0 ? shape : await FaultsOfRowsAsync(context, place, stop);
    }

    /// <summary>Tables and columns that are missing, and what another program planted; empty where nothing is.</summary>
    /// <inheritdoc cref="FaultsAsync"/>
    public static async Task<IReadOnlyList<InputProblem>> FaultsOfShapeAsync(
        StoreContext context,
        string place,
        CancellationToken stop
    )
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
            .. wanted
                .Except(found, StringComparer.Ordinal)
                .Where(missing => HasTable(found, missing))
                .Select(missing => Damaged(place, $"the {missing} is missing")),
            .. found
                .Except(wanted.Append(Bookkeeping), StringComparer.Ordinal)
                .Select(foreign => Damaged(place, $"the {foreign} is not of this program's making")),
        ];
    }

    // A table that is missing is told once, and not column by column.
    private static bool HasTable(IReadOnlySet<string> found, string missing) =>
        missing.Split(' ', '.') is not ["column", var table, ..] || found.Contains($"table {table}");

    // What SQLite itself finds.
    private static async Task<IReadOnlyList<string>> DamagesAsync(StoreContext context, CancellationToken stop)
    {
        var damages = await context
            .Database.SqlQueryRaw<string>("SELECT integrity_check AS Value FROM pragma_integrity_check")
            .ToListAsync(stop);
        var loose = await context
            .Database.SqlQueryRaw<string>("SELECT DISTINCT \"table\" AS Value FROM pragma_foreign_key_check")
            .ToListAsync(stop);
        var counted = await context
            .Database.SqlQueryRaw<string>(
                "SELECT name AS Value FROM sqlite_sequence WHERE typeof(seq) <> 'integer' OR seq NOT BETWEEN 0 AND {0}",
                MostRuns
            )
            .ToListAsync(stop);
        return
        [
            .. damages.Where(damage => damage != "ok"),
            .. loose.Select(table => $"rows of the table {table} that lead nowhere"),
            .. counted.Select(table => $"the counter of the table {table} says what no store comes to"),
        ];
    }

    // Tables, columns, indexes, triggers and views by kind and name.
    private static async Task<HashSet<string>> ShapeAsync(StoreContext context, CancellationToken stop) =>
        [
            .. await context
                .Database.SqlQueryRaw<string>(
                    """
                    SELECT type || ' ' || name AS Value FROM sqlite_master WHERE name NOT LIKE 'sqlite\_%' ESCAPE '\'
                    UNION ALL
                    SELECT 'column ' || whole.name || '.' || part.name
                    FROM sqlite_master AS whole JOIN pragma_table_info(whole.name) AS part
                    WHERE whole.type = 'table' AND whole.name NOT LIKE 'sqlite\_%' ESCAPE '\' AND whole.name <> '__EFMigrationsHistory'
                    """
                )
                .ToListAsync(stop),
        ];

    // SQLite keeps any value in any column: every row is read, and held against the ledger.
    private static async Task<IReadOnlyList<InputProblem>> FaultsOfRowsAsync(
        StoreContext context,
        string place,
        CancellationToken stop
    )
    {
        try
        {
            var kept = await new LedgerTable(context).EntriesAsync(onlyCase: null, stop);
            var tables = await HeldFiles.InTablesAsync(context, onlyCase: null, each => each.Sum, stop);
            return LedgerCheck.OfStore(place, kept, HeldFiles.SumsByName(tables)).Faults;
        }
        catch (Exception broken) when (StoreTrouble.IsUnreadable(broken))
        {
            return [Damaged(place, "a table holds a value that cannot be read")];
        }
    }

    private static InputProblem Damaged(string place, string damage) =>
        new(place, 0, "", "store", $"a damaged store: {damage}", "whole tables");
}

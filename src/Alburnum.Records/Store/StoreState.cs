using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>What a database holds, as far as this program is concerned.</summary>
internal abstract record StoreState
{
    /// <summary>Version of the stores that this program makes: how many migrations there are.</summary>
    public static int ThisVersion { get; } = Migrations(new DesignTime().CreateDbContext([])).Count;

    /// <summary>Looks at a database. Nothing is made or changed.</summary>
    public static StoreState Of(StoreContext context)
    {
        // Tables of the migrations' own bookkeeping: a store killed while it was being made has these and nothing else.
        const string History = "__EFMigrationsHistory";
        string[] bookkeeping = [History, "__EFMigrationsLock"];
        var tables = context
            .Database.SqlQueryRaw<string>(
                "SELECT name AS Value FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'"
            )
            .ToList();
        List<string> applied = tables.Contains(History) ? [.. context.Database.GetAppliedMigrations()] : [];
        if (applied.Count == 0 && tables.TrueForAll(table => bookkeeping.Contains(table, StringComparer.Ordinal)))
            return new OfVersion(0);
        var known = Migrations(context);
        // Tables of ours must not come to stand in a stranger's database.
        return !applied.Exists(id => known.Contains(id, StringComparer.Ordinal)) ? new OfAnotherProgram()
            : applied.TrueForAll(id => known.Contains(id, StringComparer.Ordinal)) ? new OfVersion(applied.Count)
            : new OfNewerVersion();
    }

    /// <summary>The migrations of this version, the first one first.</summary>
    public static IReadOnlyList<string> Migrations(StoreContext context) => [.. context.Database.GetMigrations()];
}

/// <summary>A store of this version or an earlier one.</summary>
/// <param name="Number">How many migrations it has; 0 for a new file, or one whose making was cut off.</param>
internal sealed record OfVersion(int Number) : StoreState
{
    public bool IsThisVersion => Number == ThisVersion;
}

/// <summary>A store made by a newer version of this program.</summary>
internal sealed record OfNewerVersion : StoreState;

/// <summary>Tables that are not ours.</summary>
internal sealed record OfAnotherProgram : StoreState;

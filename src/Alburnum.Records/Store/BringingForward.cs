using System.Security.Cryptography;
using Alburnum.Records.Ledger;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace Alburnum.Records.Store;

/// <summary>
/// Makes a store, or brings it forward from an earlier version. It happens in one transaction: killed anywhere, the store is as it
/// was before, and nothing is locked. (The migrator's own lock is a row that outlives its program, so the migrator only writes the
/// script here.)
/// </summary>
/// <param name="file">The store's database file.</param>
/// <param name="by">Who begins its ledger.</param>
internal sealed class BringingForward(SqliteFile file, Person by)
{
    /// <summary>The last version that kept photographs in the database.</summary>
    private const int PhotographsInTables = 2;

    /// <summary>The first version with a ledger.</summary>
    private const int WithLedger = 5;

    /// <summary>Does it, unless another program did so meanwhile.</summary>
    public async Task RunAsync(CancellationToken stop)
    {
        using var context = file.Open(SqliteOpenMode.ReadWrite);
        await using var transaction = await file.BeginAsync(context, stop);
        if (StoreState.Of(context) is not OfVersion { IsThisVersion: false, Number: var from })
            return;
        var copy = from > 0 ? Copy(from) : "";
        if (from is > 0 and <= PhotographsInTables)
            await MovePhotographsOutAsync(context, stop);
        var script = context
            .GetService<IMigrator>()
            .GenerateScript(
                from == 0 ? null : StoreState.Migrations(context)[from - 1],
                options: MigrationsSqlGenerationOptions.NoTransactions
            );
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = transaction.GetDbTransaction();
        command.CommandText = $"{script}\nDROP TABLE IF EXISTS \"__EFMigrationsLock\";";
        await command.ExecuteNonQueryAsync(stop);
        if (from < WithLedger)
            await new LedgerTable(context).BeginAsync(DateTime.UtcNow, by, stop);
        await file.CommitAsync(transaction, stop);
        if (from == 0)
            return;
        SqliteFile.WriteAnew(context);
        file.Say(
            $"{file.Path} is upgraded from version {from} to {StoreState.ThisVersion}; the old one is kept as {copy}."
        );
    }

    // Both are read as one: nobody else writes while the transaction lasts.
    private string Copy(int version)
    {
        var part = $"{file.Path}.version-{version}.part";
        File.Delete(part);
        file.CopyTo(part);
        var stem = Path.ChangeExtension(file.Path, null);
        for (var nth = 1; ; nth++)
        {
            var name = $"{stem}.version-{version}{(nth == 1 ? "" : $"-{nth}")}{Path.GetExtension(file.Path)}";
            if (File.Exists(name) && !Hash(name).SequenceEqual(Hash(part)))
                continue;
            DurableFile.Name(part, name);
            return name;
        }
    }

    // A damaged photograph is moved as it is: whoever reads it gets the refusal, as before.
    private async Task MovePhotographsOutAsync(StoreContext context, CancellationToken stop)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
        command.CommandText = "SELECT Sha256, Bytes FROM photograph";
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
            await file.Photographs.WriteAsync(rows.GetString(0), await rows.GetFieldValueAsync<byte[]>(1, stop), stop);
    }

    private static byte[] Hash(string path)
    {
        using var stream = File.OpenRead(path);
        return SHA256.HashData(stream);
    }
}

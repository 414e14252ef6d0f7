using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>A case store in one database file, with its photographs in a folder beside it.</summary>
/// <param name="file">The database file; it is of this version.</param>
/// <param name="mayKeep">False for a store opened only for viewing.</param>
internal sealed class SqliteStore(SqliteFile file, bool mayKeep) : ICaseStore
{
    /// <inheritdoc/>
    public string Place => file.Path;

    /// <inheritdoc/>
    public async Task AddAsync(CaseRecord run, Func<CancellationToken, Task> beforeKept, CancellationToken stop)
    {
        if (!mayKeep)
            throw file.Refused("a store opened only for viewing", "a store opened to keep runs");
        var photographs = run.Photographs.DistinctBy(each => each.Sha256, StringComparer.Ordinal).ToList();
        foreach (var photograph in photographs)
            await file.Photographs.WriteAsync(photograph.Sha256, photograph.Bytes, stop);
        await file.RefusingAsync(async () =>
        {
            using var context = file.Open(SqliteOpenMode.ReadWrite);
            await using var transaction = await file.BeginAsync(context, stop);
            context.Runs.Add(await RowAsync(context, run, photographs, stop));
            await context.SaveChangesAsync(stop);
            await beforeKept(stop);
            // The reports are written: what is left is not given up.
            await file.CommitAsync(transaction, CancellationToken.None);
            return true;
        });
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<CaseEntry>> ListAsync(CancellationToken stop)
    {
        var runs = await ReadAsync(
            context =>
                context
                    .Runs.Select(run => new
                    {
                        run.Id,
                        run.Reference,
                        run.Title,
                        run.Client,
                        run.RunAt,
                        run.Verdict,
                    })
                    .ToListAsync(stop),
            stop
        );
        return
        [
            .. runs.GroupBy(run => run.Reference, StringComparer.Ordinal)
                .Select(group => (Last: group.MaxBy(run => run.Id)!, Runs: group.Count()))
                .OrderByDescending(entry => entry.Last.Id)
                .Select(entry => new CaseEntry(
                    entry.Last.Reference,
                    entry.Last.Title,
                    entry.Last.Client,
                    entry.Last.RunAt,
                    VerdictKeys.Read(entry.Last.Verdict),
                    entry.Runs
                )),
        ];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RunEntry>> RunsAsync(string reference, CancellationToken stop)
    {
        var runs = await ReadAsync(
            context =>
                context
                    .Runs.Where(run => run.Reference == reference)
                    .OrderBy(run => run.Id)
                    .Select(run => new { run.RunAt, run.Verdict })
                    .ToListAsync(stop),
            stop
        );
        return [.. runs.Select((run, i) => new RunEntry(i + 1, run.RunAt, VerdictKeys.Read(run.Verdict)))];
    }

    /// <inheritdoc/>
    public Task<KeptRun?> RunAsync(string reference, int? number, CancellationToken stop) =>
        ReadAsync(
            async context =>
            {
                var runs = context.Runs.Where(run => run.Reference == reference);
                var nth = number ?? await runs.CountAsync(stop);
                var row =
                    nth < 1
                        ? null
                        : await runs.Include(run => run.Papers)
                            .OrderBy(run => run.Id)
                            .Skip(nth - 1)
                            .FirstOrDefaultAsync(stop);
                return row is null
                    ? null
                    : new KeptRun(
                        nth,
                        row.Document,
                        [.. row.Papers.Select(paper => new KeptFile(paper.FileName, paper.Bytes))]
                    );
            },
            stop
        );

    /// <inheritdoc/>
    public async Task<Photograph?> PhotographAsync(string sha256, CancellationToken stop)
    {
        var row = await ReadAsync(
            context => context.Photographs.FirstOrDefaultAsync(photograph => photograph.Sha256 == sha256, stop),
            stop
        );
        return row is null ? null : await file.Photographs.ReadAsync(row.Sha256, row.FileName, stop);
    }

    private Task<T> ReadAsync<T>(Func<StoreContext, Task<T>> query, CancellationToken stop) =>
        file.RefusingAsync(() =>
            file.WaitAsync(
                async () =>
                {
                    // Whoever keeps also puts right what another program was killed in.
                    using var context = file.Open(mayKeep ? SqliteOpenMode.ReadWrite : SqliteOpenMode.ReadOnly);
                    context.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
                    return await query(context);
                },
                stop
            )
        );

    private static async Task<RunRow> RowAsync(
        StoreContext context,
        CaseRecord run,
        IReadOnlyList<Photograph> photographs,
        CancellationToken stop
    )
    {
        var row = new RunRow
        {
            Reference = run.Reference,
            Title = run.Title,
            Client = run.Client,
            RunAt = run.RunAt,
            Verdict = run.Verdict.Key(),
            Document = run.Document,
        };
        foreach (var photograph in photographs)
        {
            row.Photographs.Add(
                await context.Photographs.FindAsync([photograph.Sha256], stop)
                    ?? new PhotographRow { Sha256 = photograph.Sha256, FileName = photograph.FileName }
            );
        }
        row.Papers.AddRange(
            run.Files.Select(file => new PaperRow { FileName = file.FileName, Bytes = file.Bytes.ToArray() })
        );
        return row;
    }
}

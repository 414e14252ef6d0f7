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
    public async Task<KeptAs> AddAsync(CaseRecord run, FilesTogether reports, CancellationToken stop)
    {
        if (!mayKeep)
            throw file.Refused("a store opened only for viewing", "a store opened to keep runs");
        var photographs = run.Photographs.DistinctBy(each => each.Sha256, StringComparer.Ordinal).ToList();
        foreach (var photograph in photographs)
            await file.Photographs.WriteAsync(photograph.Sha256, photograph.Bytes, stop);
        using (reports)
        {
            // What takes room on the disk is written before anything is changed.
            await reports.PrepareAsync(stop);
            return await file.RefusingAsync(async () =>
            {
                using var context = file.Open(SqliteOpenMode.ReadWrite);
                await using var transaction = await file.BeginAsync(context, stop);
                var kept = await KeptAsAsync(context, run, photographs, stop);
                context.Runs.Add(await RowAsync(context, run, kept.CaseNumber, photographs, stop));
                await context.SaveChangesAsync(stop);
                reports.Place();
                try
                {
                    // The reports are written: what is left is not given up.
                    await file.CommitAsync(transaction, CancellationToken.None);
                }
                catch
                {
                    reports.TakeBack();
                    throw;
                }
                return kept;
            });
        }
    }

    /// <inheritdoc/>
    public async Task<CaseListing> ListAsync(int skipped, int most, CancellationToken stop)
    {
        var (cases, listed) = await ReadAsync(
            async context =>
                (
                    await context.Runs.Select(run => run.CaseNumber).Distinct().CountAsync(stop),
                    await context
                        .Runs.GroupBy(run => run.CaseNumber)
                        .Select(runs => new { LastId = runs.Max(run => run.Id), Runs = runs.Count() })
                        .OrderByDescending(each => each.LastId)
                        .Skip(skipped)
                        .Take(most)
                        .Join(
                            context.Runs,
                            each => each.LastId,
                            run => run.Id,
                            (each, run) =>
                                new
                                {
                                    run.Id,
                                    run.CaseNumber,
                                    run.Reference,
                                    run.Title,
                                    run.Client,
                                    run.RunAt,
                                    run.Verdict,
                                    each.Runs,
                                }
                        )
                        .OrderByDescending(each => each.Id)
                        .ToListAsync(stop)
                ),
            stop
        );
        return new(
            [
                .. listed.Select(each => new CaseEntry(
                    each.CaseNumber,
                    each.Reference,
                    each.Title,
                    each.Client,
                    each.RunAt,
                    VerdictKeys.Read(each.Verdict),
                    each.Runs
                )),
            ],
            cases
        );
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RunEntry>> RunsAsync(int caseNumber, CancellationToken stop)
    {
        var runs = await ReadAsync(
            context =>
                context
                    .Runs.Where(run => run.CaseNumber == caseNumber)
                    .OrderBy(run => run.Id)
                    .Select(run => new { run.RunAt, run.Verdict })
                    .ToListAsync(stop),
            stop
        );
        return [.. runs.Select((run, i) => new RunEntry(i + 1, run.RunAt, VerdictKeys.Read(run.Verdict)))];
    }

    /// <inheritdoc/>
    public Task<KeptRun?> RunAsync(int caseNumber, int? number, CancellationToken stop) =>
        ReadAsync(
            async context =>
            {
                var runs = context.Runs.Where(run => run.CaseNumber == caseNumber);
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
    public Task<Photograph?> PhotographAsync(string sha256, CancellationToken stop) =>
        NamedAsync(sha256, file.Photographs.ReadAsync, stop);

    /// <inheritdoc/>
    public Task<OpenPhotograph?> OpenPhotographAsync(string sha256, CancellationToken stop) =>
        NamedAsync(sha256, file.Photographs.OpenAsync, stop);

    private async Task<T?> NamedAsync<T>(
        string sha256,
        Func<string, string, CancellationToken, Task<T>> read,
        CancellationToken stop
    )
        where T : class
    {
        var row = await ReadAsync(
            context => context.Photographs.FirstOrDefaultAsync(photograph => photograph.Sha256 == sha256, stop),
            stop
        );
        return row is null ? null : await read(row.Sha256, row.FileName, stop);
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

    private static async Task<KeptAs> KeptAsAsync(
        StoreContext context,
        CaseRecord run,
        IReadOnlyList<Photograph> photographs,
        CancellationToken stop
    )
    {
        var runs = await context
            .Runs.Where(each =>
                run.CaseNumber == null ? each.Reference == run.Reference : each.CaseNumber == run.CaseNumber
            )
            .OrderByDescending(each => each.Id)
            .Select(each => new
            {
                each.Id,
                each.CaseNumber,
                each.Title,
                each.Client,
            })
            .ToListAsync(stop);
        List<string> hashes = [.. photographs.Select(photograph => photograph.Sha256)];
        foreach (var last in runs.DistinctBy(each => each.CaseNumber))
        {
            if (
                run.CaseNumber is not null
                || last.Title == run.Title
                || last.Client == run.Client
                || await context
                    .Runs.Where(each => each.CaseNumber == last.CaseNumber)
                    .AnyAsync(each => each.Photographs.Any(one => hashes.Contains(one.Sha256)), stop)
            )
                return new(
                    last.CaseNumber,
                    new(last.CaseNumber, last.Title, last.Client),
                    await context.Runs.Where(each => each.Id == last.Id).Select(each => each.Document).FirstAsync(stop),
                    Namesake: null
                );
        }
        return new(
            1 + (await context.Runs.MaxAsync(each => (int?)each.CaseNumber, stop) ?? 0),
            Before: null,
            DocumentBefore: null,
            runs.Count == 0 ? null : new(runs[0].CaseNumber, runs[0].Title, runs[0].Client)
        );
    }

    private static async Task<RunRow> RowAsync(
        StoreContext context,
        CaseRecord run,
        int caseNumber,
        IReadOnlyList<Photograph> photographs,
        CancellationToken stop
    )
    {
        var row = new RunRow
        {
            CaseNumber = caseNumber,
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

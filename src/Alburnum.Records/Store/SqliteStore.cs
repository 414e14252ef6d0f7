using System.Data;
using System.Globalization;
using Alburnum.Records.Ledger;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>A case store in one database file, with its photographs in a folder beside it.</summary>
/// <param name="file">The database file; it is of this version.</param>
/// <param name="by">Who does what is done through it; null for a store opened only for viewing.</param>
internal sealed class SqliteStore(SqliteFile file, Person? by) : ICaseStore
{
    /// <inheritdoc/>
    public string Place => file.Path;

    /// <inheritdoc/>
    public async Task<KeptAs> AddAsync(CaseRecord run, FilesTogether reports, CancellationToken stop)
    {
        var keeper = Keeper();
        var photographs = run.Photographs.DistinctBy(each => each.Sha256, StringComparer.Ordinal).ToList();
        var note = await file.Photographs.NoteAsync([.. photographs.Select(each => each.Sha256)], stop);
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
                // A case that was deleted meanwhile may have taken them along.
                foreach (var photograph in photographs.Where(each => !file.Photographs.Has(each.Sha256)))
                    await file.Photographs.WriteAsync(photograph.Sha256, photograph.Bytes, stop);
                var row = await RowAsync(context, run, kept.CaseNumber, photographs, stop);
                context.Runs.Add(row);
                await context.SaveChangesAsync(stop);
                await EnterAsync(context, row, Account(run, keeper, reports), stop);
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
                PhotographFiles.Forget(note);
                return kept;
            });
        }
    }

    /// <inheritdoc/>
    public Task<CaseListing> ListAsync(int skipped, int most, CancellationToken stop) =>
        ReadAsync(
            async context =>
            {
                var listed = await context
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
                    .ToListAsync(stop);
                return new CaseListing(
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
                    await context.Runs.Select(run => run.CaseNumber).Distinct().CountAsync(stop)
                );
            },
            stop
        );

    /// <inheritdoc/>
    public Task<IReadOnlyList<RunEntry>> RunsAsync(int caseNumber, CancellationToken stop) =>
        ReadAsync<IReadOnlyList<RunEntry>>(
            async context =>
            {
                var runs = await context
                    .Runs.Where(run => run.CaseNumber == caseNumber)
                    .OrderBy(run => run.Id)
                    .Select(run => new { run.RunAt, run.Verdict })
                    .ToListAsync(stop);
                return [.. runs.Select((run, i) => new RunEntry(i + 1, run.RunAt, VerdictKeys.Read(run.Verdict)))];
            },
            stop
        );

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
    public Task<string?> StateAsync(int caseNumber, CancellationToken stop) =>
        ReadAsync(
            context =>
                context
                    .Ledger.Where(row => row.CaseNumber == caseNumber)
                    .OrderByDescending(row => row.Number)
                    .Select(row => row.Hash)
                    .FirstOrDefaultAsync(stop),
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

    /// <inheritdoc/>
    public async Task<int> CaseNumberAsync(string text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(text);
        var number = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var given) ? given : 0;
        var (isThere, named) = await ReadAsync(
            async context =>
                (
                    number > 0 && await context.Ledger.AnyAsync(row => row.CaseNumber == number, stop),
                    await context
                        .Runs.Where(run => run.Reference == text)
                        .Select(run => run.CaseNumber)
                        .Distinct()
                        .Order()
                        .ToListAsync(stop)
                ),
            stop
        );
        return isThere ? number
            : named.Count == 1 ? named[0]
            : throw file.Refused(
                named.Count == 0
                    ? $"no case {text}"
                    : $"{text} as the reference of the cases {string.Join(", ", named)}",
                "the number of a case, or a reference that one case alone has"
            );
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<LedgerEntry>> LedgerAsync(int caseNumber, CancellationToken stop)
    {
        var kept = await ReadAsync(context => new LedgerTable(context).EntriesAsync(caseNumber, stop), stop);
        return [.. kept.Select(LedgerJson.Entry).OfType<LedgerEntry>()];
    }

    /// <inheritdoc/>
    public async Task<LedgerFindings> VerifyAsync(string? notedHead, CancellationToken stop)
    {
        var (shape, kept, tables) = await ReadAsync(
            context =>
                AtOneMomentAsync(
                    context,
                    async () =>
                        (
                            await StoreTables.FaultsOfShapeAsync(context, file.Path, stop),
                            await new LedgerTable(context).EntriesAsync(onlyCase: null, stop),
                            await HeldFiles.InTablesAsync(context, onlyCase: null, each => each.Sum, stop)
                        ),
                    stop
                ),
            stop
        );
        var held = await HeldFiles.SumsAsync(tables, file.Photographs, stop);
        var found = LedgerCheck.OfStore(file.Path, kept, held).WithNotedHead(notedHead, kept, file.Path);
        return found with { Faults = [.. shape, .. found.Faults] };
    }

    /// <summary>Reads several things of the tables as they are at one moment.</summary>
    internal static async Task<T> AtOneMomentAsync<T>(StoreContext context, Func<Task<T>> read, CancellationToken stop)
    {
        // At this level the database begins to read without a claim to write.
        await using var moment = await context.Database.BeginTransactionAsync(IsolationLevel.ReadUncommitted, stop);
        return await read();
    }

    /// <inheritdoc/>
    public Task CorrectAsync(int caseNumber, int entry, string text, CancellationToken stop) =>
        ChangeAsync(
            async (context, keeper) =>
            {
                if (!await context.Ledger.AnyAsync(row => row.Number == entry && row.CaseNumber == caseNumber, stop))
                    throw file.Refused($"no entry {entry} of case {caseNumber}", "the number of one of its entries");
                await new LedgerTable(context).AppendAsync(
                    caseNumber,
                    DateTime.UtcNow,
                    keeper,
                    [new(LedgerAct.Corrected, entry.ToString(CultureInfo.InvariantCulture), Before: null, text)],
                    stop
                );
                return true;
            },
            _ => { },
            stop
        );

    /// <inheritdoc/>
    public async Task<Redaction> RedactAsync(
        Removal asked,
        string text,
        Func<KeptRun, Task<bool>> isReadable,
        CancellationToken stop
    )
    {
        for (var number = 1; await RunAsync(asked.CaseNumber, number, stop) is { } run; number++)
            if (await isReadable(run) && !await isReadable(Redacting.Without(run, text)))
                throw file.Refused(
                    $"\"{text}\", which also stands in words without which case {asked.CaseNumber} cannot be read any more",
                    "a longer text, such as the whole name"
                );
        return await ChangeAsync(
            (context, keeper) => new Redacting(context, file, asked, keeper).RunAsync(text, stop),
            Overwrite,
            stop
        );
    }

    /// <inheritdoc/>
    public async Task<CaseDeletion> DeleteCaseAsync(Removal asked, CancellationToken stop)
    {
        var (deletion, loose, note) = await ChangeAsync(
            async (context, keeper) =>
            {
                var (done, without) = await new Deleting(context, asked, keeper).RunAsync(stop);
                return (done, without, await file.Photographs.NoteAsync(without, stop));
            },
            Overwrite,
            stop
        );
        // Afterwards, so that no run is ever without its photographs; and alone, since another may be keeping one of them just now.
        await ChangeAsync(
            async (context, _) =>
            {
                foreach (var sha256 in loose)
                    if (!await context.Photographs.AnyAsync(row => row.Sha256 == sha256, CancellationToken.None))
                        file.Photographs.Remove(sha256);
                PhotographFiles.Forget(note);
                return true;
            },
            _ => { },
            CancellationToken.None
        );
        return deletion;
    }

    private async Task<T> ChangeAsync<T>(
        Func<StoreContext, Person, Task<T>> change,
        Action<StoreContext> afterwards,
        CancellationToken stop
    )
    {
        var keeper = Keeper();
        return await file.RefusingAsync(async () =>
        {
            using var context = file.Open(SqliteOpenMode.ReadWrite);
            await using var transaction = await file.BeginAsync(context, stop);
            var changed = await change(context, keeper);
            await file.CommitAsync(transaction, CancellationToken.None);
            afterwards(context);
            return changed;
        });
    }

    // What is left out of the tables may still stand in the file where nothing else was written since.
    private void Overwrite(StoreContext context)
    {
        if (!SqliteFile.WriteAnew(context))
            file.Say(
                $"{file.Path} could not be written anew: what was removed from the tables may still stand in the file itself until that is done."
            );
    }

    private Person Keeper() =>
        by ?? throw file.Refused("a store opened only for viewing", "a store opened to keep runs");

    private Task<T> ReadAsync<T>(Func<StoreContext, Task<T>> query, CancellationToken stop) =>
        file.RefusingAsync(() =>
            file.WaitAsync(
                async () =>
                {
                    // Whoever keeps also puts right what another program was killed in.
                    using var context = file.Open(by is null ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWrite);
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
            // The number of a case that was deleted stays its own.
            1
                + Math.Max(
                    await context.Runs.MaxAsync(each => (int?)each.CaseNumber, stop) ?? 0,
                    await context.Ledger.MaxAsync(each => (int?)each.CaseNumber, stop) ?? 0
                ),
            Before: null,
            DocumentBefore: null,
            runs.Count == 0 ? null : new(runs[0].CaseNumber, runs[0].Title, runs[0].Client)
        );
    }

    private static async Task EnterAsync(
        StoreContext context,
        RunRow row,
        RunAccount account,
        CancellationToken stop
    ) =>
        await new LedgerTable(context).AppendRunAsync(
            row,
            await context.Runs.CountAsync(each => each.CaseNumber == row.CaseNumber, stop),
            account,
            stop
        );

    private static RunAccount Account(CaseRecord run, Person keeper, FilesTogether reports) =>
        new(DateTime.UtcNow, keeper)
        {
            Inputs = run.Inputs,
            Photographs = run
                .Photographs.DistinctBy(each => (each.FileName, each.Sha256))
                .Select(each => new LedgerStatement(LedgerAct.PhotographTakenIn, each.FileName, each.Sha256)),
            Statements = run.Statements,
            Reports = reports.Sums,
        };

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

using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>Cases, their runs and their photographs, in one database file.</summary>
public sealed class CaseStore
{
    private readonly DbContextOptions<StoreContext> _options;

    private CaseStore(string path, DbContextOptions<StoreContext> options)
    {
        Path = path;
        _options = options;
    }

    /// <summary>The database file.</summary>
    public string Path { get; }

    /// <summary>Opens the store, making or upgrading the file where needed.</summary>
    /// <param name="path">Database file; its folder is made where it is missing.</param>
    /// <exception cref="InputRefusedException">The file cannot be opened, or is not a case store.</exception>
    public static CaseStore Open(string path)
    {
        try
        {
            var full = System.IO.Path.GetFullPath(path);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
            var connection = new SqliteConnectionStringBuilder { DataSource = full }.ToString();
            var options = new DbContextOptionsBuilder<StoreContext>().UseSqlite(connection).Options;
            using var context = new StoreContext(options);
            context.Database.Migrate();
            context.Database.ExecuteSqlRaw("PRAGMA journal_mode = WAL");
            return new CaseStore(full, options);
        }
        catch (Exception broken) when (broken is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new InputRefusedException(
                new InputProblem(path, 0, "", "store", broken.Message, "a case store, or a path where one can be made")
            );
        }
    }

    /// <summary>Where the store lives unless told otherwise: the user's data folder.</summary>
    public static string UsualPath() =>
        System.IO.Path.Combine(
            Environment.GetFolderPath(
                Environment.SpecialFolder.LocalApplicationData,
                Environment.SpecialFolderOption.Create
            ),
            "alburnum",
            "cases.db"
        );

    /// <summary>SHA-256 of a file's bytes, 64 lower-case hexadecimal digits.</summary>
    public static string Fingerprint(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Adds a run. Nothing is kept unless <paramref name="beforeKept"/> ends well.</summary>
    /// <param name="run">The run and its photographs.</param>
    /// <param name="beforeKept">What must succeed before the run is kept, for instance writing its reports.</param>
    /// <param name="stop">Signalled to give up; nothing is kept then.</param>
    public async Task AddAsync(CaseRecord run, Func<CancellationToken, Task> beforeKept, CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        await using var transaction = await context.Database.BeginTransactionAsync(stop);
        var row = new RunRow
        {
            Reference = run.Reference,
            Title = run.Title,
            Client = run.Client,
            RunAt = run.RunAt,
            Verdict = run.Verdict,
            Document = run.Document,
        };
        foreach (var photograph in run.Photographs.DistinctBy(photograph => photograph.Sha256, StringComparer.Ordinal))
        {
            row.Photographs.Add(
                await context.Photographs.FindAsync([photograph.Sha256], stop)
                    ?? new PhotographRow
                    {
                        Sha256 = photograph.Sha256,
                        FileName = photograph.FileName,
                        Bytes = photograph.Bytes.ToArray(),
                    }
            );
        }
        context.Runs.Add(row);
        await context.SaveChangesAsync(stop);
        await beforeKept(stop);
        await transaction.CommitAsync(stop);
    }

    /// <summary>Every case with its last run, the latest first.</summary>
    public async Task<IReadOnlyList<CaseEntry>> ListAsync(CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        var runs = await context
            .Runs.AsNoTracking()
            .Select(run => new
            {
                run.Id,
                run.Reference,
                run.Title,
                run.Client,
                run.RunAt,
                run.Verdict,
            })
            .ToListAsync(stop);
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
                    entry.Last.Verdict,
                    entry.Runs
                )),
        ];
    }

    /// <summary>The result document of a case's last run; null where the store has no such case.</summary>
    public async Task<string?> LastDocumentAsync(string reference, CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        return await context
            .Runs.AsNoTracking()
            .Where(run => run.Reference == reference)
            .OrderByDescending(run => run.Id)
            .Select(run => run.Document)
            .FirstOrDefaultAsync(stop);
    }

    /// <summary>A photograph by its SHA-256; null where the store has none.</summary>
    public async Task<PhotographRecord?> PhotographAsync(string sha256, CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        var row = await context
            .Photographs.AsNoTracking()
            .FirstOrDefaultAsync(photograph => photograph.Sha256 == sha256, stop);
        return row is null ? null : new PhotographRecord(row.Sha256, row.FileName, row.Bytes);
    }
}

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

    /// <summary>Refuses a path that cannot be a case store, before any work is done. Nothing is made.</summary>
    /// <exception cref="InputRefusedException">A folder stands there, or a file that is no case store.</exception>
    public static void Examine(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        if (Directory.Exists(full))
            throw Refused(path, "a folder");
        if (File.Exists(full))
            Open(path);
        for (var above = System.IO.Path.GetDirectoryName(full); above is not null; )
        {
            if (File.Exists(above))
                throw Refused(path, $"{above}, which is a file and not a folder");
            above = Directory.Exists(above) ? null : System.IO.Path.GetDirectoryName(above);
        }
    }

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
            if (IsOfAnotherProgram(context))
                throw Refused(path, "a database of another program");
            context.Database.Migrate();
            context.Database.ExecuteSqlRaw("PRAGMA journal_mode = WAL");
            return new CaseStore(full, options);
        }
        catch (SqliteException broken)
        {
            throw Refused(path, StoreTrouble.InWords(broken));
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(path, FileTrouble.InWords(broken));
        }
    }

    // Tables of ours must not come to stand in a stranger's database.
    private static bool IsOfAnotherProgram(StoreContext context) =>
        context
            .Database.SqlQueryRaw<int>(
                "SELECT count(*) > 0 AND sum(name = '__EFMigrationsHistory') = 0 AS Value FROM sqlite_master WHERE type = 'table'"
            )
            .AsEnumerable()
            .Single() == 1;

    private static InputRefusedException Refused(string path, string found) =>
        new(new InputProblem(path, 0, "", "store", found, "a case store, or a path where one can be made"));

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
        row.Papers.AddRange(
            run.Papers.Select(paper => new PaperRow { FileName = paper.FileName, Bytes = paper.Bytes.ToArray() })
        );
        context.Runs.Add(row);
        try
        {
            await context.SaveChangesAsync(stop);
        }
        catch (DbUpdateException broken) when (broken.InnerException is SqliteException cause)
        {
            throw Refused(Path, StoreTrouble.InWords(cause));
        }
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

    /// <summary>Every run of a case, the first one first; empty where the store has no such case.</summary>
    public async Task<IReadOnlyList<RunEntry>> RunsAsync(string reference, CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        var runs = await context
            .Runs.AsNoTracking()
            .Where(run => run.Reference == reference)
            .OrderBy(run => run.Id)
            .Select(run => new { run.RunAt, run.Verdict })
            .ToListAsync(stop);
        return [.. runs.Select((run, i) => new RunEntry(i + 1, run.RunAt, run.Verdict))];
    }

    /// <summary>A run of a case by its number, or its last; null where the store has none.</summary>
    /// <param name="reference">Reference of the case.</param>
    /// <param name="number">Number of the run, from 1; null for the last.</param>
    /// <param name="stop">Signalled to give up.</param>
    public async Task<KeptRun?> RunAsync(string reference, int? number, CancellationToken stop)
    {
        using var context = new StoreContext(_options);
        var runs = context.Runs.AsNoTracking().Where(run => run.Reference == reference);
        var count = number ?? await runs.CountAsync(stop);
        if (count < 1)
            return null;
        var row = await runs.Include(run => run.Papers)
            .OrderBy(run => run.Id)
            .Skip(count - 1)
            .FirstOrDefaultAsync(stop);
        return row is null
            ? null
            : new KeptRun(
                count,
                row.RunAt,
                row.Verdict,
                row.Document,
                [.. row.Papers.Select(paper => new PaperRecord(paper.FileName, paper.Bytes))]
            );
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

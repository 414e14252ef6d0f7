using System.Diagnostics;
using Alburnum.Records.Ledger;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Alburnum.Records.Store;

/// <summary>The database file of a case store: how it is opened, and how others at work on it are waited for.</summary>
/// <param name="path">The file as the user named it.</param>
/// <param name="say">Told in a line when another program has to be waited for, and when the store is brought forward.</param>
/// <param name="longestWait">How long another program is waited for.</param>
internal sealed class SqliteFile(string path, Action<string> say, TimeSpan longestWait)
{
    private readonly string _full = Whole(path);

    /// <summary>The file's whole path.</summary>
    public string Path => _full;

    /// <summary>The photographs beside it.</summary>
    public PhotographFiles Photographs { get; } = new(System.IO.Path.ChangeExtension(Whole(path), ".photographs"));

    /// <summary>False for a file that is there and may not be written.</summary>
    public bool MayBeWritten
    {
        get
        {
            if (!File.Exists(_full))
                return true;
            if (File.GetAttributes(_full).HasFlag(FileAttributes.ReadOnly))
                return false;
            try
            {
                using var opened = new FileStream(_full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
                return true;
            }
            catch (Exception broken) when (FileTrouble.Is(broken))
            {
                return false;
            }
        }
    }

    /// <summary>Says something to the user.</summary>
    public void Say(string line) => say(line);

    /// <summary>Opens the tables.</summary>
    public StoreContext Open(SqliteOpenMode mode) => Open(mode, _full);

    /// <summary>Opens the tables of a database.</summary>
    public static StoreContext Open(SqliteOpenMode mode, string source)
    {
        // Nothing is held open between two uses, so that the file can be copied, moved and put back while the program runs.
        var connection = new SqliteConnectionStringBuilder
        {
            DataSource = source,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = 1,
        };
        return new(new DbContextOptionsBuilder<StoreContext>().UseSqlite(connection.ToString()).Options);
    }

    /// <summary>Copies the tables as they are at one moment into a new database.</summary>
    public void CopyTo(string path)
    {
        OwnersOnly.MakeEmpty(path);
        using var source = Open(SqliteOpenMode.ReadOnly);
        using var target = Open(SqliteOpenMode.ReadWriteCreate, path);
        source.Database.OpenConnection();
        target.Database.OpenConnection();
        var copy = (SqliteConnection)target.Database.GetDbConnection();
        ((SqliteConnection)source.Database.GetDbConnection()).BackupDatabase(copy);
    }

    /// <summary>Refuses a path at which no new store can be made.</summary>
    public void RefuseUnlessFree()
    {
        RefuseFolders();
        if (File.Exists(_full))
            throw Refused("a file that is there already", "a path where there is none yet: no store is overwritten");
        RefuseUnlessPlaceTakesFiles();
    }

    /// <summary>Refuses a path that cannot be a case store. Nothing is changed, and nothing stays behind.</summary>
    public void Examine()
    {
        RefuseFolders();
        if (!File.Exists(_full))
        {
            RefuseUnlessPlaceTakesFiles();
            return;
        }
        if (!MayBeWritten)
            throw Refused("a file that may not be written to");
        try
        {
            RefuseUnlessOurs(Peek());
        }
        catch (SqliteException broken) when (StoreTrouble.Passes(broken) || StoreTrouble.IsCutOff(broken))
        {
            // Waited for, or put right, when the store is opened.
        }
        catch (SqliteException broken)
        {
            throw Refused(StoreTrouble.InWords(broken));
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(FileTrouble.InWords(broken));
        }
    }

    /// <summary>Refuses a store that cannot be read as it is. Nothing is made or changed.</summary>
    public Task RefuseUnlessReadableAsync(CancellationToken stop) =>
        OpeningAsync(async () =>
        {
            const string Forward = "opened to keep a run, it is upgraded and a copy of the old one kept";
            RefuseFolders();
            if (!File.Exists(_full))
                throw Refused("no such file", "a case store");
            var state = await WaitAsync(() => Task.FromResult(Peek()), stop);
            RefuseUnlessOurs(state);
            if (state is OfVersion { IsThisVersion: false, Number: var number })
                throw Refused(
                    number == 0 ? "a store whose creation was interrupted" : $"a store of version {number}",
                    $"one of version {StoreState.ThisVersion}: {Forward}"
                );
            if (IsWrittenAhead())
                throw Refused(StoreTrouble.CutOff);
        });

    /// <summary>Makes the store where it is missing, and brings it forward where it is of an earlier version.</summary>
    /// <param name="by">Who begins its ledger.</param>
    /// <param name="stop">Signalled to give up.</param>
    public Task MakeReadyAsync(Person by, CancellationToken stop) =>
        OpeningAsync(async () =>
        {
            RefuseFolders();
            if (!File.Exists(_full))
            {
                RefuseUnlessPlaceTakesFiles();
                Directory.CreateDirectory(System.IO.Path.GetDirectoryName(_full)!);
                OwnersOnly.MakeEmpty(_full);
            }
            var state = await WaitAsync(() => Task.FromResult(StateOf(SqliteOpenMode.ReadWriteCreate, _full)), stop);
            RefuseUnlessOurs(state);
            await WaitAsync(() => LeaveLogAsync(stop), stop);
            if (state is not OfVersion { IsThisVersion: true })
                await new BringingForward(this, by).RunAsync(stop);
            await LoosePhotographs.RemoveAsync(this, stop);
        });

    /// <summary>Begins to write, as the only one.</summary>
    public async Task<IDbContextTransaction> BeginAsync(StoreContext context, CancellationToken stop)
    {
        // Kept means kept: also the end of the transaction, which is the removal of a file, is on the disk before it is acknowledged.
        await context.Database.OpenConnectionAsync(stop);
        await context.Database.ExecuteSqlRawAsync("PRAGMA synchronous = EXTRA", stop);
        return await WaitAsync(() => context.Database.BeginTransactionAsync(stop), stop);
    }

    /// <summary>Keeps what was written, once nobody reads any more.</summary>
    public Task CommitAsync(IDbContextTransaction transaction, CancellationToken stop) =>
        WaitAsync(
            async () =>
            {
                await transaction.CommitAsync(stop);
                return true;
            },
            stop
        );

    /// <summary>Writes the whole file anew, without the room that nothing takes any more. False where that cannot be done: the store is whole without it.</summary>
    public static bool WriteAnew(StoreContext context)
    {
        try
        {
            context.Database.ExecuteSqlRaw("VACUUM");
            return true;
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    /// <summary>Tries again while another program is at work on the store; says so, and gives up after a while.</summary>
    public async Task<T> WaitAsync<T>(Func<Task<T>> attempt, CancellationToken stop)
    {
        // Each attempt takes a second to give up: see the timeout where the tables are opened.
        var waited = Stopwatch.StartNew();
        for (var isFirst = true; ; isFirst = false)
        {
            try
            {
                return await attempt();
            }
            catch (SqliteException busy) when (StoreTrouble.Passes(busy) && waited.Elapsed < longestWait)
            {
                if (isFirst)
                    say(
                        $"{path}: another program is using the store; waiting for it, at most {longestWait.TotalSeconds:0} s."
                    );
                // Two that wait for each other must not try again in step.
                await Task.Delay(Random.Shared.Next(500), stop);
            }
        }
    }

    /// <summary>Works on the store; the database's troubles become refusals, everything else stays what it is.</summary>
    public async Task<T> RefusingAsync<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (SqliteException broken)
        {
            throw Refused(StoreTrouble.InWords(broken));
        }
        catch (DbUpdateException broken) when (broken.InnerException is SqliteException cause)
        {
            throw Refused(StoreTrouble.InWords(cause));
        }
        catch (Exception broken) when (StoreTrouble.IsUnreadable(broken))
        {
            throw Refused(StoreTrouble.Unreadable, "whole tables");
        }
    }

    /// <summary>The store is refused.</summary>
    public InputRefusedException Refused(string found, string? expected = null) =>
        new(new InputProblem(path, 0, "", "store", found, expected ?? "a case store, or a path where one can be made"));

    // However the file is reached, its photographs are beside the file itself.
    private static string Whole(string path) =>
        FileTrouble.Refusing(
            path,
            "a case store, or a path where one can be made",
            () =>
                File.Exists(path) && File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target
                    ? target.FullName
                    : System.IO.Path.GetFullPath(path)
        );

    private async Task OpeningAsync(Func<Task> work)
    {
        try
        {
            await RefusingAsync(async () =>
            {
                await work();
                return true;
            });
        }
        catch (Exception broken) when (FileTrouble.Is(broken))
        {
            throw Refused(FileTrouble.InWords(broken));
        }
    }

    private void RefuseFolders()
    {
        if (Directory.Exists(_full))
            throw Refused("a folder");
        for (var above = System.IO.Path.GetDirectoryName(_full); above is not null; )
        {
            if (File.Exists(above))
                throw Refused($"{above}, which is a file and not a folder");
            above = Directory.Exists(above) ? null : System.IO.Path.GetDirectoryName(above);
        }
    }

    private void RefuseUnlessPlaceTakesFiles()
    {
        if (OfTheSameName() is { } other)
            throw Refused(
                $"{other} beside it, whose photographs and key it would share",
                "another name, or another folder"
            );
        var nearest = System.IO.Path.GetDirectoryName(_full);
        while (nearest is not null && !Directory.Exists(nearest))
            nearest = System.IO.Path.GetDirectoryName(nearest);
        if (nearest is not null && !OutFolder.TakesFiles(nearest))
            throw Refused("a place that takes no files");
    }

    // Another database whose name differs in its ending alone.
    private string? OfTheSameName()
    {
        var (folder, stem) = (
            System.IO.Path.GetDirectoryName(_full)!,
            System.IO.Path.GetFileNameWithoutExtension(_full)
        );
        return Directory.Exists(folder)
            ? Directory
                .EnumerateFiles(folder)
                .Select(path => System.IO.Path.GetFileName(path))
                .FirstOrDefault(name =>
                    System.IO.Path.GetFileNameWithoutExtension(name) == stem
                    && IsDatabase(System.IO.Path.Combine(folder, name))
                )
            : null;
    }

    // Its first bytes, after SQLite's "Database File Format", 1.3.1. What cannot be read is nobody's store here.
    private static bool IsDatabase(string path)
    {
        try
        {
            using var file = PlainFile.Open(path, path, "");
            Span<byte> header = stackalloc byte[16];
            return file.ReadAtLeast(header, header.Length, throwOnEndOfStream: false) == header.Length
                && header.SequenceEqual("SQLite format 3\0"u8);
        }
        catch (InputRefusedException)
        {
            return false;
        }
    }

    private void RefuseUnlessOurs(StoreState state)
    {
        if (state is OfAnotherProgram)
            throw Refused("another program's database");
        if (state is OfNewerVersion)
            throw Refused(
                "a store made by a newer version of Alburnum",
                $"a store of version {StoreState.ThisVersion} or earlier"
            );
    }

    // A file that is written ahead makes others beside it even where it is only read, unless it is said not to change meanwhile.
    private StoreState Peek()
    {
        var source = IsWrittenAhead() ? $"{new Uri(_full).AbsoluteUri}?immutable=1" : _full;
        return StateOf(SqliteOpenMode.ReadOnly, source);
    }

    private static StoreState StateOf(SqliteOpenMode mode, string source)
    {
        using var context = Open(mode, source);
        return StoreState.Of(context);
    }

    // Asked before the store is used and not again: closing a file drops what this process has locked in it (POSIX, fcntl).
    // Byte 18 of the header, "file format write version": 2 for a write-ahead log (SQLite's "Database File Format", 1.3.3).
    private bool IsWrittenAhead()
    {
        using var file = new FileStream(_full, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        Span<byte> header = stackalloc byte[19];
        return file.ReadAtLeast(header, header.Length, throwOnEndOfStream: false) == header.Length && header[18] == 2;
    }

    // Earlier versions wrote ahead. Without that the store is one file, which can be read where nothing may be written.
    // Whoever leaves the log must be alone, so nothing else is open here meanwhile.
    private async Task<int> LeaveLogAsync(CancellationToken stop)
    {
        using var context = Open(SqliteOpenMode.ReadWrite);
        return await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = DELETE", stop);
    }
}

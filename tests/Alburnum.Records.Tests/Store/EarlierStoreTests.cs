using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Tests.Store;

/// <summary>
/// A store of version 2, with its photograph in the database and its log written ahead: made by the program at commit 26e4239 from
/// the folder Case beside this file.
/// </summary>
public sealed class EarlierStoreTests : IDisposable
{
    private const string Reference = "TH-2026-011";
    private const string Sha256 = "d2170f6ea30d1841bf91f9dedfb11cb2604e53b5d1aabc97126278428ca34af2";
    private readonly TemporaryFolder _folder = new();
    private readonly List<string> _said = [];

    public EarlierStoreTests() =>
        File.Copy(Repository.At("tests", "Alburnum.Records.Tests", "Store", "version-2.store"), StorePath);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task It_is_brought_forward_with_all_it_has_and_that_is_said_once()
    {
        var store = await KeepAsync();

        var run = await store.RunAsync(1, null, Stop);
        Assert.Equal(
            [(1, Verdict.Undecided)],
            (await store.RunsAsync(1, Stop)).Select(kept => (kept.Number, kept.Verdict))
        );
        Assert.Contains(Sha256, run!.Document);
        Assert.Equal("case.yaml", Assert.Single(run.Files).FileName);
        var photograph = await store.PhotographAsync(Sha256, Stop);
        Assert.Equal(("P06.jpg", 46_636), (photograph!.FileName, photograph.Bytes.Length));
        Assert.Equal(
            [
                $"{StorePath} is upgraded from version 2 to 5; the old one is kept as {_folder.At("cases.version-2.db")}.",
            ],
            _said
        );
        await KeepAsync();
        Assert.Single(_said);
    }

    [Fact]
    public async Task The_migrations_lead_to_the_tables_that_the_program_uses()
    {
        await KeepAsync();
        using var context = new SqliteFile(StorePath, Say, TimeSpan.Zero).Open(SqliteOpenMode.ReadOnly);

        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Afterwards_the_database_is_smaller_by_its_photographs_and_one_file()
    {
        var before = new FileInfo(StorePath).Length;

        await KeepAsync();

        // The ledger and its index take four pages.
        Assert.InRange(new FileInfo(StorePath).Length, 1, before - 46_636 + (5 * 4096));
        Assert.Equal(
            [
                "cases.db",
                "cases.photographs",
                $"cases.photographs/{Sha256[..2]}",
                $"cases.photographs/{Sha256[..2]}/{Sha256}",
                "cases.version-2.db",
            ],
            Directory
                .EnumerateFileSystemEntries(_folder.Path, "*", SearchOption.AllDirectories)
                .Select(entry => Path.GetRelativePath(_folder.Path, entry).Replace('\\', '/'))
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task Its_copy_is_a_whole_store_of_the_earlier_version()
    {
        await KeepAsync();

        Assert.Equal(
            1L,
            Ask(
                _folder.At("cases.version-2.db"),
                $"SELECT count(*) FROM photograph WHERE length(Bytes) = 46636 AND Sha256 = '{Sha256}'"
            )
        );
        Assert.Equal(2L, Ask(_folder.At("cases.version-2.db"), "SELECT count(*) FROM __EFMigrationsHistory"));
        var again = await CaseStore.KeepAsync(_folder.At("cases.version-2.db"), Person.OfSystem, _said.Add, Stop);
        Assert.NotNull(await again.PhotographAsync(Sha256, Stop));
    }

    [Fact]
    public async Task A_copy_of_another_store_is_not_overwritten()
    {
        _folder.Write("cases.version-2.db", "something else");

        await KeepAsync();

        Assert.Equal("something else", await File.ReadAllTextAsync(_folder.At("cases.version-2.db"), Stop));
        Assert.True(File.Exists(_folder.At("cases.version-2-2.db")));
    }

    [Fact]
    public async Task One_of_the_first_version_is_brought_forward_too()
    {
        Ask(
            StorePath,
            "DROP TABLE paper; DELETE FROM __EFMigrationsHistory WHERE MigrationId LIKE '%_Papers'; SELECT 1"
        );

        var store = await KeepAsync();

        Assert.Empty((await store.RunAsync(1, 1, Stop))!.Files);
        Assert.NotNull(await store.PhotographAsync(Sha256, Stop));
        Assert.True(File.Exists(_folder.At("cases.version-1.db")));
    }

    [Fact]
    public async Task One_of_version_3_is_brought_forward_with_a_number_for_each_reference()
    {
        var path = _folder.At("third.db");
        var made = await CaseStore.KeepAsync(path, Person.OfSystem, Say, Stop);
        foreach (var reference in new[] { "B/1", "A 1", "B/1", "C.1", "A 1" })
            await made.AddAsync(
                new(reference, "", reference, DateTime.UnixEpoch, Verdict.Conforms, "{}", [], []),
                FilesTogether.None,
                Stop
            );
        Ask(
            path,
            """
            DROP INDEX IX_run_CaseNumber; ALTER TABLE run DROP COLUMN CaseNumber;
            DROP TABLE ledger;
            DELETE FROM __EFMigrationsHistory WHERE MigrationId LIKE '%_CaseNumbers' OR MigrationId LIKE '%_LedgerEntries'; SELECT 1
            """
        );

        var store = await CaseStore.KeepAsync(path, Person.OfSystem, Say, Stop);

        Assert.Equal(
            [(1, "B/1", 2), (2, "A 1", 2), (3, "C.1", 1)],
            (await store.ListAsync(Stop)).Select(each => (each.Number, each.Reference, each.Runs)).Order()
        );
        Assert.True(File.Exists(_folder.At("third.version-3.db")));
    }

    [Fact]
    public async Task The_lock_of_a_killed_migrator_holds_nobody_up()
    {
        Ask(StorePath, "INSERT INTO __EFMigrationsLock VALUES (1, '2026-11-28 12:00:00'); SELECT 1");
        CaseStore.Examine(StorePath);

        await KeepAsync().WaitAsync(TimeSpan.FromSeconds(20), Stop);

        Assert.Single(_said);
    }

    [Fact]
    public async Task A_photograph_damaged_in_it_is_refused_as_damaged_afterwards()
    {
        Ask(StorePath, "UPDATE photograph SET Bytes = x'00'; SELECT 1");

        var store = await KeepAsync();

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => store.PhotographAsync(Sha256, Stop));
        Assert.Contains("found a damaged file", refused.Message);
    }

    [Fact]
    public async Task Where_the_photographs_cannot_be_written_it_stays_as_it_was()
    {
        _folder.Write("cases.photographs", "a file where the folder should be");

        await Assert.ThrowsAsync<InputRefusedException>(KeepAsync);

        Assert.Equal(46_636L, Ask(StorePath, "SELECT length(Bytes) FROM photograph"));
        File.Delete(_folder.At("cases.photographs"));
        Assert.NotNull(await (await KeepAsync()).PhotographAsync(Sha256, Stop));
    }

    [Fact]
    public async Task Two_that_bring_it_forward_at_once_both_succeed()
    {
        var stores = await Task.WhenAll(Task.Run(KeepAsync), Task.Run(KeepAsync));

        foreach (var store in stores)
            Assert.NotNull(await store.PhotographAsync(Sha256, Stop));
        Assert.Single(_said, line => line.Contains("is upgraded"));
    }

    [Fact]
    public async Task Looking_refuses_it_in_words_that_say_what_to_do_and_changes_no_byte()
    {
        var before = FolderContents.Of(_folder.Path);

        CaseStore.Examine(StorePath);
        var refused = await Assert.ThrowsAsync<InputRefusedException>(LookAsync);

        Assert.Equal(
            $"{StorePath}, field store: found a store of version 2, expected one of version 5: opened to keep a run, it is upgraded and a copy of the old one kept.",
            refused.Message
        );
        Assert.Equal(before, FolderContents.Of(_folder.Path));
    }

    [Fact]
    public async Task Looking_at_one_of_today_reads_everything_and_changes_no_byte_even_where_it_may_not_be_written()
    {
        await KeepAsync();
        File.SetAttributes(StorePath, FileAttributes.ReadOnly);
        var before = FolderContents.Of(_folder.Path);

        var store = await CaseStore.KeepOrLookAsync(StorePath, Person.OfSystem, _said.Add, Stop);
        Assert.Equal(Reference, Assert.Single(await store.ListAsync(Stop)).Reference);
        Assert.Single(await store.RunsAsync(1, Stop));
        Assert.NotNull(await store.RunAsync(1, 1, Stop));
        Assert.NotNull(await store.PhotographAsync(Sha256, Stop));
        var run = new CaseRecord("A-1", "", "", DateTime.UnixEpoch, Verdict.Conforms, "{}", [], []);
        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.AddAsync(run, FilesTogether.None, Stop)
        );

        Assert.Contains("found a store opened only for viewing", refused.Message);
        Assert.EndsWith("no run can be kept.", _said[^1]);
        Assert.Contains(
            "may not be written",
            Assert.Throws<InputRefusedException>(() => CaseStore.Examine(StorePath)).Message
        );
        Assert.Equal(before, FolderContents.Of(_folder.Path));
        File.SetAttributes(StorePath, FileAttributes.Normal);
    }

    [Fact]
    public async Task One_cut_off_in_the_middle_of_a_change_is_not_looked_at_and_is_put_right_when_it_is_kept_in()
    {
        await KeepAsync();
        CutOffInAChange();
        var before = FolderContents.Of(_folder.Path);

        CaseStore.Examine(StorePath);
        var refused = await Assert.ThrowsAsync<InputRefusedException>(LookAsync);

        Assert.Contains("found a store interrupted in the middle of a change", refused.Message);
        Assert.Equal(before, FolderContents.Of(_folder.Path));
        var store = await KeepAsync();
        Assert.StartsWith("{", (await store.RunAsync(1, null, Stop))!.Document);
    }

    [Fact]
    public async Task A_keeper_reads_on_where_another_was_killed_in_the_middle_of_a_change()
    {
        var store = await KeepAsync();
        CutOffInAChange();

        Assert.StartsWith("{", (await store.RunAsync(1, null, Stop))!.Document);
    }

    [Fact]
    public async Task What_a_killed_program_of_the_earlier_version_left_in_its_log_is_not_lost()
    {
        var killed = _folder.At("killed.db");
        using (var writer = new SqliteConnection($"Data Source={StorePath};Pooling=False"))
        {
            writer.Open();
            Run(writer, "UPDATE run SET Title = 'in the log alone'");
            File.Copy(StorePath, killed);
            File.Copy($"{StorePath}-wal", $"{killed}-wal");
        }

        CaseStore.Examine(killed);
        var store = await CaseStore.KeepAsync(killed, Person.OfSystem, Say, Stop);

        Assert.Equal("in the log alone", Assert.Single(await store.ListAsync(Stop)).Title);
        Assert.Equal("in the log alone", Ask(_folder.At("killed.version-2.db"), "SELECT Title FROM run"));
        Assert.False(File.Exists($"{killed}-wal"));
    }

    [Fact]
    public async Task One_reached_by_a_link_has_its_photographs_beside_the_file_itself()
    {
        Directory.CreateDirectory(_folder.At("desk"));
        var link = _folder.At(Path.Combine("desk", "link.db"));
        File.CreateSymbolicLink(link, StorePath);

        await CaseStore.KeepAsync(link, Person.OfSystem, Say, Stop);

        Assert.True(Directory.Exists(_folder.At("cases.photographs")));
        Assert.NotNull(await (await LookAsync()).PhotographAsync(Sha256, Stop));
    }

    [Fact]
    public async Task One_that_is_not_there_is_refused_and_not_made()
    {
        File.Delete(StorePath);

        var refused = await Assert.ThrowsAsync<InputRefusedException>(LookAsync);

        Assert.Contains("found no such file, expected a case store", refused.Message);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    private Task<ICaseStore> KeepAsync() => CaseStore.KeepAsync(StorePath, Person.OfSystem, Say, Stop);

    private Task<ICaseStore> LookAsync() => CaseStore.LookAsync(StorePath, Say, Stop);

    private void Say(string line)
    {
        lock (_said)
            _said.Add(line);
    }

    // As when a program is killed while it commits: with a cache of a page, the change reaches the file before that.
    private void CutOffInAChange()
    {
        var (file, journal) = (_folder.At("cut"), _folder.At("cut-journal"));
        using (var writer = new SqliteConnection($"Data Source={StorePath};Pooling=False"))
        {
            writer.Open();
            Run(
                writer,
                "PRAGMA cache_size = 1; BEGIN IMMEDIATE; UPDATE run SET Document = 'lost ' || hex(zeroblob(20000))"
            );
            File.Copy(StorePath, file);
            File.Copy($"{StorePath}-journal", journal);
        }
        File.Move(file, StorePath, overwrite: true);
        File.Move(journal, $"{StorePath}-journal");
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static object? Ask(string path, string sql)
    {
        using var other = new SqliteConnection($"Data Source={path};Pooling=False");
        other.Open();
        using var ask = other.CreateCommand();
        ask.CommandText = sql;
        return ask.ExecuteScalar();
    }
}

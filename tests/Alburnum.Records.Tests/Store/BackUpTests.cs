using System.IO.Compression;
using System.Text;
using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Tests.Store;

/// <summary>A store backed up, restored and checked.</summary>
public sealed class BackUpTests : IDisposable
{
    private static readonly Photograph First = Photograph.Of("P01.jpg", new byte[] { 1, 2, 3 });
    private static readonly Photograph Second = Photograph.Of("P02.jpg", new byte[5000]);
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    private string File => _folder.At("cases.zip");

    private string Elsewhere => _folder.At(Path.Combine("elsewhere", "again.db"));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_store_restored_elsewhere_has_all_that_the_first_had()
    {
        await MakeAsync();

        Assert.Equal(2, await BackUp.WriteAsync(StorePath, File, Say, Stop));
        Assert.Equal(2, await BackUp.RestoreAsync(File, Elsewhere, Stop));

        var (before, after) = (await LookAsync(StorePath), await LookAsync(Elsewhere));
        Assert.Equal(await before.ListAsync(Stop), await after.ListAsync(Stop));
        for (var run = 1; run <= 2; run++)
        {
            var (kept, again) = ((await before.RunAsync(1, run, Stop))!, (await after.RunAsync(1, run, Stop))!);
            Assert.Equal(kept.Document, again.Document);
            Assert.Equal(kept.Files.Single().Bytes.ToArray(), again.Files.Single().Bytes.ToArray());
        }
        foreach (var photograph in new[] { First, Second })
            Assert.Equal(
                photograph.Bytes.ToArray(),
                (await after.PhotographAsync(photograph.Sha256, Stop))!.Bytes.ToArray()
            );
        Assert.Empty((await after.VerifyAsync(null, Stop)).Faults);
        Assert.Equal((1, 2, 2, 0, 0, 0), Counted(await StoreCheck.RunAsync(Elsewhere, Say, Stop)));
        Assert.Equal(
            ["again.db", "again.photographs"],
            Directory.GetFileSystemEntries(Path.GetDirectoryName(Elsewhere)!).Select(Path.GetFileName).Order()
        );
    }

    [Fact]
    public async Task Backing_up_changes_nothing_and_overwrites_no_file()
    {
        await MakeAsync();
        var before = FolderContents.Of(_folder.Path);
        _folder.Write("cases.zip", "mine");

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            BackUp.WriteAsync(StorePath, File, Say, Stop)
        );

        Assert.Contains("no back-up is overwritten", refused.Message, StringComparison.Ordinal);
        System.IO.File.Delete(File);
        Assert.Equal(before, FolderContents.Of(_folder.Path));
    }

    [Fact]
    public async Task No_store_is_overwritten()
    {
        await MakeAsync();
        await BackUp.WriteAsync(StorePath, File, Say, Stop);
        var before = FolderContents.Of(_folder.Path);

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => BackUp.RestoreAsync(File, StorePath, Stop));

        Assert.Contains("no store is overwritten", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, FolderContents.Of(_folder.Path));
    }

    [Theory]
    [InlineData("cases.db", "cases.db damaged")]
    [InlineData("SHA256SUMS", "no SHA256SUMS in it")]
    [InlineData("photographs", " damaged (its SHA-256 is not that in SHA256SUMS)")]
    public async Task A_back_up_with_anything_changed_makes_no_store(string entry, string found)
    {
        await MakeAsync();
        await BackUp.WriteAsync(StorePath, File, Say, Stop);
        using (var zip = ZipFile.Open(File, ZipArchiveMode.Update))
        {
            var changed = zip.Entries.First(each => each.FullName.StartsWith(entry, StringComparison.Ordinal));
            var name = changed.FullName;
            changed.Delete();
            if (entry != "SHA256SUMS")
                using (var stream = zip.CreateEntry(name).Open())
                    stream.Write("something else"u8);
        }

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => BackUp.RestoreAsync(File, Elsewhere, Stop));

        Assert.Contains(found, refused.Message, StringComparison.Ordinal);
        Assert.False(System.IO.File.Exists(Elsewhere));
    }

    [Fact]
    public async Task A_file_that_is_no_back_up_is_refused()
    {
        _folder.Write("cases.zip", "no zip");

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => BackUp.RestoreAsync(File, Elsewhere, Stop));

        Assert.Contains("found a file that is no ZIP", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restoring_that_was_broken_off_can_be_done_again()
    {
        await MakeAsync();
        await BackUp.WriteAsync(StorePath, File, Say, Stop);
        // Some photographs are there and the tables are not.
        var shelf = Directory.CreateDirectory(
            _folder.At(Path.Combine("elsewhere", "again.photographs", First.Sha256[..2]))
        );
        await System.IO.File.WriteAllBytesAsync(
            Path.Combine(shelf.FullName, First.Sha256),
            First.Bytes.ToArray()[..1],
            Stop
        );

        await BackUp.RestoreAsync(File, Elsewhere, Stop);

        Assert.Equal(
            (1, 2, 2, 0, 0),
            Counted(await StoreCheck.RunAsync(Elsewhere, Say, Stop)) switch
            {
                var (c, r, p, d, u, _) => (c, r, p, d, u),
            }
        );
    }

    [Fact]
    public async Task A_check_names_each_photograph_that_is_damaged_or_missing_and_counts_what_is_not_used()
    {
        await MakeAsync();
        var files = Directory
            .GetFiles(_folder.At("cases.photographs"), "*", SearchOption.AllDirectories)
            .ToDictionary(file => Path.GetFileName(file)!);
        System.IO.File.Delete(files[First.Sha256]);
        await System.IO.File.WriteAllTextAsync(files[Second.Sha256], "other", Stop);
        await System.IO.File.WriteAllTextAsync(files[Second.Sha256] + ".part", "left", Stop);

        var found = await StoreCheck.RunAsync(StorePath, Say, Stop);

        Assert.Equal(
            (1, 2, 2, 2, 1),
            (found.Cases, found.Runs, found.Photographs, found.Damages.Count, found.Unused.Count)
        );
        Assert.Contains(
            found.Damages,
            each => each.Found == "no such file" || each.Found == "a folder that is not there"
        );
        Assert.Contains(found.Damages, each => each.Found.StartsWith("a damaged file", StringComparison.Ordinal));
        await Assert.ThrowsAsync<InputRefusedException>(() => BackUp.WriteAsync(StorePath, File, Say, Stop));
        Assert.False(System.IO.File.Exists(File));
    }

    // Each is a value or a table that SQLite takes without a word.
    [Theory]
    [InlineData("DROP TABLE ledger", "the table ledger is missing")]
    [InlineData("DELETE FROM ledger", "a file that no entry names")]
    [InlineData("DELETE FROM run_photograph WHERE RunRowId = 1", "a file that was changed")]
    [InlineData("DELETE FROM run WHERE Id = 1", "rows of the table")]
    [InlineData("UPDATE run SET Document = '{\"a\":' WHERE Id = 1", "a file that was changed")]
    [InlineData("UPDATE run SET Document = 7 WHERE Id = 1", "a file that was changed")]
    [InlineData("UPDATE run SET CaseNumber = 'abc'", "nothing")]
    [InlineData("UPDATE run SET CaseNumber = 99999999999999", "a value that cannot be read")]
    [InlineData("UPDATE run SET RunAt = 'rubbish' WHERE Id = 1", "a value that cannot be read")]
    [InlineData("UPDATE run SET RunAt = '' WHERE Id = 1", "a value that cannot be read")]
    [InlineData("UPDATE run SET RunAt = 5 WHERE Id = 1", "a value that cannot be read")]
    [InlineData("UPDATE run SET RunAt = 1e300 WHERE Id = 1", "a value that cannot be read")]
    [InlineData("UPDATE ledger SET CaseNumber = 99999999999999 WHERE Number = 3", "a value that cannot be read")]
    [InlineData("UPDATE ledger SET Number = 9223372036854775807 WHERE Number = 3", "a value that cannot be read")]
    [InlineData("UPDATE run SET Verdict = 'rubbish'", "a file that was changed")]
    [InlineData("UPDATE paper SET Bytes = 'text'", "a file that was changed")]
    [InlineData("ALTER TABLE run RENAME COLUMN Client TO Klient", "the column run.Client is missing")]
    [InlineData("CREATE TABLE planted (a)", "the table planted is not of this program's making")]
    [InlineData("CREATE UNIQUE INDEX planted ON run (Document)", "the index planted is not of this program's making")]
    [InlineData("UPDATE sqlite_sequence SET seq = 9223372036854775807", "the counter of the table run")]
    [InlineData("CREATE VIEW planted AS SELECT 1", "the view planted is not of this program's making")]
    public async Task Tables_that_were_meddled_with_are_named_and_not_backed_up(string sql, string named)
    {
        await MakeAsync();
        await using (var connection = new SqliteConnection($"Data Source={StorePath};Pooling=False"))
        {
            await connection.OpenAsync(Stop);
            await using var meddling = connection.CreateCommand();
            meddling.CommandText = $"PRAGMA foreign_keys = OFF; {sql}";
            await meddling.ExecuteNonQueryAsync(Stop);
        }

        Assert.Contains(
            named,
            await RefusalAsync(() => StoreCheck.RunAsync(StorePath, Say, Stop)),
            StringComparison.Ordinal
        );
        Assert.Contains(
            named,
            await RefusalAsync(() => BackUp.WriteAsync(StorePath, File, Say, Stop)),
            StringComparison.Ordinal
        );
        Assert.False(System.IO.File.Exists(File));
        // Whatever reads the store says it in words too, or is not concerned.
        foreach (
            var look in new Func<ICaseStore, Task>[]
            {
                store => store.ListAsync(Stop),
                store => store.RunsAsync(1, Stop),
                store => store.RunAsync(1, null, Stop),
                store => store.LedgerAsync(1, Stop),
                store => store.VerifyAsync(null, Stop),
            }
        )
            await RefusalAsync(async () => await look(await LookAsync(StorePath)));
    }

    // Empty where nothing is refused; everything else is a fault.
    private static async Task<string> RefusalAsync(Func<Task> act)
    {
        try
        {
            await act();
            return "";
        }
        catch (InputRefusedException refused)
        {
            return refused.Message;
        }
    }

    [Fact]
    public async Task What_a_run_left_that_was_broken_off_is_removed_an_hour_later_and_nothing_else_is()
    {
        await MakeAsync();
        var root = _folder.At("cases.photographs");
        var shelf = Directory.CreateDirectory(Path.Combine(root, "ab")).FullName;
        string Loose(char digit) => Path.Combine(shelf, "ab" + new string(digit, 62));
        var (old, young, foreign) = (Loose('1'), Loose('2'), Loose('3'));
        foreach (var file in (string[])[old, old + ".0a.part", young, foreign])
            await System.IO.File.WriteAllTextAsync(file, "left", Stop);
        Directory.CreateDirectory(_folder.At("mine"));
        var elsewhere = _folder.Write(Path.Combine("mine", "mine.txt"), "mine");
        Directory.CreateSymbolicLink(Path.Combine(root, "linked"), Path.GetDirectoryName(elsewhere)!);
        await NoteAsync("unfinished-1", [Path.GetFileName(old), First.Sha256], hours: 2);
        await NoteAsync("unfinished-2", [Path.GetFileName(young)], hours: 0);
        await NoteAsync("unfinished-3", ["../../mine/mine.txt"], hours: 2);

        await CaseStore.KeepAsync(StorePath, Person.OfSystem, Say, Stop);

        var found = await StoreCheck.RunAsync(StorePath, Say, Stop);
        Assert.Equal((2, 0), (found.Photographs, found.Damages.Count));
        Assert.Equal([young, foreign], found.Unused);
        Assert.True(System.IO.File.Exists(elsewhere));

        async Task NoteAsync(string name, string[] lines, int hours)
        {
            var note = Path.Combine(root, name);
            await System.IO.File.WriteAllLinesAsync(note, lines, Stop);
            System.IO.File.SetLastWriteTimeUtc(note, DateTime.UtcNow.AddHours(-hours));
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_database_that_was_lost_leaves_its_photographs(bool isEmptied)
    {
        await MakeAsync();
        var photographs = Directory.GetFiles(_folder.At("cases.photographs"), "*", SearchOption.AllDirectories);
        Assert.Equal(2, photographs.Length);
        foreach (var file in photographs)
            System.IO.File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddYears(-1));
        System.IO.File.Delete(StorePath);
        if (isEmptied)
            await System.IO.File.WriteAllBytesAsync(StorePath, [], Stop);

        await CaseStore.KeepAsync(StorePath, Person.OfSystem, Say, Stop);

        Assert.All(photographs, file => Assert.True(System.IO.File.Exists(file)));
    }

    [Theory]
    [InlineData("SHA256SUMS")]
    [InlineData("cases.db")]
    public async Task A_small_back_up_that_would_unpack_into_a_huge_one_is_refused(string part)
    {
        await MakeAsync();
        await BackUp.WriteAsync(StorePath, File, Say, Stop);
        using (var zip = ZipFile.Open(File, ZipArchiveMode.Update))
        {
            zip.GetEntry(part)!.Delete();
            await using var huge = zip.CreateEntry(part, CompressionLevel.Optimal).Open();
            var zeros = new byte[1 << 20];
            for (var mb = 0; mb < 64; mb++)
                await huge.WriteAsync(zeros, Stop);
        }

        Assert.Contains(
            $"found {part}, which would unpack to 64 MB",
            await RefusalAsync(() => BackUp.RestoreAsync(File, Elsewhere, Stop)),
            StringComparison.Ordinal
        );
        Assert.False(System.IO.File.Exists(Elsewhere));
    }

    private async Task MakeAsync()
    {
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, Say, Stop);
        foreach (var (document, photograph) in new[] { ("first", First), ("second", Second) })
            await store.AddAsync(
                new(
                    "TH/2026/011",
                    "Posts",
                    "Somebody",
                    DateTime.UnixEpoch,
                    Verdict.Conforms,
                    document,
                    [photograph],
                    [new("case.yaml", Encoding.UTF8.GetBytes(document))]
                ),
                FilesTogether.None,
                Stop
            );
    }

    private static (int, int, int, int, int, int) Counted(StoreFindings found) =>
        (found.Cases, found.Runs, found.Photographs, found.Damages.Count, found.Unused.Count, found.OpenToOthers.Count);

    private static Task<ICaseStore> LookAsync(string path) => CaseStore.LookAsync(path, Say, Stop);

    private static void Say(string line) { }
}

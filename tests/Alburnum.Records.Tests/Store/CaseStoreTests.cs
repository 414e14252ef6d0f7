using System.Text;
using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using CsCheck;
using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Tests.Store;

public sealed class CaseStoreTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_run_comes_back_as_it_was_kept()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 1, 2, 3 });
        await store.AddAsync(Run("A-1", "{\"x\": 1}", photograph), FilesTogether.None, Stop);

        Assert.Equal("{\"x\": 1}", (await store.RunAsync(1, null, Stop))!.Document);
        var kept = await store.PhotographAsync(photograph.Sha256, Stop);
        Assert.Equal(photograph.Bytes.ToArray(), kept!.Bytes.ToArray());
        var entry = Assert.Single(await store.ListAsync(Stop));
        Assert.Equal(("A-1", Verdict.Conforms, 1), (entry.Reference, entry.Verdict, entry.Runs));
    }

    [Fact]
    public async Task A_second_run_is_added_and_the_first_is_not_changed()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run("A-1", "first"), FilesTogether.None, Stop);
        await store.AddAsync(Run("A-1", "second"), FilesTogether.None, Stop);

        Assert.Equal("second", (await store.RunAsync(1, null, Stop))!.Document);
        Assert.Equal("first", (await store.RunAsync(1, 1, Stop))!.Document);
        Assert.Equal([1, 2], (await store.RunsAsync(1, Stop)).Select(run => run.Number));
        Assert.Equal(2, Assert.Single(await store.ListAsync(Stop)).Runs);
    }

    [Fact]
    public async Task The_list_is_had_in_parts_the_latest_case_first()
    {
        var store = await KeepAsync();
        foreach (var reference in new[] { "A", "B", "C", "A", "D" })
            await store.AddAsync(
                new(reference, "Posts", reference, DateTime.UnixEpoch, Verdict.Conforms, "{}", [], []),
                FilesTogether.None,
                Stop
            );

        var part = await store.ListAsync(1, 2, Stop);

        Assert.Equal(4, part.Cases);
        Assert.Equal([("A", 2), ("C", 1)], part.Entries.Select(each => (each.Reference, each.Runs)));
        Assert.Empty((await store.ListAsync(4, 2, Stop)).Entries);
    }

    [Fact]
    public async Task A_photograph_that_is_opened_gives_its_bytes_from_the_first_on()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", Enumerable.Range(0, 200_000).Select(i => (byte)i).ToArray());
        await store.AddAsync(
            new("A", "Posts", "A", DateTime.UnixEpoch, Verdict.Conforms, "{}", [photograph], []),
            FilesTogether.None,
            Stop
        );

        await using var open = await store.OpenPhotographAsync(photograph.Sha256, Stop);
        using var bytes = new MemoryStream();
        await open!.Bytes.CopyToAsync(bytes, Stop);

        Assert.Equal("P01.jpg", open.FileName);
        Assert.True(photograph.Bytes.Span.SequenceEqual(bytes.ToArray()));
        Assert.Null(await store.OpenPhotographAsync("none", Stop));
        await File.WriteAllTextAsync(Assert.Single(PhotographsOf(StorePath)), "x", Stop);
        await Assert.ThrowsAsync<InputRefusedException>(() => store.OpenPhotographAsync(photograph.Sha256, Stop));
    }

    [Fact]
    public async Task The_same_photograph_in_two_runs_is_kept_once()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 9, 9 });
        await store.AddAsync(Run("A-1", "first", photograph), FilesTogether.None, Stop);
        await store.AddAsync(
            Run("A-2", "second", photograph with { FileName = "other.jpg" }),
            FilesTogether.None,
            Stop
        );

        Assert.Equal("P01.jpg", (await store.PhotographAsync(photograph.Sha256, Stop))!.FileName);
        Assert.Single(PhotographsOf(StorePath));
    }

    [Fact]
    public async Task Nothing_is_kept_where_the_reports_could_not_be_written()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 1 });
        var file = _folder.Write("reports", "a file where the folder should be");

        await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.AddAsync(Run("A-1", "lost", photograph), Reports(file, "new"), Stop)
        );

        Assert.Empty(await store.ListAsync(Stop));
        Assert.Null(await store.PhotographAsync(photograph.Sha256, Stop));
    }

    [Fact]
    public async Task Where_the_second_report_has_no_place_the_first_is_as_it_was_before_and_nothing_is_kept()
    {
        var store = await KeepAsync();
        var folder = _folder.At("reports");
        Directory.CreateDirectory(Path.Combine(folder, "report.json"));
        await File.WriteAllTextAsync(Path.Combine(folder, "report.pdf"), "old", Stop);

        await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.AddAsync(Run("A-1", "lost"), Reports(folder, "new"), Stop)
        );

        Assert.Empty(await store.ListAsync(Stop));
        Assert.Equal("old", await File.ReadAllTextAsync(Path.Combine(folder, "report.pdf"), Stop));
        Assert.Equal([Path.Combine(folder, "report.pdf")], Directory.GetFiles(folder));
    }

    [Theory]
    [InlineData("old")]
    [InlineData(null)]
    public async Task Where_the_run_cannot_be_kept_at_last_the_reports_are_as_they_were_before(string? before)
    {
        var store = await CaseStore.KeepOrLookAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        var folder = Directory.CreateDirectory(_folder.At("reports")).FullName;
        if (before is not null)
            foreach (var name in new[] { "report.pdf", "report.json" })
                await File.WriteAllTextAsync(Path.Combine(folder, name), before, Stop);
        // Whoever reads holds up the end of a change, and nothing before it.
        using var reader = new SqliteConnection($"Data Source={StorePath};Pooling=False");
        reader.Open();
        using var reading = reader.BeginTransaction(deferred: true);
        using var ask = reader.CreateCommand();
        (ask.Transaction, ask.CommandText) = (reading, "SELECT count(*) FROM run");
        ask.ExecuteScalar();

        await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.AddAsync(Run("A-1", "lost"), Reports(folder, "new"), Stop)
        );

        Assert.Equal(
            before is null ? [] : [("report.json", before), ("report.pdf", before)],
            Directory.GetFiles(folder).Select(file => (Path.GetFileName(file), File.ReadAllText(file))).Order()
        );
        reading.Rollback();
        Assert.Empty(await store.ListAsync(Stop));
    }

    [Fact]
    public async Task Reports_replace_those_of_the_run_before_and_leave_nothing_beside_them()
    {
        var store = await KeepAsync();
        var folder = _folder.At("reports");

        await store.AddAsync(Run("A-1", "first"), Reports(folder, "first"), Stop);
        await store.AddAsync(Run("A-1", "second"), Reports(folder, "second"), Stop);

        Assert.Equal(
            [("report.json", "second"), ("report.pdf", "second")],
            Directory.GetFiles(folder).Select(file => (Path.GetFileName(file), File.ReadAllText(file))).Order()
        );
    }

    [Theory]
    [InlineData("Title", "another estate", false, null)]
    [InlineData("Rails", "Client", false, null)]
    [InlineData("Rails", "another estate", true, null)]
    [InlineData("Rails", "another estate", false, 1)]
    public async Task A_run_joins_the_case_of_its_reference_that_it_has_something_in_common_with(
        string title,
        string client,
        bool withTheSamePhotograph,
        int? caseNumber
    )
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 1 });
        await store.AddAsync(Run("A-1", "first", photograph), FilesTogether.None, Stop);

        var kept = await store.AddAsync(
            Run("A-1", "second", withTheSamePhotograph ? [photograph] : []) with
            {
                Title = title,
                Client = client,
                CaseNumber = caseNumber,
            },
            FilesTogether.None,
            Stop
        );

        Assert.Equal(new KeptAs(1, new(1, "Title", "Client"), "first", Namesake: null), kept);
        Assert.Equal(2, (await store.RunsAsync(1, Stop)).Count);
    }

    [Fact]
    public async Task Another_case_of_the_same_reference_is_a_case_of_its_own_and_that_is_told()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run("TH/2026/011", "first"), FilesTogether.None, Stop);
        var other = Run("TH/2026/011", "other") with { Title = "Rails", Client = "another estate" };

        var kept = await store.AddAsync(other, FilesTogether.None, Stop);
        await store.AddAsync(other with { Document = "other again" }, FilesTogether.None, Stop);

        Assert.Equal(new KeptAs(2, Before: null, null, new(1, "Title", "Client")), kept);
        Assert.Equal(
            [(2, "TH/2026/011", "Rails", 2), (1, "TH/2026/011", "Title", 1)],
            (await store.ListAsync(Stop)).Select(each => (each.Number, each.Reference, each.Title, each.Runs))
        );
        Assert.Equal("first", (await store.RunAsync(1, null, Stop))!.Document);
        Assert.Equal("other again", (await store.RunAsync(2, 2, Stop))!.Document);
    }

    [Fact]
    public async Task A_store_and_its_photographs_are_readable_by_their_owner_alone()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run("A-1", "first", Photograph.Of("P01.jpg", new byte[] { 1 })), FilesTogether.None, Stop);

        Assert.All(PhotographsOf(StorePath).Append(StorePath), file => Assert.Equal("rw-------", Mode(file)));

        static string Mode(string file) =>
            OperatingSystem.IsWindows() ? "rw-------"
            : File.GetUnixFileMode(file) == (UnixFileMode.UserRead | UnixFileMode.UserWrite) ? "rw-------"
            : "another";
    }

    [Fact]
    public async Task What_the_store_does_not_have_is_null()
    {
        var store = await KeepAsync();

        Assert.Null(await store.RunAsync(99, null, Stop));
        Assert.Null(await store.RunAsync(99, 1, Stop));
        Assert.Empty(await store.RunsAsync(99, Stop));
        Assert.Null(await store.PhotographAsync(new string('0', 64), Stop));
    }

    [Fact]
    public async Task A_run_keeps_the_papers_it_was_read_from()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run("A-1", "first"), FilesTogether.None, Stop);

        var file = Assert.Single((await store.RunAsync(1, null, Stop))!.Files);
        Assert.Equal("case.yaml", file.FileName);
        Assert.Equal("reference: A-1", Encoding.UTF8.GetString(file.Bytes.Span));
    }

    [Fact]
    public async Task A_photograph_with_any_bit_flipped_is_refused_with_its_file()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", Enumerable.Range(0, 40).Select(i => (byte)i).ToArray());
        await store.AddAsync(Run("A-1", "first", photograph), FilesTogether.None, Stop);
        var file = Assert.Single(PhotographsOf(StorePath));

        await Gen.Int[0, (40 * 8) - 1]
            .SampleAsync(
                async bit =>
                {
                    var bytes = photograph.Bytes.ToArray();
                    bytes[bit / 8] ^= (byte)(1 << (bit % 8));
                    await File.WriteAllBytesAsync(file, bytes, Stop);

                    var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
                        store.PhotographAsync(photograph.Sha256, Stop)
                    );

                    Assert.StartsWith($"{file}, field photograph: found a damaged file", refused.Message);
                    Assert.Contains("expected P01.jpg as it was kept", refused.Message);
                },
                iter: 30,
                threads: 1
            );
    }

    [Fact]
    public async Task A_photograph_whose_file_is_gone_is_refused_with_its_file()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 1, 2 });
        await store.AddAsync(Run("A-1", "first", photograph), FilesTogether.None, Stop);
        var file = Assert.Single(PhotographsOf(StorePath));
        File.Delete(file);

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.PhotographAsync(photograph.Sha256, Stop)
        );

        Assert.StartsWith($"{file}, field photograph: found no such file, expected P01.jpg", refused.Message);
    }

    [Fact]
    public async Task A_damaged_photograph_is_whole_again_once_it_is_kept_again()
    {
        var store = await KeepAsync();
        var photograph = Photograph.Of("P01.jpg", new byte[] { 1, 2 });
        await store.AddAsync(Run("A-1", "first", photograph), FilesTogether.None, Stop);
        await File.WriteAllBytesAsync(Assert.Single(PhotographsOf(StorePath)), [1], Stop);

        await store.AddAsync(Run("A-1", "second", photograph), FilesTogether.None, Stop);

        Assert.Equal([1, 2], (await store.PhotographAsync(photograph.Sha256, Stop))!.Bytes.ToArray());
    }

    [Fact]
    public async Task A_database_of_another_program_is_refused_and_left_as_it_is()
    {
        var path = Database("CREATE TABLE visit (id INTEGER)");
        var before = FolderContents.Of(_folder.Path);

        foreach (var open in new Func<Task>[] { () => KeepAsync(path), () => LookAsync(path) })
        {
            var refused = await Assert.ThrowsAsync<InputRefusedException>(open);
            Assert.Contains("found another program's database", refused.Message);
        }
        Assert.Throws<InputRefusedException>(() => CaseStore.Examine(path));
        Assert.Equal(before, FolderContents.Of(_folder.Path));
    }

    [Fact]
    public async Task A_database_that_another_program_migrates_is_refused_too()
    {
        var path = Database(
            "CREATE TABLE visit (id INTEGER); CREATE TABLE __EFMigrationsHistory (MigrationId TEXT, ProductVersion TEXT); INSERT INTO __EFMigrationsHistory VALUES ('20200101000000_Visits', '5.0.0')"
        );

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => KeepAsync(path));

        Assert.Contains("found another program's database", refused.Message);
    }

    [Fact]
    public async Task A_store_of_a_newer_version_is_refused()
    {
        await KeepAsync();
        Change(StorePath, "INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99.0.0')");

        foreach (var open in new Func<Task>[] { () => KeepAsync(), () => LookAsync(StorePath) })
        {
            Assert.Equal(
                $"{StorePath}, field store: found a store made by a newer version of Alburnum, expected a store of version 5 or earlier.",
                (await Assert.ThrowsAsync<InputRefusedException>(open)).Message
            );
        }
    }

    [Fact]
    public void A_path_that_cannot_be_a_store_is_seen_before_anything_is_made()
    {
        Assert.Contains(
            "found a folder, expected a case store",
            Assert.Throws<InputRefusedException>(() => CaseStore.Examine(_folder.Path)).Message,
            StringComparison.Ordinal
        );
        var file = _folder.Write("notes.txt", "x");
        Assert.Contains(
            "which is a file and not a folder",
            Assert.Throws<InputRefusedException>(() => CaseStore.Examine(Path.Combine(file, "cases.db"))).Message,
            StringComparison.Ordinal
        );

        CaseStore.Examine(_folder.At("new.db"));
        Assert.False(File.Exists(_folder.At("new.db")));
    }

    [Fact]
    public async Task A_file_that_is_no_store_is_refused_with_its_path()
    {
        var path = _folder.Write("notes.txt", new string('x', 5000));

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => KeepAsync(path));

        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
        Assert.Contains("found a file that is not a database", refused.Message, StringComparison.Ordinal);
        Assert.Contains("expected a case store", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    // What a migrator that was killed leaves behind: the lock alone, and the lock with an empty history.
    [InlineData(
        "CREATE TABLE __EFMigrationsLock (Id INTEGER, Timestamp TEXT); INSERT INTO __EFMigrationsLock VALUES (1, '')"
    )]
    [InlineData(
        "CREATE TABLE __EFMigrationsLock (Id INTEGER, Timestamp TEXT); INSERT INTO __EFMigrationsLock VALUES (1, ''); CREATE TABLE __EFMigrationsHistory (MigrationId TEXT PRIMARY KEY, ProductVersion TEXT)"
    )]
    public async Task A_store_whose_making_was_cut_off_is_finished(string made)
    {
        var path = Database(made);
        CaseStore.Examine(path);

        var store = await KeepAsync(path);
        await store.AddAsync(Run("A-1", "first"), FilesTogether.None, Stop);

        Assert.Single(await (await LookAsync(path)).ListAsync(Stop));
        Assert.DoesNotContain(".version", string.Join(' ', Directory.EnumerateFiles(_folder.Path)));
    }

    [Fact]
    public async Task Keepers_at_once_all_succeed_and_no_run_is_lost()
    {
        await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(keeper =>
                    Task.Run(async () =>
                    {
                        var store = await KeepAsync();
                        var photograph = Photograph.Of("P01.jpg", new byte[] { 7, 7 });
                        for (var i = 0; i < 5; i++)
                            await store.AddAsync(Run($"A-{keeper}", $"{i}", photograph), FilesTogether.None, Stop);
                    })
                )
        );

        var cases = await (await LookAsync(StorePath)).ListAsync(Stop);
        Assert.Equal(4, cases.Count);
        Assert.All(cases, each => Assert.Equal(5, each.Runs));
    }

    [Fact]
    public async Task A_keeper_that_has_to_wait_says_so_and_goes_on_when_the_other_is_done()
    {
        var said = new List<string>();
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, said.Add, Stop);
        using (var other = new SqliteConnection($"Data Source={StorePath};Pooling=False"))
        {
            other.Open();
            using var transaction = other.BeginTransaction();
            var adding = Task.Run(() => store.AddAsync(Run("A-1", "first"), FilesTogether.None, Stop), Stop);
            while (said.Count == 0 && !adding.IsCompleted)
                await Task.Delay(20, Stop);
            Assert.False(adding.IsCompleted);
            transaction.Rollback();
            await adding;
        }

        Assert.Equal(
            $"{StorePath}: another program is using the store; waiting for it, at most 30 s.",
            Assert.Single(said)
        );
        Assert.Single(await store.ListAsync(Stop));
    }

    [Fact]
    public void A_hash_is_the_published_sha_256_of_the_bytes() =>
        // FIPS 180-2, appendix B.1: the message "abc".
        Assert.Equal(
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            Photograph.Of("abc.txt", "abc"u8.ToArray()).Sha256
        );

    private string StorePath => _folder.At("cases.db");

    private Task<ICaseStore> KeepAsync(string? path = null) =>
        CaseStore.KeepAsync(path ?? StorePath, Person.OfSystem, _ => { }, Stop);

    private static Task<ICaseStore> LookAsync(string path) => CaseStore.LookAsync(path, _ => { }, Stop);

    private static IEnumerable<string> PhotographsOf(string store) =>
        Directory.EnumerateFiles(Path.ChangeExtension(store, ".photographs"), "*", SearchOption.AllDirectories);

    private string Database(string sql)
    {
        var path = _folder.Write("other.db", "");
        Change(path, sql);
        return path;
    }

    private static void Change(string path, string sql)
    {
        using var other = new SqliteConnection($"Data Source={path};Pooling=False");
        other.Open();
        using var change = other.CreateCommand();
        change.CommandText = sql;
        if (sql.Length > 0)
            change.ExecuteNonQuery();
    }

    private static FilesTogether Reports(string folder, string text) =>
        new(folder, [("report.pdf", Encoding.UTF8.GetBytes(text)), ("report.json", Encoding.UTF8.GetBytes(text))]);

    private static CaseRecord Run(string reference, string document, params Photograph[] photographs) =>
        new(
            reference,
            "Title",
            "Client",
            new(2026, 5, 12, 12, 0, 0, DateTimeKind.Utc),
            Verdict.Conforms,
            document,
            photographs,
            [new KeptFile("case.yaml", Encoding.UTF8.GetBytes($"reference: {reference}"))]
        );
}

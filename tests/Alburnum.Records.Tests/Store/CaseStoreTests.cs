using System.Text;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Tests.Store;

public sealed class CaseStoreTests : IDisposable
{
    private static readonly DateTime Noon = new(2026, 5, 12, 12, 0, 0, DateTimeKind.Utc);
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_run_comes_back_as_it_was_kept()
    {
        var store = Open();
        var photograph = Photograph("P01.jpg", 1, 2, 3);
        await store.AddAsync(Run("A-1", "{\"x\": 1}", photograph), Nothing, Stop);

        Assert.Equal("{\"x\": 1}", (await store.RunAsync("A-1", null, Stop))!.Document);
        var kept = await store.PhotographAsync(photograph.Sha256, Stop);
        Assert.Equal(photograph.Bytes.ToArray(), kept!.Bytes.ToArray());
        var entry = Assert.Single(await store.ListAsync(Stop));
        Assert.Equal(("A-1", "conforms", 1), (entry.Reference, entry.Verdict, entry.Runs));
    }

    [Fact]
    public async Task A_second_run_is_added_and_the_first_is_not_changed()
    {
        var store = Open();
        await store.AddAsync(Run("A-1", "first"), Nothing, Stop);
        await store.AddAsync(Run("A-1", "second"), Nothing, Stop);

        Assert.Equal("second", (await store.RunAsync("A-1", null, Stop))!.Document);
        Assert.Equal("first", (await store.RunAsync("A-1", 1, Stop))!.Document);
        Assert.Equal([1, 2], (await store.RunsAsync("A-1", Stop)).Select(run => run.Number));
        Assert.Equal(2, Assert.Single(await store.ListAsync(Stop)).Runs);
    }

    [Fact]
    public async Task The_same_photograph_in_two_runs_is_kept_once()
    {
        var store = Open();
        var photograph = Photograph("P01.jpg", 9, 9);
        await store.AddAsync(Run("A-1", "first", photograph), Nothing, Stop);
        await store.AddAsync(Run("A-2", "second", photograph with { FileName = "other.jpg" }), Nothing, Stop);

        Assert.Equal("P01.jpg", (await store.PhotographAsync(photograph.Sha256, Stop))!.FileName);
    }

    [Fact]
    public async Task Nothing_is_kept_where_the_reports_could_not_be_written()
    {
        var store = Open();

        await Assert.ThrowsAsync<IOException>(() =>
            store.AddAsync(Run("A-1", "lost", Photograph("P01.jpg", 1)), _ => throw new IOException("disk full"), Stop)
        );

        Assert.Empty(await store.ListAsync(Stop));
        Assert.Null(await store.PhotographAsync(Photograph("P01.jpg", 1).Sha256, Stop));
    }

    [Fact]
    public async Task What_the_store_does_not_have_is_null()
    {
        var store = Open();

        Assert.Null(await store.RunAsync("none", null, Stop));
        Assert.Null(await store.RunAsync("none", 1, Stop));
        Assert.Empty(await store.RunsAsync("none", Stop));
        Assert.Null(await store.PhotographAsync(new string('0', 64), Stop));
    }

    [Fact]
    public async Task A_run_keeps_the_papers_it_was_read_from()
    {
        var store = Open();
        await store.AddAsync(Run("A-1", "first"), Nothing, Stop);

        var paper = Assert.Single((await store.RunAsync("A-1", null, Stop))!.Papers);
        Assert.Equal("case.yaml", paper.FileName);
        Assert.Equal("reference: A-1", Encoding.UTF8.GetString(paper.Bytes.Span));
    }

    [Fact]
    public void A_database_of_another_program_is_refused_and_left_as_it_is()
    {
        var path = _folder.At("other.db");
        using (var other = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            other.Open();
            using var make = other.CreateCommand();
            make.CommandText = "CREATE TABLE visit (id INTEGER)";
            make.ExecuteNonQuery();
        }
        var before = File.ReadAllBytes(path);

        var refused = Assert.Throws<InputRefusedException>(() => CaseStore.Open(path));

        Assert.Contains("found a database of another program", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(path));
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
    public void A_file_that_is_no_store_is_refused_with_its_path()
    {
        var path = _folder.Write("notes.txt", new string('x', 5000));

        var refused = Assert.Throws<InputRefusedException>(() => CaseStore.Open(path));

        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
        Assert.Contains("found a file that is no database", refused.Message, StringComparison.Ordinal);
        Assert.Contains("expected a case store", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fingerprint_is_the_published_sha_256_of_the_bytes() =>
        // FIPS 180-2, appendix B.1: the message "abc".
        Assert.Equal(
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            CaseStore.Fingerprint("abc"u8)
        );

    private CaseStore Open() => CaseStore.Open(_folder.At("cases.db"));

    private static Task Nothing(CancellationToken stop) => Task.CompletedTask;

    private static PhotographRecord Photograph(string name, params byte[] bytes) =>
        new(CaseStore.Fingerprint(bytes), name, bytes);

    private static CaseRecord Run(string reference, string document, params PhotographRecord[] photographs) =>
        new(
            reference,
            "Title",
            "Client",
            Noon,
            "conforms",
            document,
            photographs,
            [new PaperRecord("case.yaml", Encoding.UTF8.GetBytes($"reference: {reference}"))]
        );
}

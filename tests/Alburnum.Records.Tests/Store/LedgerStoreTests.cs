using System.Text;
using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Microsoft.Data.Sqlite;

namespace Alburnum.Records.Tests.Store;

/// <summary>The ledger of a store: what is entered, what a change of the store does to it, and what can be removed.</summary>
public sealed class LedgerStoreTests : IDisposable
{
    private static readonly Person Jo = new("Jo Alder", PersonKnownBy.Command);
    private static readonly Photograph First = Photograph.Of("P01.jpg", new byte[] { 1, 2, 3 });
    private static readonly Photograph Second = Photograph.Of("P02.jpg", new byte[] { 4, 5, 6 });
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_run_enters_what_was_done_with_who_did_it_and_a_second_only_what_is_otherwise()
    {
        var store = await KeepAsync();
        await store.AddAsync(
            Run(First) with
            {
                Statements =
                [
                    new(LedgerAct.RulebookChosen, null, "one"),
                    new(LedgerAct.MarksPlaced, "P01", "corners: 1"),
                    new(LedgerAct.PhotographLeftOut, "P09.jpg", "blurred"),
                ],
                Inputs = new("Alburnum", "aa", "one", "bb"),
            },
            Reports("first"),
            Stop
        );
        await store.AddAsync(
            Run(First, Second) with
            {
                Statements =
                [
                    new(LedgerAct.RulebookChosen, null, "one"),
                    new(LedgerAct.MarksPlaced, "P01", "corners: 2"),
                ],
                Inputs = new("Alburnum", "aa", "one", "bb"),
            },
            FilesTogether.None,
            Stop
        );

        var entries = await store.LedgerAsync(1, Stop);

        Assert.All(entries, entry => Assert.Equal(Jo, entry.Who));
        Assert.Equal(
            [
                "case named",
                "photograph taken in",
                "rulebook chosen",
                "marks placed",
                "photograph left out",
                "inputs used",
                "case run",
                "verdict given",
                "reports issued",
            ],
            entries.Take(9).Select(entry => entry.Act.Key())
        );
        Assert.Equal(
            [
                ("photograph taken in", "P02.jpg", null, Second.Sha256),
                ("marks placed", "P01", "corners: 1", "corners: 2"),
                ("photograph left out", "P09.jpg", "blurred", null),
                ("case run", null, null, entries[12].After!.Text),
                ("verdict given", null, "conforms", "conforms"),
            ],
            entries
                .Skip(9)
                .Select(entry => (entry.Act.Key(), entry.Subject?.Text, entry.Before?.Text, entry.After?.Text))
        );
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
    }

    [Theory]
    [InlineData("UPDATE run SET Document = replace(Document, 'x', 'y')", "cases/1/runs/1/report.json")]
    [InlineData("UPDATE run SET Verdict = 'does not conform'", "cases/1/runs/1/run.json")]
    [InlineData("UPDATE run SET Client = 'another'", "cases/1/runs/1/run.json")]
    [InlineData("UPDATE paper SET Bytes = x'00'", "cases/1/runs/1/files/case.yaml")]
    [InlineData("DELETE FROM run_photograph", "cases/1/runs/1/run.json")]
    [InlineData("UPDATE ledger SET Sealed = replace(Sealed, 'verdict given', 'verdict giv3n')", "entry 5")]
    [InlineData("UPDATE ledger SET Opened = replace(Opened, 'Rails', 'Posts') WHERE Number = 2", "entry 2")]
    [InlineData("UPDATE ledger SET Hash = replace(Hash, '0', '1') WHERE Number = 3", "entry 3")]
    [InlineData("UPDATE ledger SET Opened = json_insert(Opened, '$.extra', json('{}')) WHERE Number = 2", "entry 2")]
    [InlineData("DELETE FROM ledger WHERE Number = 3", "entry 4")]
    [InlineData(
        "UPDATE ledger SET Number = -3 WHERE Number = 3; UPDATE ledger SET Number = 3 WHERE Number = 4; UPDATE ledger SET Number = 4 WHERE Number = -3",
        "entry 3"
    )]
    public async Task Whatever_is_changed_in_the_database_is_named(string sql, string named)
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        Change(sql);

        var faults = (await store.VerifyAsync(null, Stop)).Faults;

        Assert.Equal(named, faults[0].Row);
    }

    [Fact]
    public async Task Another_name_of_a_photograph_is_named_also_after_a_case_was_deleted()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        await store.AddAsync(
            Run(Photograph.Of("board.jpg", First.Bytes)) with
            {
                CaseNumber = null,
                Reference = "B-2",
                Title = "Boards",
            },
            FilesTogether.None,
            Stop
        );

        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
        Change("UPDATE photograph SET FileName = 'P09.jpg'");
        var fault = Assert.Single((await store.VerifyAsync(null, Stop)).Faults);
        Assert.Equal($"photographs/{First.Sha256}", fault.Row);
        Assert.Equal("the name P09.jpg", fault.Found);

        Change("UPDATE photograph SET FileName = 'P01.jpg'");
        await store.DeleteCaseAsync(new(1, "asked for"), Stop);
        // It has the name now that the case which is left gives it.
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
        Assert.Equal("board.jpg", (await store.PhotographAsync(First.Sha256, Stop))!.FileName);
        Change("UPDATE photograph SET FileName = 'P01.jpg'");
        Assert.Single((await store.VerifyAsync(null, Stop)).Faults);
    }

    [Fact]
    public async Task A_redaction_that_would_leave_a_case_unreadable_changes_nothing()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        var before = (await store.RunAsync(1, null, Stop))!.Document;

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.RedactAsync(
                new(1, "asked for"),
                "Dora",
                run => Task.FromResult(run.Document.Contains("Dora", StringComparison.Ordinal)),
                Stop
            )
        );

        Assert.Contains("expected a longer text", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, (await store.RunAsync(1, null, Stop))!.Document);
    }

    [Fact]
    public async Task What_another_program_planted_is_named()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        Change("CREATE TRIGGER planted AFTER INSERT ON run BEGIN UPDATE run SET Title = 'other'; END");

        var fault = Assert.Single((await store.VerifyAsync(null, Stop)).Faults);

        Assert.Equal("a damaged store: the trigger planted is not of this program's making", fault.Found);
    }

    [Fact]
    public async Task A_run_slipped_in_past_the_ledger_is_named()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        Change(
            "INSERT INTO run (CaseNumber, Reference, Title, Client, RunAt, Verdict, Document) SELECT CaseNumber, Reference, Title, Client, RunAt, Verdict, Document FROM run"
        );

        Assert.Equal(
            ["cases/1/runs/2/run.json", "cases/1/runs/2/report.json"],
            (await store.VerifyAsync(null, Stop)).Faults.Select(fault => fault.Row)
        );
    }

    [Fact]
    public async Task A_photograph_changed_or_gone_is_named()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First, Second), FilesTogether.None, Stop);
        await File.AppendAllTextAsync(PathOf(First), "x", Stop);
        File.Delete(PathOf(Second));

        var faults = (await store.VerifyAsync(null, Stop)).Faults;

        Assert.Equal(
            new[] { First, Second }.Select(each => $"photographs/{each.Sha256}"),
            faults.Select(fault => fault.Row)
        );
        Assert.Equal("nothing", faults[1].Found);
    }

    [Fact]
    public async Task A_store_from_before_the_ledger_gets_one_with_what_is_in_it()
    {
        File.Copy(Repository.At("tests", "Alburnum.Records.Tests", "Store", "version-2.store"), StorePath);

        var store = await KeepAsync();

        Assert.Equal(
            ["case named", "photograph taken in", "run found", "verdict given"],
            (await store.LedgerAsync(1, Stop)).Select(entry => entry.Act.Key())
        );
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
        Change("UPDATE run SET Document = Document || ' '");
        Assert.Equal("cases/1/runs/1/report.json", Assert.Single((await store.VerifyAsync(null, Stop)).Faults).Row);
    }

    [Fact]
    public async Task A_name_that_is_redacted_is_nowhere_in_the_store_and_the_chain_is_whole()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        await store.AddAsync(Run(First) with { CaseNumber = null, Reference = "B-2" }, FilesTogether.None, Stop);

        var redaction = await store.RedactAsync(
            new(1, "asked for"),
            "Dora \"Q\" Client",
            _ => Task.FromResult(true),
            Stop
        );

        Assert.Equal((2, 3, 1), (redaction.Texts, redaction.Files, redaction.Photographs));
        var run = (await store.RunAsync(1, null, Stop))!;
        Assert.Equal(
            "{\n  \"client\": \"REDACTED\",\n  \"x\": 1\n}",
            run.Document.Replace("\r\n", "\n", StringComparison.Ordinal)
        );
        Assert.Equal("reference: A-1\nclient: REDACTED", Encoding.UTF8.GetString(run.Files[0].Bytes.Span));
        Assert.Equal("REDACTED", (await store.ListAsync(Stop)).Single(each => each.Number == 1).Client);
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
        // The other case of the same client is another matter, and says its name still.
        Assert.Equal("Dora \"Q\" Client", (await store.ListAsync(Stop)).Single(each => each.Number == 2).Client);
        await store.RedactAsync(new(2, "asked for"), "Dora \"Q\" Client", _ => Task.FromResult(true), Stop);
        Assert.DoesNotContain(
            "Dora",
            await File.ReadAllTextAsync(StorePath, Encoding.Latin1, Stop),
            StringComparison.Ordinal
        );
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
    }

    [Fact]
    public async Task What_was_taken_out_without_a_redaction_is_not_covered_up_by_the_next()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        Change("UPDATE ledger SET Opened = '{}' WHERE Number = 2");

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.RedactAsync(new(1, "asked for"), "A-1", _ => Task.FromResult(true), Stop)
        );

        Assert.Contains("row \"entry 2\", field after: found no text", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A", "asked for", "at least 3 letters")]
    [InlineData("nowhere", "asked for", "letter for letter")]
    [InlineData("Dora", "Dora asked", "a reason without it")]
    [InlineData("Alder", "asked for", "another person")]
    public async Task A_redaction_that_cannot_be_meant_changes_nothing(string text, string because, string expected)
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        var before = FolderContents.Of(_folder.Path);

        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            store.RedactAsync(new(1, because), text, _ => Task.FromResult(true), Stop)
        );

        Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, FolderContents.Of(_folder.Path));
    }

    [Fact]
    public async Task A_deleted_case_leaves_its_entries_without_texts_and_one_that_says_why()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First, Second), FilesTogether.None, Stop);
        await store.AddAsync(
            Run(Second) with
            {
                Reference = "B-2",
                Client = "another",
                Files = [],
                Document = "{}",
            },
            FilesTogether.None,
            Stop
        );

        var deletion = await store.DeleteCaseAsync(new(1, "asked for"), Stop);

        Assert.Equal(new CaseDeletion(Runs: 1, Photographs: 1, Entries: 6), deletion);
        Assert.Null(await store.RunAsync(1, null, Stop));
        // Another case rests on the second.
        Assert.False(File.Exists(PathOf(First)));
        Assert.NotNull(await store.PhotographAsync(Second.Sha256, Stop));
        var entries = await store.LedgerAsync(1, Stop);
        Assert.All(entries.SkipLast(1), entry => Assert.Null(entry.Who));
        Assert.Equal(
            (LedgerAct.CaseDeleted, Jo, "asked for"),
            (entries[^1].Act, entries[^1].Who, entries[^1].Subject!.Text)
        );
        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
        Assert.DoesNotContain(
            "Dora",
            await File.ReadAllTextAsync(StorePath, Encoding.Latin1, Stop),
            StringComparison.Ordinal
        );
        // Its number stays its own.
        var kept = await store.AddAsync(Run() with { Reference = "C-3", Client = "third" }, FilesTogether.None, Stop);
        Assert.Equal(3, kept.CaseNumber);
    }

    [Fact]
    public async Task A_photograph_that_a_deletion_took_along_is_written_again_with_the_run_that_needs_it()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        using var other = new SqliteConnection($"Data Source={StorePath};Pooling=False");
        other.Open();
        using var held = other.BeginTransaction();
        // It finds its photograph there, and waits for its turn; meanwhile the file goes.
        var adding = Task.Run(
            () => store.AddAsync(Run(First) with { Document = "{}" }, FilesTogether.None, Stop),
            Stop
        );
        await Task.Delay(300, Stop);
        File.Delete(PathOf(First));
        held.Rollback();
        await adding;

        Assert.Empty((await store.VerifyAsync(null, Stop)).Faults);
    }

    [Fact]
    public async Task A_correction_is_a_new_entry_and_the_old_one_stays()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run(First), FilesTogether.None, Stop);
        var before = await store.LedgerAsync(1, Stop);

        await store.CorrectAsync(1, 3, "the photograph shows P07", Stop);

        var after = await store.LedgerAsync(1, Stop);
        Assert.Equal(before, after.SkipLast(1));
        Assert.Equal(("3", "the photograph shows P07"), (after[^1].Subject!.Text, after[^1].After!.Text));
        await Assert.ThrowsAsync<InputRefusedException>(() => store.CorrectAsync(1, 1, "not of this case", Stop));
    }

    [Fact]
    public async Task A_case_is_meant_by_its_number_or_by_a_reference_that_it_alone_has()
    {
        var store = await KeepAsync();
        await store.AddAsync(Run() with { Reference = "7" }, FilesTogether.None, Stop);
        await store.AddAsync(Run() with { Reference = "7", Title = "x", Client = "x" }, FilesTogether.None, Stop);
        await store.AddAsync(Run() with { Reference = "B/2" }, FilesTogether.None, Stop);

        Assert.Equal(1, await store.CaseNumberAsync("1", Stop));
        Assert.Equal(3, await store.CaseNumberAsync("B/2", Stop));
        Assert.Contains(
            "found 7 as the reference of the cases 1, 2",
            (await Assert.ThrowsAsync<InputRefusedException>(() => store.CaseNumberAsync("7", Stop))).Message,
            StringComparison.Ordinal
        );
        await Assert.ThrowsAsync<InputRefusedException>(() => store.CaseNumberAsync("nobody's", Stop));
    }

    private Task<ICaseStore> KeepAsync() => CaseStore.KeepAsync(StorePath, Jo, _ => { }, Stop);

    private FilesTogether Reports(string text) =>
        new(_folder.At("reports"), [("report.json", Encoding.UTF8.GetBytes(text))]);

    private string PathOf(Photograph photograph) =>
        Path.Combine(_folder.At("cases.photographs"), photograph.Sha256[..2], photograph.Sha256);

    private static CaseRecord Run(params Photograph[] photographs) =>
        new(
            "A-1",
            "Rails",
            "Dora \"Q\" Client",
            DateTime.UnixEpoch,
            Verdict.Conforms,
            "{\n  \"client\": \"Dora \\\"Q\\\" Client\",\n  \"x\": 1\n}",
            photographs,
            [new("case.yaml", Encoding.UTF8.GetBytes("reference: A-1\nclient: Dora \"Q\" Client"))]
        );

    private void Change(string sql)
    {
        using var other = new SqliteConnection($"Data Source={StorePath};Pooling=False");
        other.Open();
        using var change = other.CreateCommand();
        change.CommandText = sql;
        change.ExecuteNonQuery();
    }
}

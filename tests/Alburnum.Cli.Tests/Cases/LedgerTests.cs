using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;
using Microsoft.Data.Sqlite;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>The program itself on a ledger: what it shows, and what it says once something was changed behind its back.</summary>
public sealed class LedgerTests : IAsyncLifetime
{
    private static readonly (string, string?)[] WithPassphrase = [("ALBURNUM_PASSPHRASE", "sapwood, heartwood, pith")];
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    private string Bundle => _folder.At("handed-over.zip");

    public async ValueTask InitializeAsync()
    {
        var run = await RealProgram.RunAsync([
            "case",
            RealProgram.CopyCase(_folder),
            "--store",
            StorePath,
            "--out",
            _folder.At("reports"),
            "--by",
            "Jo Alder",
        ]);
        Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task What_was_done_is_shown_with_who_did_it_and_verifies()
    {
        var shown = await RunAsync("ledger", "show", "TH-2026-011", "--json");
        var verified = await RunAsync("ledger", "verify");

        using var ledger = JsonDocument.Parse(shown.Output);
        var entries = ledger.RootElement.GetProperty("entries").EnumerateArray().ToList();
        Assert.Equal(
            [
                "case named",
                "photograph taken in",
                "rulebook chosen",
                "inputs used",
                "case run",
                "verdict given",
                "reports issued",
            ],
            entries.Select(entry => entry.GetProperty("act").GetString())
        );
        Assert.All(entries, entry => Assert.Equal("Jo Alder", entry.GetProperty("by").GetString()));
        var reports = entries[^1].GetProperty("after").GetString()!;
        foreach (var report in Directory.GetFiles(_folder.At("reports")))
            Assert.Contains(
                Photograph.Of("", await File.ReadAllBytesAsync(report, Stop)).Sha256,
                reports,
                StringComparison.Ordinal
            );
        Assert.Equal((CommandLine.Done, ""), (verified.Status, verified.Errors));
        Assert.StartsWith("Verified: 8 entries", verified.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("UPDATE ledger SET Sealed = replace(Sealed, '\"case\":1', '\"case\":2') WHERE Number = 6", "entry 6")]
    [InlineData("DELETE FROM ledger WHERE Number = 4", "found entry 4 missing before it")]
    [InlineData(
        "UPDATE ledger SET Number = -3 WHERE Number = 3; UPDATE ledger SET Number = 3 WHERE Number = 5; UPDATE ledger SET Number = 5 WHERE Number = -3",
        "found entry 5 of case 1, expected entry 3 of case 1"
    )]
    [InlineData("UPDATE run SET Document = replace(Document, 'undecided', 'conforms')", "cases/1/runs/1/report.json")]
    [InlineData("UPDATE run SET Verdict = 'conforms'", "cases/1/runs/1/run.json")]
    public async Task A_change_in_the_database_is_named_and_the_status_is_that_of_a_refusal(string sql, string named)
    {
        Change(sql);

        var verified = await RunAsync("ledger", "verify");

        Assert.Equal((CommandLine.Refused, ""), (verified.Status, verified.Output));
        Assert.Contains(named, verified.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photograph_changed_in_the_store_is_named()
    {
        var photograph = Directory.GetFiles(_folder.At("cases.photographs"), "*", SearchOption.AllDirectories).Single();
        await File.AppendAllTextAsync(photograph, "x", Stop);

        var verified = await RunAsync("ledger", "verify");

        Assert.Equal(CommandLine.Refused, verified.Status);
        Assert.StartsWith(
            $"{StorePath}, row \"photographs/{Path.GetFileName(photograph)}\": found a file that was changed",
            verified.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_mark_moved_a_photograph_left_out_and_a_rulebook_chosen_are_entered_with_what_was_before()
    {
        var file = Path.Combine(_folder.At("case"), "case.yaml");
        File.Copy(Path.Combine(_folder.At("case"), "P06.jpg"), Path.Combine(_folder.At("case"), "P09.jpg"));
        var plain = await File.ReadAllTextAsync(file, Stop);
        const string piece = "photograph: P06.jpg }";
        const string leftOut = "leftOut:\n  - { photograph: P09.jpg, reason: blurred }\n";
        await RunCaseAsync(
            plain.Replace(piece, "photograph: P06.jpg, leaveOut: \"10,10\" }", StringComparison.Ordinal) + leftOut
        );
        await RunCaseAsync(
            plain
                .Replace(piece, "photograph: P06.jpg, leaveOut: \"12,11\" }", StringComparison.Ordinal)
                .Replace("british-2014", "british-2024", StringComparison.Ordinal) + leftOut
        );

        var entries = await (await LookAsync()).LedgerAsync(1, Stop);

        Assert.Equal(
            [("P06", null, "leaveOut: \"10,10\""), ("P06", "leaveOut: \"10,10\"", "leaveOut: \"12,11\"")],
            entries
                .Where(entry => entry.Act == LedgerAct.MarksPlaced)
                .Select(entry => (entry.Subject?.Text, entry.Before?.Text, entry.After?.Text))
        );
        var exclusion = Assert.Single(entries, entry => entry.Act == LedgerAct.PhotographLeftOut);
        Assert.Equal(("P09.jpg", "blurred"), (exclusion.Subject!.Text, exclusion.After!.Text));
        Assert.Equal(
            [false, true],
            entries
                .Where(entry => entry.Act == LedgerAct.RulebookChosen)
                .Select(entry => entry.Before?.Text?.Contains("BS 8417:2011", StringComparison.Ordinal) == true)
        );

        async Task RunCaseAsync(string text)
        {
            await File.WriteAllTextAsync(file, text, Stop);
            var run = await RunAsync("case", _folder.At("case"), "--out", _folder.At("reports"));
            Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
        }
    }

    [Theory]
    [InlineData(null, "Dora", "Dora", "setting")]
    [InlineData("Jo", "Dora", "Jo", "command")]
    [InlineData(null, null, null, "system")]
    public async Task Who_did_it_is_entered_with_how_that_is_known(
        string? option,
        string? variable,
        string? name,
        string knownBy
    )
    {
        string[] by = option is null ? [] : ["--by", option];
        var corrected = await RealProgram.RunAsync(
            ["ledger", "correct", "1", "2", "as it is right", "--store", StorePath, .. by],
            ("ALBURNUM_BY", variable)
        );

        Assert.Equal(CommandLine.Done, corrected.Status);
        var last = (await (await LookAsync()).LedgerAsync(1, Stop))[^1];
        Assert.Equal((name ?? Environment.UserName, knownBy), (last.Who!.Name, last.Who.KnownBy.Key()));
    }

    [Fact]
    public async Task An_end_cut_off_is_seen_against_the_hash_that_was_noted()
    {
        var head = Head((await RunAsync("ledger", "verify")).Output);
        Change("DELETE FROM ledger WHERE Number = 8");

        var without = await RunAsync("ledger", "verify");
        var against = await RunAsync("ledger", "verify", "--head", head.ToUpperInvariant());

        Assert.Equal((CommandLine.Done, CommandLine.Refused), (without.Status, against.Status));
        Assert.Contains($"found no entry with the hash {head}", against.Errors, StringComparison.Ordinal);
        Assert.Equal(CommandLine.Refused, (await RunAsync("ledger", "verify", "--head", "abc")).Status);
    }

    [Fact]
    public async Task A_clock_set_back_is_a_remark()
    {
        // As if the run had been kept by a machine whose clock was a year ahead.
        var begun = (await (await LookAsync()).LedgerAsync(1, Stop))[0].At;
        RewriteLast(begun.AddYears(1));
        var corrected = await RunAsync("ledger", "correct", "1", "2", "the client moved", "--by", "Jo Alder");

        var verified = await RunAsync("ledger", "verify");

        Assert.Equal((CommandLine.Done, CommandLine.Done), (corrected.Status, verified.Status));
        Assert.Contains("Remark: entry 9 is of", InOneLine(verified.Output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_case_handed_over_verifies_elsewhere_and_a_changed_one_does_not()
    {
        var written = await RealProgram.RunAsync(
            ["bundle", "write", "1", Bundle, "--store", StorePath],
            WithPassphrase
        );
        var key = await RunAsync("bundle", "key");
        var fingerprint = key.Output.Split(' ').First(word => word.Trim('.', '\n').Length == 64).Trim('.', '\n');
        var elsewhere = Directory.CreateDirectory(_folder.At("elsewhere")).FullName;
        File.Move(Bundle, Path.Combine(elsewhere, "case.zip"));
        string[] words = ["bundle", "verify", Path.Combine(elsewhere, "case.zip"), "--key", fingerprint];
        (string, string?)[] noStore = [("ALBURNUM_STORE", Path.Combine(elsewhere, "none.db")), ("HOME", elsewhere)];

        var verified = await RealProgram.RunAsync(words, noStore);
        using (var zip = ZipFile.Open(words[2], ZipArchiveMode.Update))
        {
            using var report = zip.GetEntry("cases/1/runs/1/report.json")!.Open();
            report.WriteByte((byte)' ');
        }
        var changed = await RealProgram.RunAsync(words, noStore);

        Assert.Equal((CommandLine.Done, ""), (written.Status, written.Errors));
        Assert.Equal((CommandLine.Done, ""), (verified.Status, verified.Errors));
        Assert.StartsWith("Verified: case 1", verified.Output, StringComparison.Ordinal);
        Assert.Equal(CommandLine.Refused, changed.Status);
        Assert.Contains(
            "row \"cases/1/runs/1/report.json\": found a file that was changed",
            changed.Errors,
            StringComparison.Ordinal
        );
        Assert.Equal([words[2]], Directory.GetFileSystemEntries(elsewhere));
    }

    [Fact]
    public async Task Without_a_passphrase_and_nobody_to_ask_no_key_is_made()
    {
        var written = await RealProgram.RunAsync(
            ["bundle", "write", "1", Bundle, "--store", StorePath],
            ("ALBURNUM_PASSPHRASE", null)
        );
        var key = await RunAsync("bundle", "key");

        Assert.Equal((CommandLine.Refused, CommandLine.Refused), (written.Status, key.Status));
        Assert.StartsWith("--passphrase-file: found nothing", written.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder.Path, "*.pem"));
    }

    // OpenSSL and hashlib, which know nothing of this program.
    [Fact]
    public async Task Other_programs_verify_the_same_bundle()
    {
        await RealProgram.RunAsync(["bundle", "write", "1", Bundle, "--store", StorePath], WithPassphrase);
        var script = Repository.At("tests", "Alburnum.OutsideChecks", "reference", "bundle.py");
        if (!File.Exists("/usr/bin/python3") || !File.Exists("/usr/bin/openssl"))
            Assert.Skip("Needs python3 and openssl.");

        var verified = await RealProgram.RunAsync("/usr/bin/python3", [script, Bundle]);
        using (var zip = ZipFile.Open(Bundle, ZipArchiveMode.Update))
        {
            using var report = zip.GetEntry("ledger.jsonl")!.Open();
            report.WriteByte((byte)' ');
        }
        var changed = await RealProgram.RunAsync("/usr/bin/python3", [script, Bundle]);

        Assert.Equal((0, ""), (verified.Status, verified.Errors));
        Assert.StartsWith("verified: 7 entries, 4 files", verified.Output, StringComparison.Ordinal);
        Assert.Equal((1, "ledger.jsonl: another SHA-256\n"), (changed.Status, changed.Output));
    }

    [Fact]
    public async Task A_name_is_redacted_and_the_ledger_verifies()
    {
        var redacted = await RunAsync("ledger", "redact", "1", "Thornhollow estate", "--because", "asked for");
        var verified = await RunAsync("ledger", "verify");

        Assert.Equal((CommandLine.Done, CommandLine.Done), (redacted.Status, verified.Status));
        Assert.Contains("The chain is whole.", redacted.Output, StringComparison.Ordinal);
        var run = (await (await LookAsync()).RunAsync(1, null, Stop))!.Document;
        Assert.Contains("\"client\": \"REDACTED, the orchard\"", run, StringComparison.Ordinal);
        Assert.Equal(CommandLine.Refused, (await RunAsync("ledger", "redact", "1", "orchard")).Status);
        // Each stands in a word without which the case, its file or its result cannot be read.
        foreach (var text in (string[])["undecided", "post", "rule", "case.yaml"])
        {
            var unreadable = await RunAsync("ledger", "redact", "1", text, "--because", "asked for");
            Assert.True(unreadable.Status == CommandLine.Refused, $"{text}: {unreadable.Output}");
        }
    }

    [Fact]
    public async Task A_case_is_deleted_only_by_number_and_reference_and_leaves_a_last_entry()
    {
        var mistaken = await RunAsync("store", "delete-case", "1", "TH-2026-012", "--because", "asked for");
        var deleted = await RunAsync("store", "delete-case", "1", "TH-2026-011", "--because", "asked for");
        var verified = await RunAsync("ledger", "verify");
        var shown = await RunAsync("ledger", "show", "1");

        Assert.Equal(
            [CommandLine.Refused, CommandLine.Done, CommandLine.Done, CommandLine.Done],
            new[] { mistaken, deleted, verified, shown }.Select(run => run.Status)
        );
        Assert.Contains("case deleted, asked for", shown.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Thornhollow", shown.Output, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder.At("cases.photographs"), "*", SearchOption.AllDirectories));
    }

    private Task<AlburnumRun> RunAsync(params string[] words) => RealProgram.RunAsync([.. words, "--store", StorePath]);

    private Task<ICaseStore> LookAsync() => CaseStore.LookAsync(StorePath, _ => { }, Stop);

    private static string Head(string output) =>
        InOneLine(output).Split(' ').Single(word => word.Trim('.').Length == 64).Trim('.');

    private static string InOneLine(string output) =>
        string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    // The last entry, with another time and the hash that goes with it.
    private void RewriteLast(DateTime at)
    {
        using var store = new SqliteConnection($"Data Source={StorePath};Pooling=False");
        store.Open();
        using var ask = store.CreateCommand();
        ask.CommandText = "SELECT Sealed FROM ledger WHERE Number = 8";
        var text = (string)ask.ExecuteScalar()!;
        var was = JsonDocument.Parse(text).RootElement.GetProperty("at").GetString()!;
        text = text.Replace(was, at.ToString("O", CultureInfo.InvariantCulture), StringComparison.Ordinal);
        using var change = store.CreateCommand();
        change.CommandText = "UPDATE ledger SET Sealed = $text, Hash = $hash WHERE Number = 8";
        change.Parameters.AddWithValue("$text", text);
        change.Parameters.AddWithValue("$hash", Photograph.Of("", System.Text.Encoding.UTF8.GetBytes(text)).Sha256);
        change.ExecuteNonQuery();
    }

    private void Change(string sql)
    {
        using var store = new SqliteConnection($"Data Source={StorePath};Pooling=False");
        store.Open();
        using var change = store.CreateCommand();
        change.CommandText = sql;
        change.ExecuteNonQuery();
    }
}

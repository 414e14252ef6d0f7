using System.Text;
using System.Text.RegularExpressions;
using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Faults;

/// <summary>
/// Whatever the program does to a store, a kill or a power cut at any moment of it loses nothing that was acknowledged, shows nothing
/// half-written and leaves nothing to mend by hand.
/// </summary>
public sealed class EveryMomentTests : IDisposable
{
    /// <summary>Moments of each act; <c>./test --quick</c> takes fewer.</summary>
    private static readonly int Moments = Quick.IsAsked ? 5 : 25;

    /// <summary>Runs of the program that may be needed to come by so many.</summary>
    private const int MostRuns = 12;

    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Work => _folder.At("work");

    private string Copies => _folder.At("copies");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("the first run", 11)]
    [InlineData("a run more", 12)]
    [InlineData("an older store brought forward", 13)]
    [InlineData("a run kept from the browser", 14)]
    [InlineData("marks kept from the browser", 19)]
    public async Task Keeping_a_run_can_be_cut_off_anywhere(string act, int seed)
    {
        await TakeAsync(
            seed,
            async (random, most) =>
            {
                Begin(act);
                await (
                    act.EndsWith("from the browser", StringComparison.Ordinal)
                        ? FrozenProgram.RunAsync(
                            Work,
                            Copies,
                            most,
                            random,
                            ["serve", "--port", "0", "--store", Store(Work)],
                            act.StartsWith("marks", StringComparison.Ordinal)
                                ? KeepMarksAsync
                                : HoldUnderAnotherRulebookAsync
                        )
                        : FrozenProgram.RunAsync(Work, Copies, most, random, KeepRun, meanwhile: null)
                );
            }
        );
        var acknowledged = act == "the first run" ? 0 : 1;

        await HoldAsync(seed, copy => CheckAsync(copy, acknowledged));
    }

    [Fact]
    public async Task A_back_up_can_be_cut_off_anywhere()
    {
        string[] backUp = ["store", "back-up", Path.Combine(Work, "kept.zip"), "--store", Store(Work)];
        await TakeAsync(
            15,
            (random, most) =>
            {
                Begin("a back-up");
                return FrozenProgram.RunAsync(Work, Copies, most, random, backUp, meanwhile: null);
            }
        );

        await HoldAsync(
            15,
            async copy =>
            {
                await CheckAsync(copy, 1);
                var file = Path.Combine(copy, "kept.zip");
                if (!File.Exists(file))
                    Assert.Equal(
                        CommandLine.Done,
                        (await AlburnumRun.Of("store", "back-up", file, "--store", Store(copy))).Status
                    );
                var restored = Path.Combine(copy, "again", "cases.db");
                var run = await AlburnumRun.Of("store", "restore", file, "--store", restored);
                Assert.True(run.Status == CommandLine.Done, run.Errors);
            }
        );
    }

    [Fact]
    public async Task Handing_a_case_over_can_be_cut_off_anywhere()
    {
        var passphrase = _folder.Write("passphrase.txt", "sapwood, heartwood, pith\n");
        string[] Write(string folder) =>
            [
                "bundle",
                "write",
                "1",
                Path.Combine(folder, "case.zip"),
                "--store",
                Store(folder),
                "--passphrase-file",
                passphrase,
            ];
        await TakeAsync(
            17,
            (random, most) =>
            {
                Begin("handing over");
                return FrozenProgram.RunAsync(Work, Copies, most, random, Write(Work), meanwhile: null);
            }
        );

        await HoldAsync(
            17,
            async copy =>
            {
                await CheckAsync(copy, 1);
                var file = Path.Combine(copy, "case.zip");
                // Whole, or not there and written anew, with the key that was made or another.
                if (!File.Exists(file))
                {
                    var again = await AlburnumRun.Of(Write(copy));
                    Assert.True(again.Status == CommandLine.Done, again.Errors);
                }
                var verified = await AlburnumRun.Of("bundle", "verify", file);
                Assert.True(verified.Status == CommandLine.Done, verified.Output + verified.Errors);
            }
        );
    }

    [Fact]
    public async Task Removing_a_name_can_be_cut_off_anywhere()
    {
        await TakeAsync(
            18,
            (random, most) =>
            {
                Begin("a redaction");
                string[] redact =
                [
                    "ledger",
                    "redact",
                    "1",
                    "Thornhollow estate",
                    "--because",
                    "asked for",
                    "--store",
                    Store(Work),
                ];
                return FrozenProgram.RunAsync(Work, Copies, most, random, redact, meanwhile: null);
            }
        );

        await HoldAsync(18, copy => CheckAsync(copy, 1));
    }

    [Fact]
    public async Task A_restoring_can_be_cut_off_anywhere()
    {
        var file = _folder.At("kept.zip");
        string[] restore = ["store", "restore", file, "--store", Store(Work)];
        await TakeAsync(
            16,
            async (random, most) =>
            {
                Begin("a restoring");
                if (!File.Exists(file))
                    Assert.Equal(
                        CommandLine.Done,
                        (await AlburnumRun.Of("store", "back-up", file, "--store", Store(Work))).Status
                    );
                Directory.Delete(Work, recursive: true);
                Directory.CreateDirectory(Work);
                await FrozenProgram.RunAsync(Work, Copies, most, random, restore, meanwhile: null);
            }
        );

        await HoldAsync(
            16,
            async copy =>
            {
                // What is there is there whole; what is not can be restored anew.
                if (!File.Exists(Store(copy)))
                {
                    var run = await AlburnumRun.Of("store", "restore", file, "--store", Store(copy));
                    Assert.True(run.Status == CommandLine.Done, run.Errors);
                }
                await CheckAsync(copy, 1);
            }
        );
    }

    private static string Store(string folder) => Path.Combine(folder, "cases.db");

    private IReadOnlyList<string> KeepRun =>
        [
            "case",
            Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case"),
            "--store",
            Store(Work),
            "--out",
            Path.Combine(Work, "reports"),
        ];

    private void Begin(string act)
    {
        if (Directory.Exists(Work))
            Directory.Delete(Work, recursive: true);
        Directory.CreateDirectory(Work);
        if (act == "the first run")
            return;
        var kept = Repository.At("tests", "Alburnum.Records.Tests", "Store", "version-2.store");
        File.Copy(kept, Store(Work));
        if (act == "an older store brought forward")
            return;
        CaseStore.KeepAsync(Store(Work), Person.OfSystem, _ => { }, Stop).GetAwaiter().GetResult();
    }

    private async Task TakeAsync(int seed, Func<Random, int, Task> run)
    {
        Directory.CreateDirectory(Copies);
        var random = new Random(seed);
        for (var k = 0; k < MostRuns && Directory.GetDirectories(Copies).Length < Moments; k++)
            await run(random, Moments);
        Assert.Equal(Moments, Directory.GetDirectories(Copies).Length);
    }

    // Each moment as a kill leaves it, and as a power cut may: the log that was being written ends early, and its last part is blank.
    private async Task HoldAsync(int seed, Func<string, Task> holds)
    {
        var random = new Random(seed);
        foreach (var copy in Directory.GetDirectories(Copies).Order(StringComparer.Ordinal))
        {
            var logs = Directory.GetFiles(copy, "*-wal", SearchOption.AllDirectories);
            var torn = copy + "-torn";
            if (logs.Length > 0)
                FrozenProgram.Copy(copy, torn);
            await holds(copy);
            if (logs.Length == 0)
                continue;
            foreach (var log in logs)
                Tear(Path.Combine(torn, Path.GetRelativePath(copy, log)), random);
            await holds(torn);
        }
    }

    private static void Tear(string file, Random random)
    {
        using var stream = File.Open(file, FileMode.Open);
        stream.SetLength(random.NextInt64(stream.Length + 1));
        var blank = (int)Math.Min(512, stream.Length);
        stream.Seek(-blank, SeekOrigin.End);
        stream.Write(new byte[blank]);
    }

    // The store opens and is whole, has all that was acknowledged, takes another run, and every report there is is whole.
    private static async Task CheckAsync(string folder, int acknowledged)
    {
        var path = Store(folder);
        if (File.Exists(path))
            CaseStore.Examine(path);
        var store = await CaseStore.KeepAsync(path, Person.OfSystem, _ => { }, Stop);
        var runs = await store.RunsAsync(1, Stop);
        Assert.InRange(runs.Count, acknowledged, acknowledged + 1);
        foreach (var run in runs)
        {
            var document = DocumentJson.Read<CaseDocument>((await store.RunAsync(1, run.Number, Stop))!.Document);
            Assert.NotNull(await store.PhotographAsync(document.Pieces[0].Reading.Sha256!, Stop));
        }
        foreach (
            var check in (string[][])
                [
                    ["store", "check"],
                    ["ledger", "verify"],
                ]
        )
        {
            var run = await AlburnumRun.Of([.. check, "--store", path]);
            Assert.True(run.Status == CommandLine.Done, run.Output + run.Errors);
        }
        foreach (var report in Directory.GetFiles(folder, "report.json", SearchOption.AllDirectories))
            Assert.NotNull(DocumentJson.Read<CaseDocument>(await File.ReadAllTextAsync(report, Stop)));
        foreach (var report in Directory.GetFiles(folder, "report.pdf", SearchOption.AllDirectories))
            Assert.EndsWith(
                "%%EOF",
                (await File.ReadAllTextAsync(report, Encoding.Latin1, Stop)).TrimEnd(),
                StringComparison.Ordinal
            );
        await store.AddAsync(
            new CaseRecord("T-1", "Posts", "Thornhollow estate", DateTime.UnixEpoch, Verdict.Undecided, "{}", [], []),
            FilesTogether.None,
            Stop
        );
    }

    private static async Task HoldUnderAnotherRulebookAsync(Uri server)
    {
        using var browser = new HttpClient();
        using var form = new MultipartFormDataContent { { new StringContent("european-2007"), "rulebook" } };
        var address = new Uri(server, "/api/cases/1/rulebook");
        using var answer = await browser.PostAsync(address, form, Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }

    private static async Task KeepMarksAsync(Uri server)
    {
        const string marks = "next=corners&measuredSize=100%20x%20100%20mm";
        using var browser = new HttpClient();
        var page = await browser.GetStringAsync(new Uri(server, $"/cases/1/pieces/1?{marks}"), Stop);
        var token = Regex.Match(
            page,
            "name=\"_form-key\" value=\"(?<token>[^\"]+)\"",
            RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(1)
        );
        using var form = new StringContent(
            $"{marks}&_form-key={Uri.EscapeDataString(token.Groups["token"].Value)}",
            Encoding.ASCII,
            "application/x-www-form-urlencoded"
        );
        using var answer = await browser.PostAsync(new Uri(server, "/cases/1/pieces/1/marks"), form, Stop);
        // The browser is led to the piece on the sheet.
        Assert.Equal("/cases/1", answer.RequestMessage!.RequestUri!.AbsolutePath);
    }
}

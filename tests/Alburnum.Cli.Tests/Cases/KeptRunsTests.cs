using Alburnum.Penetration;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>The program itself, keeping runs of cases.</summary>
public sealed class KeptRunsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_run_before_that_this_version_cannot_read_is_said_and_the_new_one_is_kept()
    {
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        await store.AddAsync(
            new("TH-2026-011", "Orchard posts", "", DateTime.UnixEpoch, Verdict.Undecided, "{}", [], []),
            FilesTogether.None,
            Stop
        );

        var run = await RunAsync(RealProgram.CopyCase(_folder));

        Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
        Assert.Contains("was kept by a version whose results", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, (await store.RunsAsync(1, Stop)).Count);
    }

    [Fact]
    public async Task Another_case_of_the_same_reference_is_kept_beside_it_and_that_is_said()
    {
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        await store.AddAsync(
            new("TH/2026 011.", "Rails", "Somebody", DateTime.UnixEpoch, Verdict.Undecided, "{}", [], []),
            FilesTogether.None,
            Stop
        );
        var folder = RealProgram.CopyCase(_folder);
        var file = Path.Combine(folder, "case.yaml");
        var text = await File.ReadAllTextAsync(file, Stop);
        await File.WriteAllTextAsync(file, text.Replace("TH-2026-011", "TH/2026 011.", StringComparison.Ordinal), Stop);

        var run = await RunAsync(folder);
        var again = await RunAsync(folder);

        Assert.Contains(
            "Another case in the store has the reference TH/2026 011.: number 1, Rails, for Somebody.",
            InOneLine(run.Output),
            StringComparison.Ordinal
        );
        Assert.Contains("kept as a case of its own, number 2", InOneLine(run.Output), StringComparison.Ordinal);
        Assert.DoesNotContain("Another case in the store", again.Output, StringComparison.Ordinal);
        Assert.Equal([1, 2], (await store.ListAsync(Stop)).Select(each => each.Runs).Order());
    }

    [Fact]
    public async Task A_run_whose_case_was_called_otherwise_joins_it_and_that_is_said()
    {
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        await store.AddAsync(
            new("TH-2026-011", "Orchard posts", "Somebody", DateTime.UnixEpoch, Verdict.Undecided, "{}", [], []),
            FilesTogether.None,
            Stop
        );

        var run = await RunAsync(RealProgram.CopyCase(_folder));

        Assert.Contains(
            "Kept as another run of case 1, which has the reference TH-2026-011 and was: Orchard posts, for Somebody.",
            InOneLine(run.Output),
            StringComparison.Ordinal
        );
    }

    // No file may grow beyond so many bytes, as on a full disk. The reports stay below that; the store, of 160 kB, would grow to 270 kB.
    [Theory]
    [InlineData(170_000)]
    [InlineData(220_000)]
    public async Task Where_the_disk_is_full_the_run_before_and_its_reports_stand(int bytesMax)
    {
        var folder = RealProgram.CopyCase(_folder);
        Assert.Equal(CommandLine.Done, (await RunAsync(folder)).Status);
        var before = ReportBytes();
        var words = string.Join(' ', Words(folder).Select(word => $"'{word}'"));
        var run = await RealProgram.RunAsync(
            "sh",
            ["-c", $"trap '' XFSZ; ulimit -f {bytesMax / 512}; exec dotnet exec '{RealProgram.File}' {words}"],
            ("DOTNET_EnableDiagnostics", "0"),
            ("DOTNET_EnableWriteXorExecute", "0")
        );

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Single(run.Errors.Trim().Split('\n'));
        Assert.Equal(before, ReportBytes());
        var store = await CaseStore.KeepAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        Assert.Single(await store.RunsAsync(1, Stop));
        Assert.Equal(
            ["report.json", "report.pdf"],
            Directory.GetFiles(_folder.At("reports")).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task A_store_is_checked_backed_up_and_restored_and_damage_is_named()
    {
        Assert.Equal(CommandLine.Done, (await RunAsync(RealProgram.CopyCase(_folder))).Status);
        var (zip, again) = (_folder.At("cases.zip"), _folder.At("again.db"));

        var written = await RealProgram.RunAsync(["store", "back-up", zip, "--store", StorePath]);
        var restored = await RealProgram.RunAsync(["store", "restore", zip, "--store", again]);
        var whole = await RealProgram.RunAsync(["store", "check", "--store", again]);
        var photograph = Directory.GetFiles(_folder.At("again.photographs"), "*", SearchOption.AllDirectories).Single();
        await File.AppendAllTextAsync(photograph, "x", Stop);
        var damaged = await RealProgram.RunAsync(["store", "check", "--store", again]);

        Assert.Equal(
            [CommandLine.Done, CommandLine.Done, CommandLine.Done, CommandLine.Refused],
            new[] { written, restored, whole, damaged }.Select(run => run.Status)
        );
        Assert.Contains("cases: 1; runs: 1; photographs: 1.", InOneLine(whole.Output), StringComparison.Ordinal);
        Assert.Contains("every photograph is as it was kept", InOneLine(whole.Output), StringComparison.Ordinal);
        Assert.StartsWith(
            $"{photograph}, field photograph: found a damaged file",
            damaged.Errors,
            StringComparison.Ordinal
        );
    }

    private IReadOnlyList<string> ReportBytes() =>
        [
            .. new[] { "report.json", "report.pdf" }.Select(name =>
                Convert.ToHexString(File.ReadAllBytes(Path.Combine(_folder.At("reports"), name)))
            ),
        ];

    private static string InOneLine(string output) =>
        string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private string[] Words(string folder) => ["case", folder, "--store", StorePath, "--out", _folder.At("reports")];

    private Task<AlburnumRun> RunAsync(string folder) => RealProgram.RunAsync(Words(folder));
}

using System.Diagnostics;
using System.Text;
using Alburnum.Records.Ledger;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>The program itself, two of it at once on one store, each killed while it keeps a run.</summary>
public sealed class KilledKeeperTests : IDisposable
{
    private const int Programs = 2;
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string StorePath => _folder.At("cases.db");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("", 1)]
    [InlineData("version-2.store", 2)]
    public async Task The_store_opens_and_has_every_run_that_was_acknowledged(string begunFrom, int seed)
    {
        var random = new Random(seed);
        var (acknowledged, killed) = (0, 0);
        var clock = Stopwatch.StartNew();
        // Ten programs killed where the machine is quick enough, four where it is slow: half a minute either way.
        for (var round = 0; round < 2 || (round < 5 && clock.Elapsed < TimeSpan.FromSeconds(14)); round++)
        {
            // Every other round begins anew, so that making a store and bringing one forward are cut off as well.
            if (round % 2 == 0)
                acknowledged = Begin(begunFrom);
            var programs = Enumerable.Range(0, Programs).Select(StartProgram).ToList();
            var endings = await Task.WhenAll(
                programs.Select(program => KillAsync(program, random.Next(1, 10), random.Next(30)))
            );
            killed += endings.Count(status => status != CommandLine.Done);

            acknowledged = await RunsInAsync(acknowledged, endings.Count(status => status == CommandLine.Done));
        }
        Assert.InRange(killed, 1, 5 * Programs);
    }

    // Runs of the store, which must be all that were acknowledged; one that was killed may have been kept just before.
    private async Task<int> RunsInAsync(int before, int acknowledged)
    {
        CaseStore.Examine(StorePath);
        var kept = await CaseStore.KeepAsync(StorePath, Person.OfSystem, _ => { }, Stop);
        var runs = await kept.RunsAsync(1, Stop);
        Assert.InRange(runs.Count, before + acknowledged, before + Programs);
        var reports = Reports();
        foreach (var run in runs)
        {
            var text = (await kept.RunAsync(1, run.Number, Stop))!.Document;
            var document = DocumentJson.Read<CaseDocument>(text);
            Assert.NotNull(await kept.PhotographAsync(document.Pieces[0].Reading.Sha256!, Stop));
            if (run.Number > before)
                Assert.Contains(text, reports);
        }
        // What is kept is entered, and nothing else: both are of one transaction.
        Assert.Empty((await kept.VerifyAsync(null, Stop)).Faults);
        return runs.Count;
    }

    // The reports as JSON, all of them and those in PDF whole.
    private List<string> Reports()
    {
        var texts = new List<string>();
        for (var number = 0; number < Programs; number++)
        {
            var (pdf, json) = (InReports(number, "report.pdf"), InReports(number, "report.json"));
            if (File.Exists(pdf))
                Assert.EndsWith("%%EOF", File.ReadAllText(pdf, Encoding.Latin1).TrimEnd(), StringComparison.Ordinal);
            if (!File.Exists(json))
                continue;
            texts.Add(File.ReadAllText(json));
            Assert.NotNull(DocumentJson.Read<CaseDocument>(texts[^1]));
        }
        return texts;
    }

    private string InReports(int number, string name) => Path.Combine(_folder.At($"reports-{number}"), name);

    private int Begin(string begunFrom)
    {
        Directory.Delete(_folder.Path, recursive: true);
        Directory.CreateDirectory(_folder.Path);
        if (begunFrom.Length == 0)
            return 0;
        File.Copy(Stored(begunFrom), StorePath);
        return 1;
    }

    private Process StartProgram(int number)
    {
        string[] words =
        [
            "exec",
            Repository.At("artifacts", "bin", "Alburnum.Cli", "release", "alburnum-cli.dll"),
            "case",
            Stored("Case"),
            "--store",
            StorePath,
            "--out",
            _folder.At($"reports-{number}"),
        ];
        return Process.Start(
            new ProcessStartInfo("dotnet", words)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
    }

    // What comes before the first touch of the store takes most of the time and changes nothing.
    private async Task<int> KillAsync(Process program, int afterTouches, int andMilliseconds)
    {
        using (program)
        {
            var seen = Trace();
            while (!program.HasExited && afterTouches > 0)
            {
                await Task.Delay(1, Stop);
                var now = Trace();
                if (now != seen)
                    (seen, afterTouches) = (now, afterTouches - 1);
            }
            await Task.Delay(andMilliseconds, Stop);
            program.Kill();
            await program.WaitForExitAsync(Stop);
            return program.ExitCode;
        }
    }

    // Every file and folder there is, with its size and the moment it was last written.
    private string Trace()
    {
        try
        {
            return string.Join(
                ' ',
                new DirectoryInfo(_folder.Path)
                    .EnumerateFileSystemInfos("*", SearchOption.AllDirectories)
                    .Select(entry => $"{entry.FullName} {entry.LastWriteTimeUtc.Ticks} {(entry as FileInfo)?.Length}")
            );
        }
        catch (IOException)
        {
            return "changing";
        }
    }

    private static string Stored(string name) => Repository.At("tests", "Alburnum.Records.Tests", "Store", name);
}

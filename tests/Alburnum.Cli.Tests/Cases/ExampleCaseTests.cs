using System.Text.Json;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>The three example cases, run as a user runs them, held against the truth that their photographs were drawn from.</summary>
public sealed class ExampleCaseTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("orchard-posts", "met")]
    [InlineData("footbridge-joists", "not met")]
    [InlineData("barn-purlins", "undecided")]
    public async Task A_case_gets_the_verdict_that_its_hidden_truth_calls_for(string name, string verdict)
    {
        var run = await RunCase(name);

        Assert.Equal(("", CommandLine.Done), (run.Errors, run.Status));
        Assert.Contains($"Penetration rule {verdict}; retention", run.Output, StringComparison.Ordinal);
        using var report = Report();
        Assert.Equal(verdict, report.RootElement.GetProperty("verdict").GetProperty("verdict").GetString());
        Assert.Equal(
            verdict,
            report.RootElement.GetProperty("batch").GetProperty("verdict").GetProperty("verdict").GetString()
        );
        Assert.True(new FileInfo(_folder.At("report.pdf")).Length > 10_000);
    }

    [Theory]
    [InlineData("orchard-posts")]
    [InlineData("footbridge-joists")]
    [InlineData("barn-purlins")]
    public async Task Depths_in_the_report_are_within_half_a_millimetre_of_the_truth_on_average(string name)
    {
        await RunCase(name);

        using var report = Report();
        using var truth = JsonDocument.Parse(
            await File.ReadAllTextAsync(
                Repository.At("examples", name, "truth.json"),
                TestContext.Current.CancellationToken
            )
        );
        var errors = report
            .RootElement.GetProperty("pieces")
            .EnumerateArray()
            .Select(piece => piece.GetProperty("reading"))
            .Select(reading =>
                DepthErrorMm(reading, truth.RootElement.GetProperty(reading.GetProperty("file").GetString()!))
            )
            .ToList();
        Assert.InRange(errors.Average(error => error.Mean), 0, 0.5);
        Assert.InRange(errors.Average(error => error.Min), 0, 0.5);
    }

    [Fact]
    public async Task A_case_run_twice_stands_once_in_the_list_of_cases()
    {
        await RunCase("barn-purlins");
        await RunCase("barn-purlins");

        var stop = TestContext.Current.CancellationToken;
        var store = await CaseStore.LookAsync(_folder.At("cases.db"), _ => { }, stop);
        var entry = Assert.Single(await store.ListAsync(stop));
        Assert.Equal(("TH-2026-019", 2), (entry.Reference, entry.Runs));
    }

    private static (double Mean, double Min) DepthErrorMm(JsonElement reading, JsonElement truth)
    {
        var (read, drawn) = (reading.GetProperty("depth"), truth.GetProperty("depth"));
        double Error(string field) =>
            Math.Abs(read.GetProperty(field).GetDouble() - drawn.GetProperty(field).GetDouble());
        return (Error("mean_mm"), Error("min_mm"));
    }

    private Task<AlburnumRun> RunCase(string name) =>
        AlburnumRun.Of(
            "case",
            Repository.At("examples", name),
            "--store",
            _folder.At("cases.db"),
            "--out",
            _folder.Path
        );

    private JsonDocument Report() => JsonDocument.Parse(File.ReadAllText(_folder.At("report.json")));
}

using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>A case whose code asks for no treatment, while nobody said which insects live there.</summary>
public sealed class NothingNeededTests : IDisposable
{
    private const string Case = """
        reference: T-1
        title: Rafters
        client: Thornhollow estate
        sectionsCut: 2026-05-12
        rulebook: british-2014
        component: rafter
        section: 75 x 75 mm
        form: sawn
        species: Sitka spruce
        indicator: copper-blue
        batch:
          pieces: 40
          mustPass: 75 %
        rulerReadings: readings.csv

        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("", true)]
    [InlineData("insects: none\n", false)]
    public async Task It_says_unless_which_insects_live_there_until_they_are_ruled_out(string insects, bool isOpen)
    {
        _folder.Write("case.yaml", Case + insects);
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm\nP1,1,37,5,1\nP1,2,37,5,1\nP1,3,37,5,1\nP1,4,37,5,1\n"
        );

        var run = await AlburnumRun.Of("case", _folder.Path, "--out", _folder.Path, "--store", _folder.At("cases.db"));

        Assert.Equal(("", CommandLine.Done), (run.Errors, run.Status));
        var output = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(isOpen, output.Contains("unless insects that attack it live where", StringComparison.Ordinal));
        Assert.Equal(isOpen, output.Contains("house longhorn beetle: the sapwood", StringComparison.Ordinal));
        var report = DocumentJson.Read<CaseDocument>(
            await File.ReadAllTextAsync(_folder.At("report.json"), TestContext.Current.CancellationToken)
        );
        Assert.Equal(isOpen, report.Requirement.Unless.Count > 0);
    }
}

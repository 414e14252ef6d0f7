using Alburnum.Reports.Documents;
using Alburnum.Reports.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>A case whose file points things out on its photographs.</summary>
public sealed class MarkedCaseTests : IDisposable
{
    private const string Plain = "  - { piece: P01, photograph: P01.jpg }";
    private readonly TemporaryFolder _folder = new();

    public MarkedCaseTests()
    {
        Directory.CreateDirectory(_folder.At("case"));
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples", "barn-purlins")))
        {
            if (!Path.GetFileName(file).StartsWith("report", StringComparison.Ordinal))
                File.Copy(file, InCase(Path.GetFileName(file)));
        }
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Heartwood_shown_on_a_photograph_gives_that_piece_its_sapwood()
    {
        Mark("pith: \"1000,750\"", "heartwoodRadiusMm: 40 mm");

        Assert.Equal(("", CommandLine.Done), await RunAsync());

        var pieces = Document().Pieces;
        Assert.Equal(40, pieces[0].Reading.Marks!.HeartwoodRadiusMm);
        // 20 mm by the radius shown, within the pith's place; the next piece tells its own by its colour, and neither takes the 25 mm stated for all.
        Assert.Equal(HeartwoodSource.Shown, pieces[0].Reading.Heartwood!.DetectedBy);
        Assert.Equal(20, pieces[0].Reading.Faces[0].SapwoodMm.Average()!.Value, 1.5);
        Assert.Equal(HeartwoodSource.Colour, pieces[1].Reading.Heartwood!.DetectedBy);
        Assert.True(pieces[1].Reading.Faces[0].SapwoodMm.Distinct().Count() > 5);
        // truth.json: 36.2 % of the second piece's sapwood is treated.
        Assert.Equal(
            0.362,
            pieces[1].Reading.SapwoodTreatedShare!.Value,
            3 * pieces[1].Reading.SapwoodTreatedShareU!.Value
        );
        Assert.Null(pieces[1].Reading.Marks);
    }

    [Fact]
    public async Task A_point_beside_the_photograph_is_refused_with_the_line_of_its_piece()
    {
        Mark("leaveOut: \"5120,180\"");

        var (errors, status) = await RunAsync();

        Assert.Equal(CommandLine.Refused, status);
        Assert.Contains("case.yaml, line 25", errors, StringComparison.Ordinal);
        Assert.Contains(
            "row \"P01\", field leaveOut: found 5120,180, expected a point on the photograph, which is 2000 × 1500 pixels.",
            errors,
            StringComparison.Ordinal
        );
        Assert.False(File.Exists(_folder.At("report.json")));
    }

    [Fact]
    public async Task Marks_that_the_last_run_had_and_the_folder_lacks_are_named()
    {
        Mark("treated: \"1000,200\"", "untreated: \"1000,750\"");
        Assert.Equal(("", CommandLine.Done), await RunAsync());
        Mark();

        var again = await AlburnumRun.Of(Words());

        Assert.Contains("P01: the previous run was read with different marks", again.Output, StringComparison.Ordinal);
        Assert.Contains("treated: \"1000,200\"", again.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("the previous run", (await AlburnumRun.Of(Words())).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Places_that_results_cannot_go_to_are_refused_before_a_photograph_is_read()
    {
        var file = _folder.Write("notes.txt", "x");

        var asFolder = await AlburnumRun.Of("case", _folder.At("case"), "--store", _folder.At("s.db"), "--out", file);
        var asStore = await AlburnumRun.Of("case", _folder.At("case"), "--store", _folder.Path, "--out", _folder.Path);

        Assert.Equal((CommandLine.Refused, ""), (asFolder.Status, asFolder.Output));
        Assert.Equal(
            $"{file}: found a file, expected a folder that results can be written to.",
            asFolder.Errors.Trim()
        );
        Assert.Equal((CommandLine.Refused, ""), (asStore.Status, asStore.Output));
        Assert.Equal(
            $"{_folder.Path}, field store: found a folder, expected a case store, or a path where one can be made.",
            asStore.Errors.Trim()
        );
        Assert.False(File.Exists(_folder.At("s.db")));
    }

    private string InCase(string name) => Path.Combine(_folder.At("case"), name);

    private void Mark(params string[] lines)
    {
        var text = File.ReadAllText(Repository.At("examples", "barn-purlins", "case.yaml"));
        Assert.Contains(Plain, text, StringComparison.Ordinal);
        var marked = $"  - piece: P01\n    photograph: P01.jpg\n    {string.Join("\n    ", lines)}";
        File.WriteAllText(InCase("case.yaml"), text.Replace(Plain, marked.TrimEnd(), StringComparison.Ordinal));
    }

    private string[] Words() => ["case", _folder.At("case"), "--store", _folder.At("s.db"), "--out", _folder.Path];

    private async Task<(string Errors, int Status)> RunAsync()
    {
        var run = await AlburnumRun.Of(Words());
        return (run.Errors, run.Status);
    }

    private CaseDocument Document() => DocumentJson.Read<CaseDocument>(File.ReadAllText(_folder.At("report.json")));
}

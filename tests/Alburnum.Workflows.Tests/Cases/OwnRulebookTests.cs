using Alburnum.Acceptance;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;

namespace Alburnum.Workflows.Tests.Cases;

/// <summary>A case under a rulebook file of the user's own.</summary>
public sealed class OwnRulebookTests : IDisposable
{
    private const string Case = """
        reference: T-2
        title: Posts
        client: Thornhollow estate
        sectionsCut: 2026-05-12
        rulebook: ours.yaml
        component: fence post
        section: 75 x 75 mm
        species: Scots pine
        useClass: 4
        serviceLife: 15 years
        indicator: copper-blue
        batch: { pieces: 40 }
        rulerReadings: readings.csv
        """;

    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private readonly TemporaryFolder _folder = new();

    public OwnRulebookTests()
    {
        _folder.Write("case.yaml", Case);
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\nP01,1,37,20,0.5,20\nP01,2,37,20,0.5,20\nP01,3,37,20,0.5,20\nP01,4,37,20,0.5,20\n"
        );
        _folder.Write(
            "ours.yaml",
            """
            basedOn: british-2014
            confirmed:
              - { key: in-ground-15-sawn-permeable, edition: "2011+A1:2014", table: table 4, page: "17", initials: AB, date: 2026-05-12 }
            """
        );
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_case_is_judged_under_a_rulebook_file_that_lies_with_it()
    {
        var run = await Run();
        var row = Assert.Single(run.Judged.Required.Answer.Trace.Step(Subject.Penetration)!.Matched);

        Assert.Equal(("in-ground-15-sawn-permeable", Standing.Published), (row.Key, row.Provenance.Standing));
        Assert.Contains("confirmed against a copy, AB", row.Provenance.Citation, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_rulebook_file_is_kept_with_the_run_and_read_again_from_there()
    {
        var run = await Run();
        var again = CaseFolderReader.Read(new KeptFiles("T-2", run.Folder.Files, []), Facts);

        Assert.Contains("ours.yaml", run.Folder.Files.Select(file => file.FileName));
        Assert.Equal(run.Folder.Rulebook.Title, again.Rulebook.Title);
        Assert.Contains(again.Rulebook.Rows, row => row.Provenance.Citation.Contains("AB", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_share_that_nobody_states_is_the_code_s()
    {
        // 1 % for permeable timber.
        var run = await Run();

        Assert.Equal(0.99, Assert.IsAssignableFrom<ShareMustPass>(run.Folder.Case.Acceptance).Share, 1e-9);
    }

    private Task<CaseReading> Run() =>
        RunCase.JudgeAsync(new FolderFiles(_folder.Path), Facts, progress: null, TestContext.Current.CancellationToken);
}

using System.Text.Json;
using Alburnum.Reports.Requirements;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Requirements;

public sealed class RequirementCommandTests
{
    private static readonly string[] Post =
    [
        "requirement",
        "--component",
        "fence post",
        "--use-class",
        "4",
        "--life",
        "15",
        "--species",
        "Picea sitchensis",
        "--section",
        "75x75",
    ];

    [Fact]
    public async Task The_answer_comes_with_its_reasons_its_standing_and_a_clause()
    {
        var run = await AlburnumRun.Of(Post);

        Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
        Assert.All(
            [
                "REQUIRED  NP3: at least 6 mm in the sapwood",
                "weakest standing: from memory",
                "= in-ground-15-sawn-resistant",
                "≠ in-ground-30-sawn-resistant: desired service life (years) 30, found 15",
                "What would make it possible",
                "Specification clause",
                "Orientation only",
            ],
            words => Assert.Contains(words, run.Output, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_JSON_form_says_the_same_and_reads_back()
    {
        var run = await AlburnumRun.Of([.. Post, "--json"]);
        var answer = AnswerJson.Read(run.Output);

        Assert.Equal(("alburnum requirement", 1, "required"), (answer.Format, answer.Version, answer.Outcome));
        Assert.Equal("NP3", answer.Requirement!.Penetration);
        Assert.Equal("Sitka spruce", answer.Enquiry.Species);
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("from memory", json.RootElement.GetProperty("weakest_standing").GetString());
    }

    [Fact]
    public async Task Spruce_in_the_ground_for_30_years_without_incising_gets_routes_ranked()
    {
        string[] line = [.. Post, "--life", "30"];
        line = [.. line.Where((_, index) => index is not (5 or 6))];
        var run = await AlburnumRun.Of([.. line, "--exposed-heartwood", "yes", "--incised", "no", "--json"]);
        var answer = AnswerJson.Read(run.Output);

        Assert.Equal("12 mm sapwood + 6 mm exposed heartwood", answer.Requirement!.Penetration);
        Assert.Equal("usually reached", answer.Routes[0].Reach);
        Assert.Contains(answer.Routes, route => route is { Kind: "shorter life", Penetration: "NP3" });
        Assert.Contains(answer.Routes, route => route.Kind == "durable heartwood");
        Assert.All(answer.Routes.Where(route => route.Penetration is not null), route => Assert.NotEmpty(route.Rows));
    }

    [Fact]
    public async Task What_is_missing_is_asked_for()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--use-class",
            "4",
            "--life",
            "30",
            "--species",
            "Scots pine",
            "--section",
            "100x100"
        );
        Assert.Contains(
            "depends on what is not known of the piece: exposed heartwood",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task All_mistakes_are_named_at_once_and_nothing_is_answered()
    {
        var run = await AlburnumRun.Of(
            "requirement",
            "--component",
            "feence post",
            "--species",
            "spruce",
            "--use-class",
            "9",
            "--section",
            "4",
            "--life",
            "x",
            "--incised",
            "maybe",
            "--critical-value",
            "8"
        );

        Assert.Equal((CommandLine.Refused, ""), (run.Status, run.Output));
        Assert.All(
            ["\"fence post\"", "\"Sitka spruce\"", "--use-class", "--section", "--life", "--incised", "kg/m3 or g/m2"],
            words => Assert.Contains(words, run.Errors, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_way_to_the_answer_is_drawn()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "way.svg");
        await AlburnumRun.Of([.. Post, "--svg", file]);
        var svg = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.StartsWith("<svg", svg, StringComparison.Ordinal);
        Assert.Contains("NP3", svg, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_drawing_that_cannot_be_written_is_refused_in_words()
    {
        var run = await AlburnumRun.Of([.. Post, "--svg", "/nowhere/at/all/way.svg"]);
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains("expected a file that can be written", run.Errors, StringComparison.Ordinal);
    }
}

using System.Text.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Requirements;

public sealed class RulebookCommandsTests
{
    private const string OwnTable = """
        title: A firm's own table
        document: Own table
        edition: "1"
        lives: [15, 30]
        penetration:
          - key: post-15
            when: { useClass: 4, lifeYears: 15 }
            require: NP5
            source: trade-practice
            standing: common practice
          - key: post-30
            when: { useClass: 4, lifeYears: 30 }
            require: NP3
            source: trade-practice
            standing: common practice
        """;

    [Fact]
    public async Task Every_file_of_rulebooks_is_listed_by_its_name()
    {
        var run = await AlburnumRun.Of("rulebook", "list");

        Assert.Equal(Files(), run.Output.Split('\n').Where(line => line.Length > 0).Select(line => line.Split(' ')[0]));
    }

    [Fact]
    public async Task The_list_is_data_as_well()
    {
        using var json = JsonDocument.Parse((await AlburnumRun.Of("rulebook", "list", "--json")).Output);

        Assert.Equal(Files(), json.RootElement.EnumerateArray().Select(each => each.GetProperty("name").GetString()));
        Assert.All(
            json.RootElement.EnumerateArray(),
            each =>
            {
                Assert.NotEmpty(each.GetProperty("citation").GetString()!);
                Assert.True(each.GetProperty("rows").GetInt32() > 0);
            }
        );
    }

    private static IEnumerable<string> Files() =>
        Directory
            .GetFiles(Repository.At("data", "rulebooks"), "*.yaml", SearchOption.AllDirectories)
            .Select(file => $"{new FileInfo(file).Directory!.Name}-{Path.GetFileNameWithoutExtension(file)}")
            .Order(StringComparer.Ordinal);

    [Fact]
    public async Task The_findings_of_a_check_are_data_as_well()
    {
        using var folder = new TemporaryFolder();
        var run = await AlburnumRun.Of("rulebook", "check", folder.Write("own.yaml", OwnTable), "--json");
        using var json = JsonDocument.Parse(run.Output);
        var less = json.RootElement.GetProperty("findings")[0];

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Equal(1, json.RootElement.GetProperty("faults").GetInt32());
        Assert.Equal("asks for less", less.GetProperty("kind").GetString());
        Assert.True(less.GetProperty("is_fault").GetBoolean());
        Assert.Equal(["post-15", "post-30"], less.GetProperty("rows").EnumerateArray().Select(row => row.GetString()));
        Assert.NotEqual(0, less.GetProperty("cases").GetArrayLength());
    }

    [Fact]
    public async Task What_changes_between_editions_is_data_as_well()
    {
        var run = await AlburnumRun.Of("rulebook", "compare", "british-2014", "british-2024", "--json");
        using var json = JsonDocument.Parse(run.Output);
        var notRead = json.RootElement.GetProperty("not_read").EnumerateArray().ToList();
        var changes = json.RootElement.GetProperty("changes").EnumerateArray().ToList();

        Assert.Equal("BS 8417:2024", json.RootElement.GetProperty("after").GetProperty("citation").GetString());
        Assert.InRange(changes.Count, 1, json.RootElement.GetProperty("enquiries").GetInt32());
        Assert.All(
            changes,
            change =>
                Assert.StartsWith("use class 4: ", change.GetProperty("after").GetString(), StringComparison.Ordinal)
        );
        Assert.Contains(
            notRead,
            change =>
                change.GetProperty("enquiry").GetString() == "fence post, sawn, Scots pine, 15 years"
                && change.GetProperty("after").GetString() == "not covered"
        );
    }

    [Fact]
    public async Task A_use_class_is_data_as_well()
    {
        var run = await AlburnumRun.Of(
            "use-class",
            "--salt-water",
            "no",
            "--ground-contact",
            "no",
            "--weather",
            "yes",
            "--json"
        );
        using var json = JsonDocument.Parse(run.Output);
        var answer = json.RootElement;
        Assert.Equal(
            ["3.1", "3.2"],
            answer.GetProperty("use_classes").EnumerateArray().Select(each => each.GetString())
        );
        Assert.False(answer.GetProperty("is_settled").GetBoolean());
        Assert.StartsWith("Can water stay", answer.GetProperty("ask_next").GetString(), StringComparison.Ordinal);
        Assert.Equal(2, answer.GetProperty("meaning").GetArrayLength());
    }

    [Fact]
    public async Task A_sound_rulebook_passes_its_check()
    {
        var run = await AlburnumRun.Of("rulebook", "check", "spanish-se-m");
        Assert.Equal(CommandLine.Done, run.Status);
        Assert.EndsWith("No faults.", run.Output.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_of_ones_own_that_asks_less_of_a_longer_life_fails_its_check()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "own.yaml");
        await File.WriteAllTextAsync(file, OwnTable, TestContext.Current.CancellationToken);

        var run = await AlburnumRun.Of("rulebook", "check", file);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains(
            "asks for less (penetration): Desired service life (years) 30 (row \"post-30\"",
            run.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("1 to fix.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_broken_table_is_refused_with_file_line_row_and_field()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "own.yaml");
        await File.WriteAllTextAsync(
            file,
            OwnTable.Replace("require: NP5", "require: NP9", StringComparison.Ordinal),
            TestContext.Current.CancellationToken
        );

        var run = await AlburnumRun.Of("rulebook", "check", file);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains(
            "own.yaml, line 8, row \"post-15\", field require: found NP9",
            run.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_rulebook_file_that_is_not_there_is_refused_as_a_file()
    {
        var run = await AlburnumRun.Of("rulebook", "check", "/nowhere/own.yaml");
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains("/nowhere/own.yaml: found no such file", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_editions_are_compared_case_by_case()
    {
        var run = await AlburnumRun.Of("rulebook", "compare", "british-2014", "british-2024");
        Assert.Contains(
            "fence post, sawn, Scots pine, 15 years: NP5, 1 × critical value, moisture up to 28 % → not covered",
            run.Output,
            StringComparison.Ordinal
        );
        Assert.Contains("answers change; of ", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sawn, Scots pine, stated as P5: P5 → no such class in this edition")]
    [InlineData("round, Scots pine, stated as NP4: no such class in this edition → NP4, 1 × critical value")]
    [InlineData("A class that only one of the two has (30 enquiries):")]
    public async Task A_class_that_only_one_edition_has_is_said_to_be_missing_in_the_other(string line) =>
        Assert.Contains(
            line,
            (await AlburnumRun.Of("rulebook", "compare", "european-1995", "european-2007")).Output,
            StringComparison.Ordinal
        );

    [Fact]
    public async Task Archived_enquiries_are_compared_from_a_table()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "archive.csv");
        await File.WriteAllTextAsync(
            file,
            "component,species,section,service_life_years,exposed_heartwood\nfence post,Scots pine,100x100,30,yes\ntiling batten,Norway spruce,25x50,60,\n",
            TestContext.Current.CancellationToken
        );
        var run = await AlburnumRun.Of("rulebook", "compare", "british-2014", "british-2024", "--cases", file);
        Assert.Contains("1  fence post, sawn, Scots pine, 30 years: NP6", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            "0 of 2 answers change; of 2 more, one of the two says nothing; 0 are answered by neither.",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_cell_that_cannot_be_read_is_refused_with_its_line_and_column()
    {
        var errors = await RefusedArchive("component,service_life_years\nfence post,15\nhat stand,900\n");

        Assert.Contains("line 3, field component: found \"hat stand\"", errors, StringComparison.Ordinal);
        Assert.Contains(
            "line 3, field service_life_years: found \"900\", expected a whole number, 1 to 200 years",
            errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_column_that_no_enquiry_has_is_refused() =>
        Assert.Contains(
            "line 1, field weight: found an unknown column",
            await RefusedArchive("component,service_life_years,weight\nfence post,15,\n"),
            StringComparison.Ordinal
        );

    private static async Task<string> RefusedArchive(string csv)
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("archive.csv", csv);

        var run = await AlburnumRun.Of("rulebook", "compare", "british-2014", "british-2024", "--cases", file);

        Assert.Equal(CommandLine.Refused, run.Status);
        return run.Errors;
    }

    [Fact]
    public async Task The_use_class_comes_with_the_question_that_decided_it()
    {
        var run = await AlburnumRun.Of(
            "use-class",
            "--salt-water",
            "no",
            "--ground-contact",
            "no",
            "--weather",
            "yes",
            "--water-stays",
            "yes"
        );
        Assert.Contains("Use class 3.2", run.Output, StringComparison.Ordinal);
        Assert.Contains("Decided by: Can water stay on it", run.Output, StringComparison.Ordinal);
        Assert.Contains("In EN 335 up to 2006", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unanswered_question_is_asked_next()
    {
        var run = await AlburnumRun.Of("use-class", "--salt-water", "no", "--ground-contact", "no", "--weather", "yes");
        Assert.Contains("Use class 3.1 or 3.2, not settled yet", run.Output, StringComparison.Ordinal);
        Assert.Contains("Ask next: Can water stay on it", run.Output, StringComparison.Ordinal);
    }
}

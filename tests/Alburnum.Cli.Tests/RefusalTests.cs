using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>What is refused is refused in one message of our own words, with exit status 2, before any work is done.</summary>
public sealed class RefusalTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Unknown option 'aql'", "sample share --lot 500 --must-pass 75 --cut 8 --aql 10")]
    [InlineData("Unknown option 'must-pass'", "sample attributes --lot 500 --aql 10 --must-pass 75")]
    [InlineData("Unknown option 'producer-risk'", "sample show --conforming 90 --producer-risk 5")]
    [InlineData("Unknown command 'guess'", "sample guess")]
    [InlineData("Unknown option 'plan'", "sweep Pine 100x100 --plan 20,2")]
    [InlineData("Unknown option 'strength'", "sweep Pine 100x100 --strength 2")]
    [InlineData(
        "--level: found I, expected no such option without --aql, whose plan it belongs to.",
        "judge counts --cut 8 --failures 1 --must-pass 75 --level I"
    )]
    public Task An_option_that_the_plan_has_no_use_for_is_not_passed_over(string message, string line) =>
        Refused(message, line.Split(' '));

    [Fact]
    public async Task Every_unknown_option_is_named_with_the_option_that_may_have_been_meant()
    {
        var run = await AlburnumRun.Of("predict", "Pine", "100x100", "--depht", "12", "--seeed=1", "--colour", "red");

        Assert.Equal(
            """
            alburnum: Unknown option 'depht'; did you mean --depth?
            alburnum: Unknown option 'seeed'; did you mean --seed?
            alburnum: Unknown option 'colour'.
            """,
            run.Errors.Trim().ReplaceLineEndings("\n")
        );
        Assert.Equal(CommandLine.Refused, run.Status);
    }

    [Theory]
    [InlineData("Unknown command 'measur'; did you mean measure?", "measur a.jpg")]
    [InlineData("Unknown command 'tabel'; did you mean table?", "judge tabel a.csv")]
    [InlineData("--port: found 1.5, expected a whole number", "serve --port 1.5")]
    public Task A_word_misspelt_is_answered_with_what_may_have_been_meant(string message, string line) =>
        Refused(message, line.Split(' '));

    [Fact]
    public async Task A_quote_that_is_not_closed_is_the_cause_that_is_told()
    {
        var table = _folder.Write("table.csv", "piece,result\nP1,pass\n\"P2,pass\nP3,fail\n");

        var run = await AlburnumRun.Of("judge", "table", table, "--must-pass", "75");

        Assert.Equal(
            $"{table}, line 3: found a quote that is opened and not closed, expected a closing quote for every quote.",
            run.Errors.Trim()
        );
    }

    [Theory]
    [InlineData(
        "rulebook fill: found b beyond its arguments, expected: alburnum rulebook fill <NAME> [OPTIONS]",
        "rulebook fill a b c"
    )]
    [InlineData(
        "rulebook fill: found nothing for NAME, expected: alburnum rulebook fill <NAME> [OPTIONS]",
        "rulebook fill"
    )]
    [InlineData(
        "retention: found nothing for FIGURE, expected: alburnum retention <FIGURE> ... [OPTIONS]",
        "retention"
    )]
    [InlineData(
        "rulebook compare: found nothing for AFTER, expected: alburnum rulebook compare <BEFORE> <AFTER> [OPTIONS]",
        "rulebook compare a"
    )]
    public Task A_wrong_number_of_arguments_is_answered_with_how_the_command_is_called(string message, string line) =>
        Refused(message, line.Split(' '));

    [Theory]
    [InlineData("round 100", "sawn", "expected round, as the section ø 100 mm is.")]
    [InlineData("100x100", "round", "expected sawn, as the section 100 × 100 mm is.")]
    public Task A_form_that_the_section_contradicts_is_not_passed_over(string section, string form, string expected) =>
        Refused(
            $"command line, field --form: found \"{form}\", {expected}",
            "requirement",
            "--component",
            "fence post",
            "--rulebook",
            "british-2014",
            "--section",
            section,
            "--form",
            form
        );

    [Theory]
    [InlineData("boron", "octaborate")]
    [InlineData("octoborate", "octaborate")]
    public Task A_product_that_is_not_known_is_refused_with_the_nearest(string product, string near) =>
        Refused($"did you mean \"{near}\"?", "retention", "1850 mg/kg B", "--product", product);

    [Theory]
    [InlineData("--ground-contact: found nothing, expected a value after it.", "use-class --ground-contact")]
    [InlineData("--rulebook: found nothing, expected a value after it.", "requirement --rulebook")]
    [InlineData("--lot: found nothing, expected a value after it.", "sample attributes --lot")]
    public Task An_option_without_its_value_is_named(string message, string line) => Refused(message, line.Split(' '));

    [Theory]
    [InlineData("--stated-class")]
    [InlineData("--section")]
    public Task An_option_whose_value_is_empty_is_refused(string option) =>
        Refused($"field {option}: found \"\", expected", "requirement", "--component", "fence post", option, "");

    [Fact]
    public Task Depths_that_the_timber_cannot_have_given_are_refused()
    {
        var depths = Enumerable.Range(0, 48).Select(i => $"c{i / 8},p{i % 8},1.{i % 10}");
        File.WriteAllLines(_folder.At("plant.csv"), ["charge,piece,depth_mm", .. depths]);
        return Refused(
            "plant.csv: found readings that lie too far from what this timber is known to take",
            "predict",
            "Scots pine",
            "100x100",
            "--depth",
            "6",
            "--cells",
            "0",
            "--plant",
            _folder.At("plant.csv")
        );
    }

    [Fact]
    public Task A_rulebook_slightly_misspelt_is_answered_with_the_nearest() =>
        Refused(
            "spanish-se-m; did you mean european-2007?",
            "requirement",
            "--component",
            "fence post",
            "--rulebook",
            "europaen-2007"
        );

    [Theory]
    [InlineData("", "line 1: found no rows, expected a line that names the columns, and rows below it.")]
    [InlineData("\n,,\n", "line 1: found no rows")]
    [InlineData("a,b\n1,2\n", "line 1: found the columns a, b, expected piece and result; or piece, face, position_mm")]
    [InlineData("\0\u0001\u0002", "line 1: found a file that is not text, expected a table in CSV")]
    public Task A_table_to_judge_that_is_none_is_told_what_one_looks_like(string text, string message) =>
        Refused(message, "judge", "table", _folder.Write("table.csv", text), "--must-pass", "75");

    [Theory]
    [InlineData("", "line 1: found no rows")]
    [InlineData("a,b\n1,2\n", "line 1: found the columns a, b, expected charge and any of mean_depth_mm")]
    [InlineData("charge,b\n1,2\n", "line 1: found the columns charge, b, expected charge and any of mean_depth_mm")]
    public async Task A_wrong_table_of_charges_gets_one_message(string text, string message)
    {
        var errors = await Refused(message, "history", "charges", _folder.Write("table.csv", text));

        Assert.Single(errors.Trim().Split('\n'));
    }

    [Fact]
    public Task A_range_without_a_unit_ends_like_a_sentence() =>
        Refused(
            "--aql: found 5000, expected 0.01 to 1000 (an AQL).",
            "history",
            "lots",
            _folder.Write("lots.csv", "lot,pieces,cut,failures\n1,100,13,0\n"),
            "--aql",
            "5000"
        );

    [Fact]
    public async Task A_place_that_cannot_be_written_to_is_told_without_the_systems_own_words()
    {
        var file = _folder.Write("taken.txt", "x");
        var beyond = Path.Combine(file, "x.svg");

        var errors = await Refused(
            $"{beyond}: found a folder that is not there, expected a file that can be written.",
            "sample",
            "attributes",
            "--lot",
            "500",
            "--aql",
            "10",
            "--chart",
            beyond
        );

        Assert.DoesNotContain(".part", errors, StringComparison.Ordinal);
        await Refused(
            $"{_folder.At("none/x.svg")}: found a folder that is not there, expected a file that can be written.",
            "sample",
            "attributes",
            "--lot",
            "500",
            "--aql",
            "10",
            "--chart",
            _folder.At("none/x.svg")
        );
    }

    [Fact]
    public async Task A_chart_folder_that_is_a_file_is_refused_before_the_history_is_followed()
    {
        var file = _folder.Write("taken.txt", "x");
        var charges = _folder.Write("charges.csv", "charge,mean_depth_mm\n1,8\n");

        await Refused(
            $"{file}: found a file, expected a folder that results can be written to.",
            "history",
            "charges",
            charges,
            "--chart",
            file
        );
    }

    [Theory]
    [InlineData("case")]
    [InlineData("judge case")]
    public async Task A_file_given_as_a_case_folder_is_told_what_was_expected(string command)
    {
        var file = _folder.Write("case.yaml", "reference: T-1\n");

        await Refused(
            $"{file}: found a file, expected a case folder with a case.yaml in it.",
            [.. command.Split(' '), file]
        );
    }

    [Fact]
    public async Task A_photograph_that_is_not_there_leaves_no_empty_table()
    {
        var run = await AlburnumRun.Of("measure", _folder.At("missing.jpg"), "--section", "100x100");

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.DoesNotContain("Photograph", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_signal_names_its_measure_once()
    {
        var lines = Enumerable.Range(1, 40).Select(i => $"{i},{(i <= 25 ? 8 + (i % 2) : 8.9)}");
        var charges = _folder.Write("charges.csv", "charge,mean_depth_mm\n" + string.Join('\n', lines));

        var run = await AlburnumRun.Of("history", "charges", charges, "--json");

        Assert.Contains("on one side of the baseline in mean depth, 8.52 mm", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("mean mean", run.Output, StringComparison.Ordinal);
    }

    private static async Task<string> Refused(string message, params string[] words)
    {
        var run = await AlburnumRun.Of(words);

        Assert.Contains(message, run.Errors, StringComparison.Ordinal);
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Equal("", run.Output);
        return run.Errors;
    }
}

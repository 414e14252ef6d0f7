using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>What a hasty user may type: each gets one plain line and exit status 2, never a trace of the program.</summary>
public sealed class AwkwardInputTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task An_overlay_folder_that_is_a_file_is_refused()
    {
        var file = Path.Combine(_folder.Path, "taken.txt");
        await File.WriteAllTextAsync(file, "kept", TestContext.Current.CancellationToken);

        var run = await AlburnumRun.Of(
            "measure",
            Repository.At("examples", "barn-purlins", "P01.jpg"),
            "--section",
            "round 120",
            "--overlay",
            file
        );

        CheckRefused(run, file);
        Assert.Equal("kept", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_prediction_folder_that_is_a_file_is_refused()
    {
        var file = Path.Combine(_folder.Path, "taken.txt");
        await File.WriteAllTextAsync(file, "kept", TestContext.Current.CancellationToken);

        var run = await AlburnumRun.Of([
            "predict",
            "Scots pine",
            "100x100",
            "--depth",
            "6",
            "--cells",
            "0",
            "--pieces",
            "100",
            "--out",
            file,
        ]);

        CheckRefused(run, file);
    }

    [Theory]
    [InlineData("abc")]
    [InlineData("99999999999999")]
    public async Task A_word_where_a_number_belongs_is_named(string lot)
    {
        var run = await AlburnumRun.Of("sample", "attributes", "--aql", "10", "--lot", lot);

        CheckRefused(run, $"found {lot}, expected a number");
        Assert.DoesNotContain("Nullable", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_depth_below_nothing_is_refused_with_its_range()
    {
        var run = await AlburnumRun.Of("measure", "none.jpg", "--section", "100x100", "--depth", "-5");

        CheckRefused(run, "expected 0.1 to 1000 mm");
    }

    [Theory]
    [InlineData("51", "0.1 to 50")]
    [InlineData("6", "one of the two", "--whole-sapwood")]
    public async Task A_depth_that_no_piece_could_have_is_refused(string depth, string words, params string[] more)
    {
        var run = await AlburnumRun.Of(["predict", "Scots pine", "100x100", "--depth", depth, "--cells", "0", .. more]);

        CheckRefused(run, words);
    }

    private static void CheckRefused(AlburnumRun run, string words)
    {
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains(words, run.Errors, StringComparison.Ordinal);
        Assert.Single(run.Errors.Trim().Split('\n'));
    }
}

namespace Alburnum.Cli.Tests.Handling;

public sealed class HandlingCommandTests
{
    [Fact]
    public async Task A_rule_stands_before_its_exception()
    {
        var said = (await AlburnumRun.Of("handling", "fixings", "--preservative", "boron", "--use-class", "1")).Output;

        var rule = said.IndexOf("fasteners in preservative-treated wood are of", StringComparison.Ordinal);
        var exception = said.IndexOf("plain carbon steel is allowed", StringComparison.Ordinal);
        Assert.InRange(rule, 0, exception);
        Assert.DoesNotContain("connectors outdoors", said, StringComparison.Ordinal);
    }

    // Source: EN 1995-1-1, table 4.1, as printed in a book on timber facades (data/sources.yaml, en1995-fixings).
    [Theory]
    [InlineData("1", "may be bare")]
    [InlineData("2", "nails and screws up to 4 mm, staples, punched metal plates and steel plates up to 5 mm thick")]
    [InlineData("4", "at least Fe/Zn 25c")]
    public async Task Fasteners_in_Britain_go_by_the_European_table(string useClass, string says)
    {
        var run = await AlburnumRun.Of("handling", "fixings", "--place", "Britain", "--use-class", useClass);

        Assert.Equal(0, run.Status);
        Assert.Contains(says, run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("United States", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("no rule of its own", run.Output, StringComparison.Ordinal);
    }
}

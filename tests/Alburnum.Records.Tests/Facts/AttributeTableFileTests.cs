using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public class AttributeTableFileTests
{
    private static readonly string Text = File.ReadAllText(Repository.At("data", "sampling", "mil-std-105e.yaml"));

    private static readonly Lazy<SourceRegister> Sources = new(() => ShippedData.Library.Sources);

    [Fact]
    public void The_tables_that_ship_are_read_with_their_standing()
    {
        var standard = AttributeTableFile.Read(Text, "tables.yaml", Sources);

        Assert.Equal(26, standard.Tables.AqlsPercent.Count);
        // Letter S is there for tightened inspection alone.
        Assert.Equal(3150, standard.Tables.Follow('S', 0.025, Severity.Tightened)!.Value.Row.SampleSize);
        Assert.Equal(2000, standard.Tables.Follow('R', 0.65, Severity.Normal)!.Value.Row.SampleSize);
        Assert.Equal(Standing.Published, standard.Tables.Source.Standing);
        Assert.Equal(Standing.FromMemory, standard.Switching.Source.Standing);
    }

    [Theory]
    [InlineData(
        "letter: F, sampleSize: 20, cells: \"v v",
        "letter: F, sampleSize: 20, cells: \"x v",
        "x, expected Ac/Re such as 2/3, v, ^ or -"
    )]
    [InlineData(
        "letter: F, sampleSize: 20, cells: \"v v",
        "letter: F, sampleSize: 20, cells: \"v",
        "25 cells, expected 26, one for each AQL"
    )]
    [InlineData(
        "letter: F, sampleSize: 20, cells: \"v v v v v v v v v 0/1 ^ v 1/2",
        "letter: F, sampleSize: 20, cells: \"v v v v v v v v v 0/1 ^ v 2/1",
        "2/1, expected Ac/Re"
    )]
    [InlineData("from: 9, to: 15", "from: 10, to: 15", "lots of 10 do not follow the row above")]
    [InlineData("sampleSize: 2000, cells: \"^", "sampleSize: 2000, cells: \"v", "leads nowhere")]
    public void A_broken_table_is_refused_in_words(string right, string wrong, string said)
    {
        Assert.Contains(right, Text, StringComparison.Ordinal);
        var at = Text.IndexOf(right, StringComparison.Ordinal);
        var broken = Text[..at] + wrong + Text[(at + right.Length)..];
        var refused = Assert.Throws<InputRefusedException>(() =>
            AttributeTableFile.Read(broken, "tables.yaml", Sources)
        );

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
    }
}

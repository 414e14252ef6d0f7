using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public sealed class IndicatorFileTests
{
    [Fact]
    public void Every_indicator_that_ships_has_colours_words_cautions_and_a_standing()
    {
        var all = new FactLibrary(Repository.At("data")).Indicators;

        Assert.Distinct(all.Select(each => each.Key), StringComparer.OrdinalIgnoreCase);
        Assert.All(all, each => Assert.NotEmpty(each.TreatedColours));
        Assert.All(all, each => Assert.NotEmpty(each.UntreatedColours));
        Assert.All(all, each => Assert.NotEmpty(each.Cautions));
        Assert.Equal(["none"], all.Where(each => each.IsWeakEvidence).Select(each => each.Key));
        // No colour was read in a document.
        Assert.All(all, each => Assert.Equal(Standing.FromMemory, each.Provenance.Standing));
    }

    [Theory]
    [InlineData("#2B3F8C", "blue", "found blue, expected a colour such as \"#2B3F8C\"")]
    [InlineData("#2B3F8C", "#2B3F8", "found #2B3F8, expected a colour")]
    [InlineData("mean: 0 mm", "mean: 0", "field mean: found 0, expected a number and its unit")]
    [InlineData("looks: deep blue, ", "", "field looks: found nothing")]
    [InlineData("key: copper-black", "key: copper-blue", "expected a unique key")]
    [InlineData("    standing: from memory\n", "", "field standing: found nothing")]
    [InlineData("    name: copper, PAN\n", "    name: copper, PAN\n    hue: red\n", "an unknown field")]
    public void A_mistake_is_named_with_its_place(string right, string wrong, string words)
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Repository.At("data", "indicators.yaml"));
        Assert.Contains(right, text, StringComparison.Ordinal);
        folder.Write("indicators.yaml", text.Replace(right, wrong, StringComparison.Ordinal));
        folder.Write("sources.yaml", File.ReadAllText(Repository.At("data", "sources.yaml")));

        var refused = Assert.Throws<InputRefusedException>(() => new FactLibrary(folder.Path).Indicators);

        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        Assert.All(refused.Problems, problem => Assert.Equal("indicators.yaml", problem.File));
    }
}

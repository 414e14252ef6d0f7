using Alburnum.Timber;

namespace Alburnum.Tests.Timber;

public sealed class SectionTextTests
{
    [Theory]
    [InlineData("100x75", 100, 75)]
    [InlineData("100 x 75 mm", 100, 75)]
    [InlineData("47.5 × 150", 47.5, 150)]
    [InlineData("4 x 6 in", 101.6, 152.4)]
    public void A_sawn_size_is_read_as_people_write_it(string text, double widthMm, double heightMm)
    {
        Assert.True(SectionText.TryParse(text, out var section));
        Assert.Equal(new RectangularSection(widthMm, heightMm), section);
    }

    [Theory]
    [InlineData("round 120 mm", 120)]
    [InlineData("⌀120", 120)]
    [InlineData("diameter 5 in", 127)]
    public void A_round_size_is_read_as_people_write_it(string text, double diameterMm)
    {
        Assert.True(SectionText.TryParse(text, out var section));
        Assert.Equal(new RoundSection(diameterMm), section);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0 x 100 mm")]
    [InlineData("-5 x 100 mm")]
    [InlineData("100")]
    [InlineData("round 100 x 100")]
    [InlineData("100 x 75 cm")]
    [InlineData("2001 x 75")]
    [InlineData("a x b")]
    public void Anything_else_is_refused(string text) => Assert.False(SectionText.TryParse(text, out _));
}

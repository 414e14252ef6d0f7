using Alburnum.Timber;
using CsCheck;

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
    [InlineData("half round 120", 120)]
    [InlineData("Half-round 120 mm", 120)]
    [InlineData("half ø 5 in", 127)]
    public void Half_a_round_goes_by_the_diameter_of_the_round(string text, double diameterMm)
    {
        Assert.True(SectionText.TryParse(text, out var section));
        Assert.Equal(new HalfRoundSection(diameterMm), section);
    }

    [Theory]
    [InlineData("quartered 150", 150)]
    [InlineData("Quarter round 150 mm", 150)]
    public void A_quarter_of_a_round_goes_by_the_diameter_of_the_round(string text, double diameterMm)
    {
        Assert.True(SectionText.TryParse(text, out var section));
        Assert.Equal(new QuarteredSection(diameterMm), section);
    }

    [Fact]
    public void What_a_section_is_called_is_read_back() =>
        Gen.Select(Gen.Int[1, 2000], Gen.Int[1, 2000], Gen.Int[0, 3])
            .Sample(
                (a, b, kind) =>
                {
                    Section section = kind switch
                    {
                        0 => new RectangularSection(a, b),
                        1 => new RoundSection(a),
                        2 => new HalfRoundSection(a),
                        _ => new QuarteredSection(a),
                    };
                    return SectionText.TryParse(section.Label, out var read) && read == section;
                }
            );

    [Theory]
    [InlineData("")]
    [InlineData("half 120")]
    [InlineData("half round 100 x 100")]
    [InlineData("quartered 100 x 100")]
    [InlineData("0 x 100 mm")]
    [InlineData("-5 x 100 mm")]
    [InlineData("100")]
    [InlineData("round 100 x 100")]
    [InlineData("100 x 75 cm")]
    [InlineData("2001 x 75")]
    [InlineData("a x b")]
    public void Anything_else_is_refused(string text) => Assert.False(SectionText.TryParse(text, out _));
}

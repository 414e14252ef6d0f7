using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Tests.Front;

/// <summary>A place where the front draws back is a shallow place, unless what lies there is plainly not sprayed, untreated wood.</summary>
public class OddWoodTests
{
    private const double ShallowMm = 3;

    [Theory]
    [InlineData("copper-blue", 0x2B3F8C, 0xC9583A)]
    [InlineData("copper-black", 0x24302A, 0xD8B98C)]
    [InlineData("copper-black", 0x24302A, 0xD8C9B2)]
    [InlineData("boron-red", 0xB03A28, 0xE0B030)]
    public void A_true_shallow_place_is_read_whatever_the_indicator(string indicator, int treated, int untreated)
    {
        var drawn = Shallow(treated, untreated);

        var profile = Read(drawn, indicator);

        Assert.Equal(ShallowMm, profile.Statistics.MinimumMm.Value, 0.6);
    }

    // Where the bare stretch is wide, or near in colour to the sprayed wood, it is taken for untreated wood like any other, and reaches so far inward that
    // nothing but its hue gives it away.
    [Theory]
    [InlineData(0xC9583A, 30)]
    [InlineData(0xC9583A, 45)]
    [InlineData(0xD07848, 30)]
    public void A_place_that_the_spray_missed_is_left_out(int untreated, int wideMm)
    {
        // From the face inward to well past the front, all along a stretch: bare, pale wood.
        var drawn = new PlainSection
        {
            Untreated = untreated,
            Over = (x, y) => x > 30 && x < 30 + wideMm && y < 22 ? 0xD8C9B2 : null,
        };

        var profile = Read(drawn, "copper-blue");

        Assert.All(Enumerable.Range(34, wideMm - 8), i => Assert.True(profile.Faces[0].Excluded[i], $"{i}"));
        Assert.InRange(profile.Statistics.MinimumMm.Value, 7.5, 9.5);
    }

    private static PlainSection Shallow(int treated, int untreated) =>
        new()
        {
            Treated = treated,
            Untreated = untreated,
            DepthMm = s => s is > 35 and < 60 ? ShallowMm : 9,
        };

    private static DepthProfile Read(PlainSection drawn, string indicator) =>
        DrawnReading.Profile(
            DrawnReading.Of(drawn, DrawnReading.Request(drawn) with { Indicator = KnownIndicators.Sharp(indicator) })
        );
}

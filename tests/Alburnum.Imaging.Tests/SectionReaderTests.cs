using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Tests;

public class SectionReaderTests
{
    // The drawn front is sharp: no dye is drawn past it.
    private static readonly Indicator Blue = KnownIndicators.Sharp("copper-blue");

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_sawn_section_with_an_even_depth_is_read_to_a_tenth_of_a_millimetre(bool pointed)
    {
        var drawn = new PlainSection();
        var reading = Read(drawn, new RectangularSection(100, 75), pointed);

        Assert.NotNull(reading.Profile);
        Assert.Equal(9, reading.Profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal(9, reading.Profile.Statistics.MinimumMm.Value, 0.2);
        // A twentieth of a millimetre around the front, and a few square millimetres at each inner corner.
        Assert.Equal(1 - (82.0 * 57 / 7500), reading.Profile.TreatedShare.Value, 0.008);
        Assert.Equal(4, reading.Profile.Faces.Count);
        foreach (var (found, true_) in reading.OutlinePx.Zip(drawn.Outline))
            Assert.True(double.Hypot(found.X - true_.X, found.Y - true_.Y) < 2, $"{found} for {true_}");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_round_section_with_an_even_depth_is_read_to_a_tenth_of_a_millimetre(bool pointed)
    {
        var drawn = new PlainSection { Kind = DrawnOutline.Round, WidthMm = 120 };
        var reading = Read(drawn, new RoundSection(120), pointed);

        Assert.NotNull(reading.Profile);
        Assert.Equal(9, reading.Profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal(9, reading.Profile.Statistics.MinimumMm.Value, 0.25);
        Assert.Equal(1 - (51.0 * 51 / 3600), reading.Profile.TreatedShare.Value, 0.004);
        Assert.Single(reading.Profile.Faces);
    }

    private static SectionReading Read(PlainSection drawn, Section section, bool pointed) =>
        SectionReader.Read(
            "drawn.jpg",
            drawn.Draw(),
            new()
            {
                Section = section,
                Indicator = Blue,
                Candidates = KnownIndicators.All,
                OutlinePx = pointed ? drawn.Outline : null,
            },
            TestContext.Current.CancellationToken
        );
}

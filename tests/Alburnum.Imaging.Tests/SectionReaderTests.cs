using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Penetration;
using Alburnum.Timber;
using SkiaSharp;

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

        var read = DrawnReading.Read(reading);
        Assert.Equal(9, read.Profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal(9, read.Profile.Statistics.MinimumMm.Value, 0.2);
        // A twentieth of a millimetre around the front, and a few square millimetres at each inner corner.
        Assert.Equal(1 - (82.0 * 57 / 7500), read.Profile.TreatedShare.Value, 0.008);
        Assert.Equal(4, read.Profile.Faces.Count);
        foreach (var (found, true_) in read.Outline.PointsPx.Zip(drawn.Outline))
            Assert.True(double.Hypot(found.X - true_.X, found.Y - true_.Y) < 2, $"{found} for {true_}");
    }

    [Fact]
    public void A_photograph_six_times_as_long_as_high_asks_for_the_outline()
    {
        using var bitmap = new SKBitmap(1200, 200);
        bitmap.Erase(SKColors.Tan);
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);

        var ended = DrawnReading.Ended(
            DrawnReading.Of(data.ToArray(), DrawnReading.Request(new PlainSection()) with { OutlinePx = null })
        );

        Assert.Equal((ReadingStage.Outline, new OutlineNotFound()), (ended.Stage, ended.Fault));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_round_section_with_an_even_depth_is_read_to_a_tenth_of_a_millimetre(bool pointed)
    {
        var drawn = new PlainSection { Kind = DrawnOutline.Round, WidthMm = 120 };
        var reading = Read(drawn, new RoundSection(120), pointed);

        var read = DrawnReading.Read(reading);
        Assert.Equal(9, read.Profile.Statistics.MeanMm.Value, 0.1);
        Assert.Equal(9, read.Profile.Statistics.MinimumMm.Value, 0.25);
        Assert.Equal(1 - (51.0 * 51 / 3600), read.Profile.TreatedShare.Value, 0.004);
        Assert.Single(read.Profile.Faces);
    }

    [Fact]
    public void The_budget_adds_up_to_the_uncertainty_of_mean_and_least_depth()
    {
        PlainSection[] drawn =
        [
            new(),
            new() { LensBow = -0.08 },
            new() { Kind = DrawnOutline.Round, WidthMm = 100 },
            new() { BlurPx = 5 },
        ];
        foreach (var read in drawn.Select(each => DrawnReading.Read(DrawnReading.Of(each))))
        {
            var depth = read.Profile.Statistics;
            Assert.Equal(depth.MeanMm.StandardUncertainty, read.Budget.MeanMm.Combined, 1e-9);
            Assert.Equal(depth.MinimumMm.StandardUncertainty, read.Budget.LeastMm.Combined, 1e-9);
            Assert.All(
                read.Budget.MeanMm.Components,
                component => Assert.Contains(component.Cause.Key, DepthCauses.All.Select(cause => cause.Key))
            );
        }
    }

    [Fact]
    public void A_picture_without_a_section_ends_at_the_outline()
    {
        var drawn = new PlainSection { Untreated = 0xC8C8C8, Treated = 0xC8C8C8 };
        var ended = DrawnReading.Ended(
            DrawnReading.Of(
                drawn,
                DrawnReading.Request(drawn) with
                {
                    OutlinePx = null,
                    Shape = SectionShape.CoreStrip,
                }
            )
        );

        Assert.Equal((ReadingStage.Outline, new OutlineNotFound()), (ended.Stage, ended.Fault));
        Assert.Null(ended.Scale);
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

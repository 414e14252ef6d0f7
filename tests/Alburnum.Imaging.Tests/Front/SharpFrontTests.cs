using Alburnum.Imaging.Tests.Drawn;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Front;

/// <summary>A sharp front between two even colours: wherever it falls between samples, it is read where it was drawn.</summary>
public class SharpFrontTests
{
    [Theory]
    [InlineData(false, 5.9)]
    [InlineData(false, 7)]
    [InlineData(false, 8.9)]
    [InlineData(true, 7)]
    [InlineData(true, 8)]
    public void It_is_read_where_it_was_drawn_at_any_scale(bool isRound, double pxPerMm)
    {
        var drawn = new PlainSection
        {
            Kind = isRound ? DrawnOutline.Round : DrawnOutline.Sawn,
            WidthMm = 90,
            HeightMm = 70,
            PxPerMm = pxPerMm,
            DepthMm = _ => 6,
            Format = SKEncodedImageFormat.Png,
        };

        var read = DrawnReading.Profile(DrawnReading.Of(drawn));

        Assert.Equal(6, read.Statistics.MeanMm.Value, 0.1);
    }
}

using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using ImageMagick;
using SkiaSharp;
using Repository = Alburnum.Tests.Shared.Repository;

namespace Alburnum.Imaging.Tests.Photographs;

/// <summary>One drawing in every kind of file that a camera or a scanner makes: the same depth each time.</summary>
public class KindsOfPhotographTests
{
    private static readonly PlainSection Drawn = new() { PxPerMm = 6, MarginPx = 90 };

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public void Everyday_kinds(SKEncodedImageFormat format) => Reads((Drawn with { Format = format }).Draw());

    [Theory]
    [InlineData(MagickFormat.Tiff, CompressionMethod.NoCompression)]
    [InlineData(MagickFormat.Tiff, CompressionMethod.LZW)]
    [InlineData(MagickFormat.Tiff, CompressionMethod.JPEG)]
    [InlineData(MagickFormat.Tiff64, CompressionMethod.Zip)]
    public void Tiff(MagickFormat format, CompressionMethod compression) =>
        Reads(Written(format, image => image.Settings.Compression = compression));

    [Theory]
    [InlineData(MagickFormat.Tiff)]
    [InlineData(MagickFormat.Jpeg)]
    public void Four_inks(MagickFormat format) => Reads(Written(format, image => image.ColorSpace = ColorSpace.CMYK));

    [Fact]
    public void Sixteen_bits_a_channel()
    {
        using var bitmap = Drawn.Bitmap();
        Reads(WrittenByHand.DeepPng(bitmap));
        Reads(WrittenByHand.DeepTiff(bitmap));
    }

    [Fact]
    public void Heic() => Reads(HeicFile);

    // This drawing saved as PNG and packed with libheif 1.15 (x265, quality 25): no encoder at hand in the tests writes HEIC.
    private static byte[] HeicFile =>
        File.ReadAllBytes(Repository.At("tests", "Alburnum.Imaging.Tests", "Photographs", "plain-section.heic"));

    [Theory]
    [InlineData(MagickFormat.Png)]
    [InlineData(MagickFormat.Tiff)]
    public void A_cut_out_stands_on_white(MagickFormat format) =>
        Reads(
            Written(
                format,
                image =>
                {
                    image.Alpha(AlphaAction.Set);
                    // The ground of the drawing becomes see-through, and black below.
                    image.ColorFuzz = new Percentage(8);
                    image.Transparent(new MagickColor("#F0F0EE"));
                }
            )
        );

    [Theory]
    [InlineData(MagickFormat.Jpeg, ColorType.Grayscale)]
    [InlineData(MagickFormat.Png, ColorType.Grayscale)]
    [InlineData(MagickFormat.Tiff, ColorType.Grayscale)]
    [InlineData(MagickFormat.Jpeg, ColorType.TrueColor)]
    public void A_picture_without_colour_shows_no_reaction(MagickFormat format, ColorType stored) =>
        ShowsNoColour(
            image =>
            {
                image.ColorSpace = ColorSpace.Gray;
                image.ColorSpace = ColorSpace.sRGB;
                image.ColorType = stored;
            },
            format
        );

    [Theory]
    [InlineData(1, 0.85, 0.62)]
    [InlineData(0.7, 0.8, 1)]
    public void A_picture_toned_in_one_colour_shows_no_reaction(double red, double green, double blue) =>
        ShowsNoColour(
            image =>
            {
                image.ColorSpace = ColorSpace.Gray;
                image.ColorSpace = ColorSpace.sRGB;
                image.Quality = 75;
                image.Evaluate(Channels.Red, EvaluateOperator.Multiply, red);
                image.Evaluate(Channels.Green, EvaluateOperator.Multiply, green);
                image.Evaluate(Channels.Blue, EvaluateOperator.Multiply, blue);
            },
            MagickFormat.Jpeg
        );

    private static void ShowsNoColour(Action<MagickImage> made, MagickFormat format)
    {
        var black = Drawn with { Treated = 0x24302A, Untreated = 0xD8B98C };
        using var image = new MagickImage((black with { Format = SKEncodedImageFormat.Png }).Draw());
        made(image);

        var reading = DrawnReading.Of(
            image.ToByteArray(format),
            DrawnReading.Request(black) with
            {
                Indicator = KnownIndicators.Sharp("copper-black"),
            }
        );

        Assert.Equal(
            (ReadingStage.Zones, new NoColour()),
            (DrawnReading.Ended(reading).Stage, DrawnReading.Ended(reading).Fault)
        );
    }

    [Theory]
    [InlineData(MagickFormat.Png)]
    [InlineData(MagickFormat.Tiff)]
    public void A_half_transparent_picture_is_not_the_photograph_that_was_taken(MagickFormat format)
    {
        var reading = DrawnReading.Of(
            Written(
                format,
                image =>
                {
                    image.Alpha(AlphaAction.Set);
                    image.Evaluate(Channels.Alpha, EvaluateOperator.Multiply, 0.5);
                }
            ),
            DrawnReading.Request(Drawn)
        );

        Assert.Equal(new TooLittleShown(), DrawnReading.Ended(reading).Fault);
        Assert.Equal(new SeeThrough(1), Assert.Single(reading.Outcome.Quality.Findings.OfType<SeeThrough>()));
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(50.0)]
    public void From_one_to_fifty_megapixels(double megapixels)
    {
        using var drawn = Drawn.Bitmap();
        var k = Math.Sqrt(megapixels * 1e6 / ((double)drawn.Width * drawn.Height));
        using var sized = drawn.Resize(
            new SKImageInfo((int)(k * drawn.Width), (int)(k * drawn.Height)),
            new SKSamplingOptions(SKFilterMode.Linear)
        );
        using var jpeg = sized.Encode(SKEncodedImageFormat.Jpeg, 90);
        var reading = DrawnReading.Of(
            jpeg.ToArray(),
            DrawnReading.Request(Drawn) with
            {
                OutlinePx = [.. Drawn.Outline.Select(p => new PointPx(k * p.X, k * p.Y))],
            }
        );
        Assert.Equal(9, DrawnReading.Profile(reading).Statistics.MeanMm.Value, 0.2);
    }

    [Theory]
    [InlineData(MagickFormat.Tiff)]
    [InlineData(MagickFormat.Png)]
    public void A_file_cut_short_is_refused(MagickFormat format)
    {
        var whole = Written(format, image => image.Settings.Compression = CompressionMethod.LZW);
        foreach (var share in new[] { 0.1, 0.5, 0.95 })
        {
            var refused = Assert.Throws<InputRefusedException>(() =>
                DrawnReading.Of(whole[..(int)(share * whole.Length)], DrawnReading.Request(Drawn))
            );
            Assert.Equal("drawn.jpg", refused.Problems[0].File);
        }
    }

    [Fact]
    public void A_heic_cut_short_is_refused()
    {
        var whole = HeicFile;
        foreach (var share in new[] { 0.01, 0.1, 0.5, 0.95 })
        {
            Assert.Throws<InputRefusedException>(() =>
                DrawnReading.Of(whole[..(int)(share * whole.Length)], DrawnReading.Request(Drawn))
            );
        }
    }

    private static void Reads(byte[] file)
    {
        var reading = DrawnReading.Of(file, DrawnReading.Request(Drawn));
        Assert.Equal((Drawn.WidthPx, Drawn.HeightPx), (reading.WidthPx, reading.HeightPx));
        Assert.Equal(9, DrawnReading.Profile(reading).Statistics.MeanMm.Value, 0.15);
        Assert.Equal(9, DrawnReading.Profile(reading).Statistics.MinimumMm.Value, 0.3);
    }

    private static byte[] Written(MagickFormat format, Action<MagickImage> change)
    {
        using var image = new MagickImage((Drawn with { Format = SKEncodedImageFormat.Png }).Draw());
        change(image);
        return image.ToByteArray(format);
    }
}

using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Photographs;

/// <summary>A photograph stored in each of the eight ways of EXIF 2.3 (tag 274): corners and faces are those of the upright picture.</summary>
public class OrientationTests
{
    // Unlike on each side, so that no turn can pass for another.
    private static readonly PlainSection Drawn = new()
    {
        PxPerMm = 6,
        MarginPx = 90,
        DepthMm = s =>
            s < 100 ? 5
            : s < 175 ? 8
            : s < 275 ? 11
            : 14,
    };

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void It_is_read_as_displayed(int orientation)
    {
        var reading = DrawnReading.Of(Stored(orientation), DrawnReading.Request(Drawn));

        Assert.Equal((Drawn.WidthPx, Drawn.HeightPx), (reading.WidthPx, reading.HeightPx));
        var faces = DrawnReading.Profile(reading).Faces;
        foreach (var (face, depthMm) in faces.Zip([5.0, 8, 11, 14]))
            Assert.Equal(depthMm, face.DepthMm[face.DepthMm.Count / 2], 0.2);
        foreach (var (found, given) in DrawnReading.Read(reading).Outline.PointsPx.Zip(Drawn.Outline))
            Assert.True(double.Hypot(found.X - given.X, found.Y - given.Y) < 2);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(65535)]
    public void A_value_that_means_nothing_leaves_the_picture_as_it_is(int orientation)
    {
        var reading = DrawnReading.Of(WithExif(Drawn.Draw(), orientation), DrawnReading.Request(Drawn));

        Assert.Equal((Drawn.WidthPx, Drawn.HeightPx), (reading.WidthPx, reading.HeightPx));
        Assert.IsType<Read>(reading.Outcome);
    }

    private static byte[] Stored(int orientation)
    {
        using var upright = Drawn.Bitmap();
        var (w, h) = (upright.Width, upright.Height);
        var turned = orientation >= 5;
        using var stored = new SKBitmap(turned ? h : w, turned ? w : h);
        for (var row = 0; row < stored.Height; row++)
        {
            for (var column = 0; column < stored.Width; column++)
            {
                // EXIF names the side of the upright picture on which row 0 and column 0 of the stored one lie.
                var (x, y) = orientation switch
                {
                    1 => (column, row),
                    2 => (w - 1 - column, row),
                    3 => (w - 1 - column, h - 1 - row),
                    4 => (column, h - 1 - row),
                    5 => (row, column),
                    6 => (w - 1 - row, column),
                    7 => (w - 1 - row, h - 1 - column),
                    _ => (row, h - 1 - column),
                };
                stored.SetPixel(column, row, upright.GetPixel(x, y));
            }
        }
        using var jpeg = stored.Encode(SKEncodedImageFormat.Jpeg, 92);
        return WithExif(jpeg.ToArray(), orientation);
    }

    // An APP1 segment with one entry: orientation, type short, count 1.
    private static byte[] WithExif(byte[] jpeg, int orientation) =>
        [
            .. jpeg[..2],
            0xFF,
            0xE1,
            0,
            34,
            .. "Exif\0\0MM\0*\0\0\0\b"u8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            (byte)(orientation >> 8),
            (byte)orientation,
            0,
            0,
            0,
            0,
            0,
            0,
            .. jpeg[2..],
        ];
}

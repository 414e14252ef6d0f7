using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rectification;
using CsCheck;

namespace Alburnum.Imaging.Tests.Rectification;

public class RectifyRowTests
{
    [Fact]
    public void The_quick_row_and_its_plain_twin_agree_to_a_sixteenth_of_a_pixel()
    {
        // A step along x of one level a pixel: a sixteenth of a pixel is less than one level.
        const int Size = 200;
        var bytes = new byte[Size * Size * 4];
        for (var i = 0; i < bytes.Length; i++)
            bytes[i] = (byte)((i / 4 % Size) + (i % 4));
        Gen.Select(
                Gen.Double[0.2, 2.5],
                Gen.Double[-0.4, 0.4],
                Gen.Double[0, 150],
                Gen.Double[-0.0005, 0.0005],
                Gen.Int[0, 60]
            )
            .Sample(
                (scale, turn, offset, tilt, y) =>
                {
                    var map = new Homography(scale, -turn, offset, turn, scale, offset / 2, tilt, -tilt / 2, 1);
                    var stored = new StoredPixels(bytes, Size, Size, Size * 4);
                    var quick = new byte[3 * 80];
                    var plain = new byte[3 * 80];
                    RectifyRow.Draw(stored, in map, y, quick);
                    DrawPlainly(stored, in map, y, plain);
                    for (var i = 0; i < quick.Length; i++)
                        Assert.True(Math.Abs(quick[i] - plain[i]) <= 1, $"{quick[i]} and {plain[i]} at {i}");
                },
                iter: 300
            );
    }

    // What drawing a row computes, said simply.
    private static void DrawPlainly(StoredPixels stored, in Homography map, int y, Span<byte> row)
    {
        for (var x = 0; x < row.Length / 3; x++)
        {
            var (r, g, b) = RectifyRow.Sample(stored, map.Map(x, y));
            row[3 * x] = (byte)((r + 128) >> 8);
            row[(3 * x) + 1] = (byte)((g + 128) >> 8);
            row[(3 * x) + 2] = (byte)((b + 128) >> 8);
        }
    }
}

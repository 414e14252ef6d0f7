using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Tests.Rectification;

public class BentRowTests
{
    [Theory]
    [InlineData(0.1, false)]
    [InlineData(-0.08, false)]
    [InlineData(0.1, true)]
    public void The_quick_row_and_every_pixel_mapped_by_itself_agree_to_a_level(double bow, bool fine)
    {
        // A step along x and along y of one level a pixel: a hundredth of a pixel is far less than one level.
        const int Size = 240;
        var bytes = new byte[Size * Size * 4];
        for (var i = 0; i < bytes.Length; i++)
            bytes[i] = (byte)(((i / 4 % Size) + (i / 4 / Size)) / 2);
        var stored = new StoredPixels(bytes, Size, Size, Size * 4);
        var map = new SectionMap(new(6, 0.3, 20, -0.2, 6, 15, 0.0004, -0.0003, 1), RadialLens.Of(Size, Size, bow));
        var toMm = new Homography(0.25, 0, 0.1, 0, 0.25, 0.1, 0, 0, 1);
        var toStored = new Homography(1, 0, 0, 0, 1, 0, 0, 0, 1);
        var row = new byte[3 * 101];
        for (var y = 0; y < 100; y += 7)
        {
            new BentRow(map, toMm, toStored).Draw(stored, y, fine, row);
            for (var x = 0; x < 101; x++)
            {
                var mm = toMm.Map(x, y);
                var (r, g, b) = RectifyRow.Sample(stored, map.ToPx(mm.X, mm.Y));
                Assert.Equal(r / 256.0, row[3 * x], 1.0);
                Assert.Equal(g / 256.0, row[(3 * x) + 1], 1.0);
                Assert.Equal(b / 256.0, row[(3 * x) + 2], 1.0);
            }
        }
    }
}

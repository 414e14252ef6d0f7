using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Cards;

/// <summary>The green of a photograph as it is stored, averaged in square blocks to a thousand pixels on the longer side at most.</summary>
internal sealed class GreenPicture
{
    /// <summary>Most pixels of the longer side: a mark of the card still has a dozen of them. Our own choice.</summary>
    private const int LongSide = 1000;

    /// <summary>Samples of each block, a row and a column of at most so many. Our own choice.</summary>
    private const int MostSamples = 3;

    /// <summary>Place of the green among a pixel's four bytes.</summary>
    private const int Green = 1;

    private GreenPicture(int width, int height, int block, Homography toUpright)
    {
        (Width, Height, Block, ToUpright) = (width, height, block, toUpright);
        Values = new byte[width * height];
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Stored pixels on the side of a block.</summary>
    public int Block { get; }

    /// <summary>From places here (a pixel's middle at halves) to upright full-size pixels.</summary>
    public Homography ToUpright { get; }

    /// <summary>Row by row.</summary>
    public byte[] Values { get; }

    public static GreenPicture Of(Photograph photo)
    {
        var block = (Math.Max(photo.StoredWidthPx, photo.StoredHeightPx) + LongSide - 1) / LongSide;
        var picture = new GreenPicture(
            photo.StoredWidthPx / block,
            photo.StoredHeightPx / block,
            block,
            photo.UprightToStored.Inverse().After(new(block, 0, 0, 0, block, 0, 0, 0, 1))
        );
        var samples = Math.Min(block, MostSamples);
        var offsets = Enumerable.Range(0, samples).Select(k => ((2 * k) + 1) * block / (2 * samples)).ToArray();
        var pixels = photo.Pixels;
        for (var y = 0; y < picture.Height; y++)
        {
            var row = picture.Values.AsSpan(y * picture.Width, picture.Width);
            for (var x = 0; x < row.Length; x++)
            {
                var sum = 0;
                foreach (var down in offsets)
                {
                    var at = (((y * block) + down) * photo.StoredStride) + (4 * x * block) + Green;
                    for (var k = 0; k < offsets.Length; k++)
                        sum += pixels[at + (4 * offsets[k])];
                }
                row[x] = (byte)(sum / (samples * samples));
            }
        }
        return picture;
    }
}

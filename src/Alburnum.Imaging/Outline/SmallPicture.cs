using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Rectification;

namespace Alburnum.Imaging.Outline;

/// <summary>The upright photograph reduced to a few hundred pixels a side, each the mean of its area.</summary>
internal sealed class SmallPicture
{
    /// <summary>Samples of the photograph in each pixel here, a row and a column of so many. Our own choice.</summary>
    private const int N = 4;

    private const float Samples = N * N;

    private SmallPicture(int width, int height, double upright)
    {
        (Width, Height, UprightPerPx) = (width, height, upright);
        Rgb = new float[3 * width * height];
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Upright full-size pixels per pixel here.</summary>
    public double UprightPerPx { get; }

    /// <summary>Red, green, blue, 0 to 255.</summary>
    public float[] Rgb { get; }

    public static SmallPicture Of(Photograph photo, int longSide)
    {
        var scale = Math.Max(photo.WidthPx, photo.HeightPx) / (double)longSide;
        var small = new SmallPicture(
            Math.Max(1, (int)(photo.WidthPx / scale)),
            Math.Max(1, (int)(photo.HeightPx / scale)),
            scale
        );
        var map = photo.UprightToStored;
        var stored = new StoredPixels(photo.Pixels, photo.StoredWidthPx, photo.StoredHeightPx, photo.StoredStride);
        for (var y = 0; y < small.Height; y++)
        {
            for (var x = 0; x < small.Width; x++)
            {
                int r = 0,
                    g = 0,
                    b = 0;
                for (var j = 0; j < N; j++)
                {
                    for (var i = 0; i < N; i++)
                    {
                        var p = map.Map((x + ((i + 0.5) / N)) * scale, (y + ((j + 0.5) / N)) * scale);
                        var px = Math.Clamp((int)p.X, 0, stored.Width - 1);
                        var py = Math.Clamp((int)p.Y, 0, stored.Height - 1);
                        var at = (py * stored.Stride) + (4 * px);
                        (r, g, b) = (r + stored.Bytes[at], g + stored.Bytes[at + 1], b + stored.Bytes[at + 2]);
                    }
                }
                var o = 3 * ((y * small.Width) + x);
                (small.Rgb[o], small.Rgb[o + 1], small.Rgb[o + 2]) = (r / Samples, g / Samples, b / Samples);
            }
        }
        return small;
    }
}

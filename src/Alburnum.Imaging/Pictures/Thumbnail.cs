using Alburnum.Imaging.Photographs;
using SkiaSharp;

namespace Alburnum.Imaging.Pictures;

/// <summary>A small upright copy of a photograph, for a printed page.</summary>
public static class Thumbnail
{
    /// <summary>Longer sides of a picture that can be asked for, pixels.</summary>
    internal static readonly (int Least, int Most) LongSidePx = (16, 4096);

    private const int JpegQuality = 86;

    /// <summary>Makes a JPEG whose longer side is at most a number of pixels.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="photograph">The photograph's bytes, of any kind that can be read.</param>
    /// <param name="longSidePx">Longer side of the copy, pixels. 16 to 4096.</param>
    /// <exception cref="InputRefusedException">The bytes are not a photograph that can be read.</exception>
    public static byte[] Jpeg(string fileName, ReadOnlyMemory<byte> photograph, int longSidePx)
    {
        Require.InRange(longSidePx, LongSidePx.Least, LongSidePx.Most, "pixels");
        using var file = PhotographFile.Open(fileName, photograph);
        using var surface = UprightCopy.Draw(
            file,
            (float)Math.Min(1, (double)longSidePx / Math.Max(file.WidthPx, file.HeightPx))
        );
        using var upright = surface.Snapshot();
        using var jpeg = upright.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }
}

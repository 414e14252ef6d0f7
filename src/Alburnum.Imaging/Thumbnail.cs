using Alburnum.Imaging.Photographs;
using SkiaSharp;

namespace Alburnum.Imaging;

/// <summary>A small upright copy of a photograph, for a printed page.</summary>
public static class Thumbnail
{
    private const int JpegQuality = 86;

    /// <summary>Makes a JPEG whose longer side is at most a number of pixels.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="photograph">The photograph's bytes, of any kind that can be read.</param>
    /// <param name="longSidePx">Longer side of the copy, pixels. 16 to 4096.</param>
    /// <exception cref="InputRefusedException">The bytes are not a photograph that can be read.</exception>
    public static byte[] Jpeg(string fileName, ReadOnlyMemory<byte> photograph, int longSidePx)
    {
        Require.InRange(longSidePx, 16, 4096, "pixels");
        using var file = PhotographFile.Open(fileName, photograph);
        var scale = Math.Min(1, (double)longSidePx / Math.Max(file.WidthPx, file.HeightPx));
        using var decoded = file.Decode(scale);
        using var surface = SKSurface.Create(
            new SKImageInfo(
                (int)Math.Round(file.WidthPx * scale),
                (int)Math.Round(file.HeightPx * scale),
                SKColorType.Rgba8888,
                SKAlphaType.Opaque
            )
        );
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.SetMatrix(SKMatrix.CreateScale((float)scale, (float)scale).PreConcat(StoredToUpright(decoded)));
        using var stored = SKImage.FromBitmap(decoded.Bitmap);
        surface.Canvas.DrawImage(stored, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var upright = surface.Snapshot();
        using var jpeg = upright.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return jpeg.ToArray();
    }

    private static SKMatrix StoredToUpright(Photograph photograph)
    {
        var map = photograph.UprightToStored;
        var (origin, right, down) = (map.Map(0, 0), map.Map(1, 0), map.Map(0, 1));
        return new SKMatrix(
            (float)(right.X - origin.X),
            (float)(down.X - origin.X),
            (float)origin.X,
            (float)(right.Y - origin.Y),
            (float)(down.Y - origin.Y),
            (float)origin.Y,
            0,
            0,
            1
        ).Invert();
    }
}

using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>A copy of a photograph, turned upright and reduced, to draw on.</summary>
internal static class UprightCopy
{
    /// <summary>Draws the copy; its canvas is left in full-size upright pixels.</summary>
    public static SKSurface Draw(PhotographFile file, float scale)
    {
        using var decoded = file.Decode(scale);
        var surface = SKSurface.Create(
            new SKImageInfo(
                Math.Max(1, (int)Math.Round(file.WidthPx * scale)),
                Math.Max(1, (int)Math.Round(file.HeightPx * scale)),
                SKColorType.Rgba8888,
                SKAlphaType.Opaque
            )
        );
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Scale(scale);
        canvas.Save();
        var toUpright = StoredToUpright(decoded);
        canvas.Concat(in toUpright);
        using var stored = SKImage.FromBitmap(decoded.Bitmap);
        canvas.DrawImage(stored, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Restore();
        return surface;
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

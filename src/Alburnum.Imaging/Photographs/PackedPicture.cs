using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>A picture whose header has been read and whose pixels have not been unpacked yet.</summary>
internal abstract class PackedPicture : IDisposable
{
    /// <summary>Width as stored, pixels.</summary>
    public abstract int WidthPx { get; }

    /// <summary>Height as stored, pixels.</summary>
    public abstract int HeightPx { get; }

    /// <summary>How the stored picture is to be turned.</summary>
    public abstract SKEncodedOrigin Origin { get; }

    /// <summary>Unpacks to four bytes a pixel, whatever was see-through on white; null where the picture is damaged or unfinished.</summary>
    /// <param name="leastScale">The picture may be reduced where that is cheap, but not below this share. Above 0, at most 1.</param>
    public abstract UnpackedPicture? Unpack(double leastScale);

    public abstract void Dispose();
}

/// <summary>A picture's pixels, four bytes each.</summary>
/// <param name="Bitmap">The pixels, laid on white.</param>
/// <param name="Cover">How far each pixel covers what is behind it, 0 to 255, row by row without gaps; null where all do wholly.</param>
internal sealed record UnpackedPicture(SKBitmap Bitmap, byte[]? Cover);

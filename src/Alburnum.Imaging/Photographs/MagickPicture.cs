using ImageMagick;
using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>TIFF (its first page) and HEIC, of any depth and colour space.</summary>
/// <remarks>Only ever asked to read the one kind that the bytes show, so that nothing else the library can do is reached.</remarks>
internal sealed class MagickPicture : PackedPicture
{
    private const int RowsAtOnce = 64;

    /// <summary>More memory than the largest photograph accepted needs is never taken.</summary>
    private const ulong MostMemoryBytes = 1024UL * 1024 * 1024;

    private readonly ReadOnlyMemory<byte> _bytes;
    private readonly MagickReadSettings _settings;

    static MagickPicture()
    {
        // Never on disk.
        ResourceLimits.Disk = 0;
        ResourceLimits.Memory = MostMemoryBytes;
        ResourceLimits.Thread = 1;
    }

    private MagickPicture(ReadOnlyMemory<byte> bytes, MagickReadSettings settings, MagickImageInfo info)
    {
        (_bytes, _settings) = (bytes, settings);
        (WidthPx, HeightPx) = (checked((int)info.Width), checked((int)info.Height));
        // HEIC says how to turn itself in its own structure, which the library has followed; EXIF beside it only repeats that.
        Origin =
            settings.Format == MagickFormat.Tiff
            && info.Orientation is >= Orientation.TopLeft and <= Orientation.LeftBottom
                ? (SKEncodedOrigin)info.Orientation
                : SKEncodedOrigin.TopLeft;
    }

    public override int WidthPx { get; }

    public override int HeightPx { get; }

    public override SKEncodedOrigin Origin { get; }

    /// <summary>Reads the header; null where these bytes are of another kind, or their header is broken.</summary>
    public static MagickPicture? Open(ReadOnlyMemory<byte> bytes)
    {
        if (KindOf(bytes.Span) is not { } kind)
            return null;
        var settings = new MagickReadSettings
        {
            Format = kind,
            FrameIndex = 0,
            FrameCount = 1,
        };
        try
        {
            var info = new MagickImageInfo();
            info.Read(bytes.Span, settings);
            return new(bytes, settings, info);
        }
        catch (MagickException)
        {
            return null;
        }
    }

    public override UnpackedPicture? Unpack(double leastScale)
    {
        try
        {
            using var image = new MagickImage(_bytes.Span, _settings);
            if (image.Width != (uint)WidthPx || image.Height != (uint)HeightPx)
                return null;
            var cover = image.HasAlpha ? Cover(image) : null;
            if (image.HasAlpha)
            {
                image.BackgroundColor = MagickColors.White;
                image.Alpha(AlphaAction.Remove);
            }
            image.ColorSpace = ColorSpace.sRGB;
            return new(Copy(image), cover);
        }
        catch (MagickException)
        {
            return null;
        }
    }

    public override void Dispose() { }

    private byte[]? Cover(MagickImage image)
    {
        using var pixels = image.GetPixelsUnsafe();
        var cover = pixels.ToByteArray(0, 0, (uint)WidthPx, (uint)HeightPx, "A")!;
        return cover.AsSpan().ContainsAnyExcept(byte.MaxValue) ? cover : null;
    }

    private SKBitmap Copy(MagickImage image)
    {
        var bitmap = new SKBitmap(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        var to = bitmap.GetPixelSpan();
        using var pixels = image.GetPixelsUnsafe();
        for (var y = 0; y < HeightPx; y += RowsAtOnce)
        {
            var rows = Math.Min(RowsAtOnce, HeightPx - y);
            var from = pixels.ToByteArray(0, y, (uint)WidthPx, (uint)rows, PixelMapping.RGBA)!;
            for (var k = 0; k < rows; k++)
                from.AsSpan(k * 4 * WidthPx, 4 * WidthPx).CopyTo(to[((y + k) * bitmap.RowBytes)..]);
        }
        return bitmap;
    }

    // TIFF 6.0, section 2 (and its 64-bit form); ISO 14496-12, file type box, with the brands of ISO 23008-12 for HEVC pictures.
    private static MagickFormat? KindOf(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            [(byte)'I', (byte)'I', 42 or 43, 0, ..] or [(byte)'M', (byte)'M', 0, 42 or 43, ..] => MagickFormat.Tiff,
            [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', ..]
                when bytes.Length >= 12 && HeicBrands.Contains(System.Text.Encoding.ASCII.GetString(bytes[8..12])) =>
                MagickFormat.Heic,
            _ => null,
        };

    private static readonly HashSet<string> HeicBrands = new(StringComparer.Ordinal)
    {
        "heic",
        "heix",
        "heim",
        "heis",
        "hevc",
        "hevx",
        "mif1",
        "msf1",
    };
}

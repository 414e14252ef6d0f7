using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>JPEG, PNG and WebP: 8 or 16 bits, grey, colour or four inks, with or without see-through parts.</summary>
internal sealed class SkiaPicture : PackedPicture
{
    private readonly SKData _held;
    private readonly SKCodec _codec;

    private SkiaPicture(SKData data, SKCodec codec)
    {
        _held = data;
        _codec = codec;
    }

    public override int WidthPx => _codec.Info.Width;

    public override int HeightPx => _codec.Info.Height;

    public override SKEncodedOrigin Origin => _codec.EncodedOrigin;

    /// <summary>Reads the header; null where these bytes are of another kind.</summary>
    public static SkiaPicture? Open(ReadOnlySpan<byte> bytes)
    {
        var data = SKData.CreateCopy(bytes);
        if (SKCodec.Create(data) is { } codec)
            return new(data, codec);
        data.Dispose();
        return null;
    }

    public override UnpackedPicture? Unpack(double leastScale)
    {
        var size = _codec.Info.Size;
        if (_codec.EncodedFormat == SKEncodedImageFormat.Jpeg && leastScale < 1)
        {
            for (var eighths = 2; eighths < 8; eighths++)
            {
                if (eighths / 8.0 < leastScale)
                    continue;
                size = _codec.GetScaledDimensions(eighths / 8f);
                break;
            }
        }
        var seeThrough = _codec.Info.AlphaType != SKAlphaType.Opaque;
        var info = new SKImageInfo(
            size.Width,
            size.Height,
            SKColorType.Rgba8888,
            seeThrough ? SKAlphaType.Premul : SKAlphaType.Opaque
        );
        var bitmap = new SKBitmap(info);
        if (_codec.GetPixels(info, bitmap.GetPixels()) != SKCodecResult.Success)
        {
            bitmap.Dispose();
            return null;
        }
        return new(bitmap, seeThrough ? LayOnWhite(bitmap) : null);
    }

    public override void Dispose()
    {
        _codec.Dispose();
        _held.Dispose();
    }

    // Colours come multiplied by their cover, so white fills what is left of each. Returns the cover; null where it is whole everywhere.
    private static byte[]? LayOnWhite(SKBitmap bitmap)
    {
        // Rows of four bytes a pixel lie without gaps.
        var pixels = bitmap.GetPixelSpan();
        byte[]? cover = null;
        for (var i = 0; i + 4 <= pixels.Length; i += 4)
        {
            var white = 255 - pixels[i + 3];
            if (white == 0)
                continue;
            if (cover is null)
            {
                cover = new byte[pixels.Length / 4];
                cover.AsSpan().Fill(byte.MaxValue);
            }
            cover[i / 4] = pixels[i + 3];
            for (var k = 0; k < 3; k++)
                pixels[i + k] = (byte)Math.Min(255, pixels[i + k] + white);
            pixels[i + 3] = 255;
        }
        return cover;
    }
}

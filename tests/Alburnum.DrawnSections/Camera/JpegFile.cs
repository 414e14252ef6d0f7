using SkiaSharp;

namespace Alburnum.DrawnSections;

/// <summary>Writing a picture as a phone does: compressed, with a note of how the phone was held.</summary>
internal static class JpegFile
{
    /// <summary>Encodes an upright picture. Orientation 1 to 8 as in EXIF: the stored pixels are turned so that the note turns them back.</summary>
    public static byte[] Encode(SKBitmap upright, int quality, int orientation, bool fullColour)
    {
        using var stored = orientation == 1 ? null : Turned(upright, orientation);
        using var pixmap = (stored ?? upright).PeekPixels();
        var sampling = fullColour ? SKJpegEncoderDownsample.Downsample444 : SKJpegEncoderDownsample.Downsample420;
        using var data =
            pixmap.Encode(new SKJpegEncoderOptions(quality, sampling, SKJpegEncoderAlphaOption.Ignore))
            ?? throw new InvalidOperationException("The picture could not be encoded.");
        var jpeg = data.ToArray();
        return orientation == 1 ? jpeg : WithOrientation(jpeg, orientation);
    }

    /// <summary>The pixels to store so that a reader following the note sees the upright picture.</summary>
    private static SKBitmap Turned(SKBitmap upright, int orientation)
    {
        var width = upright.Width;
        var height = upright.Height;
        var swaps = orientation >= 5;
        var stored = new SKBitmap(
            swaps ? height : width,
            swaps ? width : height,
            upright.ColorType,
            SKAlphaType.Opaque
        );
        var from = System.Runtime.InteropServices.MemoryMarshal.Cast<byte, uint>(upright.GetPixelSpan());
        unsafe
        {
            var to = new Span<uint>((void*)stored.GetPixels(), stored.Width * stored.Height);
            for (var y = 0; y < height; y++)
            {
                for (var x = 0; x < width; x++)
                {
                    // Stored row and column of upright (x, y), by the meaning of each EXIF value.
                    var (u, v) = orientation switch
                    {
                        2 => (width - 1 - x, y),
                        3 => (width - 1 - x, height - 1 - y),
                        4 => (x, height - 1 - y),
                        5 => (y, x),
                        6 => (y, width - 1 - x),
                        7 => (height - 1 - y, width - 1 - x),
                        8 => (height - 1 - y, x),
                        _ => (x, y),
                    };
                    to[v * stored.Width + u] = from[y * width + x];
                }
            }
        }
        return stored;
    }

    private static byte[] WithOrientation(byte[] jpeg, int orientation)
    {
        // APP1, "Exif", a big-endian TIFF header and one directory of one entry: tag 0x0112, SHORT, count 1.
        byte[] note =
        [
            0xFF,
            0xE1,
            0x00,
            0x22,
            0x45,
            0x78,
            0x69,
            0x66,
            0x00,
            0x00,
            0x4D,
            0x4D,
            0x00,
            0x2A,
            0x00,
            0x00,
            0x00,
            0x08,
            0x00,
            0x01,
            0x01,
            0x12,
            0x00,
            0x03,
            0x00,
            0x00,
            0x00,
            0x01,
            0x00,
            (byte)orientation,
            0x00,
            0x00,
            0x00,
            0x00,
            0x00,
            0x00,
        ];
        return [.. jpeg[..2], .. note, .. jpeg[2..]];
    }
}

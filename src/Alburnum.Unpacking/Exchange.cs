using ImageMagick;

namespace Alburnum.Unpacking;

/// <summary>What passes between Alburnum and the process that unpacks one picture.</summary>
/// <remarks>
/// In: the length of the file (64 bits, low byte first). Out: <see cref="Ready"/>. In: the file. Out: 1 and width, height and orientation
/// (EXIF, 1 to 8; 32 bits each), or 0 where it is no such picture. In: <see cref="Unpack"/>. Out: 1, or 0 where the picture is damaged;
/// 1 where a cover follows, otherwise 0; four bytes a pixel, row by row; the cover, one byte a pixel.
/// </remarks>
public static class Exchange
{
    /// <summary>Said once the limits are in force.</summary>
    public const byte Ready = 0xA1;

    /// <summary>Asks for the pixels.</summary>
    public const byte Unpack = 0xB2;

    private const int RowsAtOnce = 64;

    internal static void Run(PictureKind kind, Stream from, Stream to)
    {
        using var input = new BinaryReader(from);
        using var output = new BinaryWriter(to);
        var file = new byte[input.ReadInt64()];
        // The library reads HEIC from a copy on disk only.
        Confinement.Enter(kind == PictureKind.Heic ? file.Length : 0);
        output.Write(Ready);
        output.Flush();
        from.ReadExactly(file);
        var settings = new MagickReadSettings
        {
            Format = kind == PictureKind.Tiff ? MagickFormat.Tiff : MagickFormat.Heic,
            FrameIndex = 0,
            FrameCount = 1,
        };
        if (Header(file, settings) is not { } header)
        {
            output.Write((byte)0);
            return;
        }
        output.Write((byte)1);
        output.Write((int)header.Width);
        output.Write((int)header.Height);
        // HEIC says how to turn itself in its own structure, which the library has followed; EXIF beside it only repeats that.
        output.Write(
            kind == PictureKind.Tiff && header.Orientation is >= Orientation.TopLeft and <= Orientation.LeftBottom
                ? (int)header.Orientation
                : 1
        );
        output.Flush();
        if (from.ReadByte() == Unpack)
            Write(file, settings, header, output);
    }

    private static MagickImageInfo? Header(byte[] file, MagickReadSettings settings)
    {
        try
        {
            var info = new MagickImageInfo();
            info.Read(file, settings);
            return info;
        }
        catch (MagickException)
        {
            return null;
        }
    }

    private static void Write(byte[] file, MagickReadSettings settings, MagickImageInfo header, BinaryWriter output)
    {
        using var image = Whole(file, settings);
        if (image is null || image.Width != header.Width || image.Height != header.Height)
        {
            output.Write((byte)0);
            return;
        }
        var cover = image.HasAlpha ? Cover(image) : null;
        if (image.HasAlpha)
        {
            image.BackgroundColor = MagickColors.White;
            image.Alpha(AlphaAction.Remove);
        }
        image.ColorSpace = ColorSpace.sRGB;
        output.Write((byte)1);
        output.Write(cover is null ? (byte)0 : (byte)1);
        using var pixels = image.GetPixelsUnsafe();
        for (var y = 0; y < image.Height; y += RowsAtOnce)
        {
            var rows = (uint)Math.Min(RowsAtOnce, image.Height - y);
            output.Write(pixels.ToByteArray(0, y, image.Width, rows, PixelMapping.RGBA)!);
        }
        if (cover is not null)
            output.Write(cover);
    }

    private static MagickImage? Whole(byte[] file, MagickReadSettings settings)
    {
        try
        {
            return new(file, settings);
        }
        catch (MagickException)
        {
            return null;
        }
    }

    private static byte[]? Cover(MagickImage image)
    {
        using var pixels = image.GetPixelsUnsafe();
        var cover = pixels.ToByteArray(0, 0, image.Width, image.Height, "A")!;
        return cover.AsSpan().ContainsAnyExcept(byte.MaxValue) ? cover : null;
    }
}

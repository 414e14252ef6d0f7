using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>A photograph's bytes, checked before anything large is allocated, and decoded at the size that the reading needs.</summary>
internal sealed class PhotographFile : IDisposable
{
    /// <summary>Most bytes accepted.</summary>
    public const long MostBytes = 200L * 1024 * 1024;

    /// <summary>Most pixels accepted: a 50-megapixel camera with room to spare.</summary>
    public const long MostPixels = 64_000_000;

    /// <summary>Fewest pixels along a side: less cannot show a section.</summary>
    public const int LeastSidePx = 64;

    private readonly SKData held;
    private readonly SKCodec picture;
    private readonly string name;

    private PhotographFile(string name, SKData data, SKCodec codec)
    {
        this.name = name;
        held = data;
        picture = codec;
    }

    /// <summary>Width as displayed upright.</summary>
    public int WidthPx => Turned ? picture.Info.Height : picture.Info.Width;

    /// <summary>Height as displayed upright.</summary>
    public int HeightPx => Turned ? picture.Info.Width : picture.Info.Height;

    private bool Turned => picture.EncodedOrigin >= SKEncodedOrigin.LeftTop;

    /// <summary>Opens a photograph by its content, whatever its name ends in.</summary>
    /// <exception cref="InputRefusedException">Empty, too large, not a picture of a known kind, or of impossible size.</exception>
    public static PhotographFile Open(string name, ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length == 0)
            throw Refused(name, "an empty file", "a photograph");
        if (bytes.Length > MostBytes)
            throw Refused(name, $"{bytes.Length / 1048576} MB", $"at most {MostBytes / 1048576} MB");
        var data = SKData.CreateCopy(bytes.Span);
        var codec = SKCodec.Create(data);
        if (codec is null)
        {
            data.Dispose();
            throw Refused(name, "something that is not a readable picture", "a JPEG, PNG or WebP photograph");
        }
        var file = new PhotographFile(name, data, codec);
        var (width, height) = (codec.Info.Width, codec.Info.Height);
        if ((long)width * height > MostPixels)
        {
            file.Dispose();
            throw Refused(name, $"{width} × {height} pixels", $"at most {MostPixels / 1_000_000} megapixels");
        }
        if (Math.Min(width, height) < LeastSidePx)
        {
            file.Dispose();
            throw Refused(name, $"{width} × {height} pixels", $"at least {LeastSidePx} pixels along each side");
        }
        return file;
    }

    /// <summary>Decodes at full size, or reduced where the file allows it cheaply.</summary>
    /// <param name="leastScale">The picture may be reduced, but not below this share of its size. Above 0, at most 1.</param>
    /// <exception cref="InputRefusedException">The picture breaks off or is damaged.</exception>
    public Photograph Decode(double leastScale)
    {
        var size = picture.Info.Size;
        if (picture.EncodedFormat == SKEncodedImageFormat.Jpeg && leastScale < 1)
        {
            for (var eighths = 2; eighths < 8; eighths++)
            {
                if (eighths / 8.0 < leastScale)
                    continue;
                size = picture.GetScaledDimensions(eighths / 8f);
                break;
            }
        }
        var info = new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        if (picture.Info.AlphaType != SKAlphaType.Opaque)
            info = info.WithAlphaType(SKAlphaType.Premul);
        var bitmap = new SKBitmap(info);
        var result = picture.GetPixels(info, bitmap.GetPixels());
        if (result != SKCodecResult.Success)
        {
            bitmap.Dispose();
            throw Refused(name, "a damaged or unfinished picture", "a whole photograph");
        }
        return new Photograph(bitmap, picture.EncodedOrigin, WidthPx, HeightPx);
    }

    public void Dispose()
    {
        picture.Dispose();
        held.Dispose();
    }

    private static InputRefusedException Refused(string name, string found, string expected) =>
        new(new InputProblem(name, 0, "", "", found, expected));
}

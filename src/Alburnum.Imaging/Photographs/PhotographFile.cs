using Alburnum.Facts;
using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>A photograph's bytes, checked before anything large is allocated, and decoded at the size that the reading needs.</summary>
internal sealed class PhotographFile : IDisposable
{
    /// <summary>Most pixels accepted: a 50-megapixel camera with room to spare.</summary>
    public const long MostPixels = 64_000_000;

    /// <summary>Fewest pixels along a side: less cannot show a section.</summary>
    public const int LeastSidePx = 64;

    /// <summary>What is accepted, for messages.</summary>
    public const string Expected = "a JPEG, PNG, WebP, TIFF or HEIC photograph";

    private readonly PackedPicture _picture;
    private readonly string _name;

    private PhotographFile(string name, PackedPicture picture) => (_name, _picture) = (name, picture);

    /// <summary>Width as displayed upright.</summary>
    public int WidthPx => Turned ? _picture.HeightPx : _picture.WidthPx;

    /// <summary>Height as displayed upright.</summary>
    public int HeightPx => Turned ? _picture.WidthPx : _picture.HeightPx;

    private bool Turned => _picture.Origin >= SKEncodedOrigin.LeftTop;

    /// <summary>Opens a photograph by its content, whatever its name ends in.</summary>
    /// <exception cref="InputRefusedException">Empty, too large, not a picture of a known kind, or of impossible size.</exception>
    public static PhotographFile Open(string name, ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length == 0)
            throw Refused(name, "an empty file", "a photograph");
        if (PhotographSize.IsBeyond(bytes.Length))
            throw Refused(name, PhotographSize.Found(bytes.Length), PhotographSize.Expected);
        var picture =
            (PackedPicture?)ConfinedPicture.Open(bytes)
            ?? SkiaPicture.Open(bytes.Span)
            ?? throw Refused(name, "something that is not a readable picture", Expected);
        var file = new PhotographFile(name, picture);
        var (width, height) = (picture.WidthPx, picture.HeightPx);
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
    public Photograph Decode(double leastScale) =>
        _picture.Unpack(leastScale) is { } unpacked
            ? new Photograph(unpacked, _picture.Origin, WidthPx, HeightPx)
            : throw Refused(_name, "a damaged or unfinished picture", "a whole photograph");

    public void Dispose() => _picture.Dispose();

    private static InputRefusedException Refused(string name, string found, string expected) =>
        new(new InputProblem(name, 0, "", "", found, expected));
}

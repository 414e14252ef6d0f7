using SkiaSharp;

namespace Alburnum.DrawnSections;

/// <summary>The middle of a photograph of real end grain, laid over the section as its colours.</summary>
public sealed class WoodPhoto
{
    private readonly Raster _pixels;
    private readonly double _pixelsPerMm;
    private readonly Point _origin;
    private readonly double _angle;

    private WoodPhoto(Raster pixels, double pixelsPerMm, Point origin, double angle)
    {
        _pixels = pixels;
        _pixelsPerMm = pixelsPerMm;
        _origin = origin;
        _angle = angle;
    }

    /// <summary>Reads a photograph; its log end is taken to fill the frame.</summary>
    /// <exception cref="InvalidDataException">The file is not a picture.</exception>
    public static Raster Load(string path)
    {
        using var bitmap = SKBitmap.Decode(path) ?? throw new InvalidDataException($"{path} is not a picture.");
        using var rgba = bitmap.Copy(SKColorType.Rgba8888);
        var bytes = rgba.GetPixelSpan();
        var raster = new Raster(rgba.Width, rgba.Height);
        for (var k = 0; k < raster.Values.Length; k++)
            raster.Values[k] = k % 4 == 3 ? 1 : Colour.Linear(bytes[k]);
        return raster;
    }

    /// <summary>Lays a photograph so that a disc of the section's reach comes from within the log end.</summary>
    /// <param name="pixels">The photograph.</param>
    /// <param name="reachMm">Radius about the section's centre that must be wood, mm.</param>
    /// <param name="logShare">Share of the frame's half side that is surely wood.</param>
    /// <param name="random">Chooses place, turn and scale.</param>
    public static WoodPhoto Lay(Raster pixels, double reachMm, double logShare, Random random)
    {
        var half = Math.Min(pixels.Width, pixels.Height) / 2.0 * logShare;
        // A small log fills the section, a big one leaves room to choose the place.
        var scale = half / (reachMm * (1 + 0.7 * random.NextDouble()));
        var slack = Math.Max(0, half - reachMm * scale);
        var shift = Point.Towards(random.NextDouble() * 2 * Math.PI) * (slack * Math.Sqrt(random.NextDouble()));
        return new(
            pixels,
            scale,
            new Point(pixels.Width / 2.0, pixels.Height / 2.0) + shift,
            random.NextDouble() * 2 * Math.PI
        );
    }

    /// <summary>The tree's pith in section coordinates, taking it at the photograph's middle.</summary>
    public Point PithMm
    {
        get
        {
            var d = new Point(_pixels.Width / 2.0, _pixels.Height / 2.0) - _origin;
            var (sin, cos) = Math.SinCos(-_angle);
            return new Point(d.X * cos - d.Y * sin, d.X * sin + d.Y * cos) * (1 / _pixelsPerMm);
        }
    }

    public Colour At(double x, double y)
    {
        var (sin, cos) = Math.SinCos(_angle);
        return _pixels
            .At(_origin.X + _pixelsPerMm * (x * cos - y * sin), _origin.Y + _pixelsPerMm * (x * sin + y * cos))
            .Colour;
    }
}

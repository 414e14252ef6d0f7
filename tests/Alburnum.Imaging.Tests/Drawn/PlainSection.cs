using SkiaSharp;

namespace Alburnum.Imaging.Tests.Drawn;

/// <summary>A plain drawing of a sprayed section whose depth is known, for tests of single steps.</summary>
internal sealed record PlainSection
{
    public double WidthMm { get; init; } = 100;

    public double HeightMm { get; init; } = 75;

    public bool Round { get; init; }

    public double PxPerMm { get; init; } = 8;

    public double TurnDegrees { get; init; } = 4;

    public int Treated { get; init; } = 0x2B3F8C;

    public int Untreated { get; init; } = 0xC9583A;

    /// <summary>Depth at a distance along the whole perimeter, mm.</summary>
    public Func<double, double> DepthMm { get; init; } = _ => 9;

    public SKEncodedImageFormat Format { get; init; } = SKEncodedImageFormat.Jpeg;

    public int MarginPx { get; init; } = 150;

    public int WidthPx => (int)(WidthMm * PxPerMm * 1.1) + (2 * MarginPx);

    public int HeightPx => (int)((Round ? WidthMm : HeightMm) * PxPerMm * 1.15) + (2 * MarginPx);

    /// <summary>Corners (or sixteen rim points), clockwise.</summary>
    public IReadOnlyList<PointPx> Outline =>
        Round
            ?
            [
                .. Enumerable
                    .Range(0, 16)
                    .Select(i => Math.SinCos(i * Math.PI / 8))
                    .Select(a => Place(WidthMm / 2 * (1 + a.Cos), WidthMm / 2 * (1 + a.Sin))),
            ]
            : [Place(0, 0), Place(WidthMm, 0), Place(WidthMm, HeightMm), Place(0, HeightMm)];

    public byte[] Draw()
    {
        using var bitmap = new SKBitmap(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        var pixels = bitmap.GetPixelSpan();
        var random = new Random(5);
        for (var y = 0; y < HeightPx; y++)
        {
            for (var x = 0; x < WidthPx; x++)
            {
                // Four samples a pixel make soft edges.
                double r = 0,
                    g = 0,
                    b = 0;
                for (var k = 0; k < 4; k++)
                {
                    var c = At(x + 0.25 + (0.5 * (k & 1)), y + 0.25 + (0.5 * (k >> 1)));
                    (r, g, b) = (r + (c >> 16), g + ((c >> 8) & 255), b + (c & 255));
                }
                var noise = (random.NextDouble() - 0.5) * 14;
                var o = (y * bitmap.RowBytes) + (4 * x);
                pixels[o] = (byte)Math.Clamp((r / 4) + noise, 0, 255);
                pixels[o + 1] = (byte)Math.Clamp((g / 4) + noise, 0, 255);
                pixels[o + 2] = (byte)Math.Clamp((b / 4) + noise, 0, 255);
                pixels[o + 3] = 255;
            }
        }
        using var data = bitmap.Encode(Format, 92);
        return data.ToArray();
    }

    private int At(double px, double py)
    {
        var (sin, cos) = Math.SinCos(TurnDegrees * Math.PI / 180);
        var (dx, dy) = ((px - (WidthPx / 2.0)) / PxPerMm, (py - (HeightPx / 2.0)) / PxPerMm);
        var height = Round ? WidthMm : HeightMm;
        var (x, y) = ((dx * cos) + (dy * sin) + (WidthMm / 2), (dy * cos) - (dx * sin) + (height / 2));
        if (Round)
        {
            var (u, v) = (x - (WidthMm / 2), y - (WidthMm / 2));
            var t = (WidthMm / 2) - double.Hypot(u, v);
            return t < 0 ? 0xF0F0EE
                : t < DepthMm(Math.Atan2(v, u) * WidthMm / 2) ? Treated
                : Untreated;
        }
        if (x < 0 || y < 0 || x > WidthMm || y > HeightMm)
            return 0xF0F0EE;
        var treated =
            y < DepthMm(x)
            || WidthMm - x < DepthMm(WidthMm + y)
            || HeightMm - y < DepthMm((2 * WidthMm) + HeightMm - x)
            || x < DepthMm((2 * WidthMm) + (2 * HeightMm) - y);
        return treated ? Treated : Untreated;
    }

    private PointPx Place(double x, double y)
    {
        var height = Round ? WidthMm : HeightMm;
        var (sin, cos) = Math.SinCos(TurnDegrees * Math.PI / 180);
        var (dx, dy) = ((x - (WidthMm / 2)) * PxPerMm, (y - (height / 2)) * PxPerMm);
        return new((WidthPx / 2.0) + (dx * cos) - (dy * sin), (HeightPx / 2.0) + (dx * sin) + (dy * cos));
    }
}

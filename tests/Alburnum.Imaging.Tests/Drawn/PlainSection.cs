using Alburnum.Imaging.Geometry;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Drawn;

/// <summary>The outline of a plain drawing.</summary>
internal enum DrawnOutline
{
    /// <summary>A rectangle of width by height.</summary>
    Sawn,

    /// <summary>A disc of the width.</summary>
    Round,

    /// <summary>The lower half of a disc of the width, flat side up.</summary>
    Half,

    /// <summary>A quarter of a disc of the width, square corner at the top left.</summary>
    Quarter,

    /// <summary>An increment core, width by length, treated from its top end only.</summary>
    Core,
}

/// <summary>A plain drawing of a sprayed section whose depth is known, for tests of single steps.</summary>
internal sealed record PlainSection
{
    /// <summary>Width or full diameter, mm.</summary>
    public double WidthMm { get; init; } = 100;

    /// <summary>Height of a sawn section or length of a core, mm.</summary>
    public double HeightMm { get; init; } = 75;

    public DrawnOutline Kind { get; init; }

    public double PxPerMm { get; init; } = 8;

    public double TurnDegrees { get; init; } = 4;

    public int Treated { get; init; } = 0x2B3F8C;

    public int Untreated { get; init; } = 0xC9583A;

    public int Background { get; init; } = 0xF0F0EE;

    /// <summary>Depth at a distance along the whole perimeter (sawn) or by clockwise angle times radius (round), mm.</summary>
    public Func<double, double> DepthMm { get; init; } = _ => 9;

    /// <summary>Something drawn over the section, by place in mm; null leaves it as it is.</summary>
    public Func<double, double, int?> Over { get; init; } = (_, _) => null;

    /// <summary>Bow of straight lines by the lens: a point at a share r of the half diagonal is drawn at r·(1 + bow·r²).</summary>
    public double LensBow { get; init; }

    /// <summary>Standard deviation of a blur over the whole picture, px.</summary>
    public float BlurPx { get; init; }

    public SKEncodedImageFormat Format { get; init; } = SKEncodedImageFormat.Jpeg;

    public int MarginPx { get; init; } = 150;

    /// <summary>Size of the box around the section, mm.</summary>
    private (double W, double H) Box =>
        Kind switch
        {
            DrawnOutline.Round => (WidthMm, WidthMm),
            DrawnOutline.Half => (WidthMm, WidthMm / 2),
            DrawnOutline.Quarter => (WidthMm / 2, WidthMm / 2),
            _ => (WidthMm, HeightMm),
        };

    public int WidthPx => (int)(Box.W * PxPerMm * 1.1) + (2 * MarginPx);

    public int HeightPx => (int)(Box.H * PxPerMm * 1.15) + (2 * MarginPx);

    /// <summary>Corners, sixteen rim points, or the three points of half and quarter, clockwise.</summary>
    public IReadOnlyList<PointPx> Outline
    {
        get
        {
            var (w, h) = Box;
            return Kind switch
            {
                DrawnOutline.Round =>
                [
                    .. Enumerable
                        .Range(0, 16)
                        .Select(i => Math.SinCos(i * Math.PI / 8))
                        .Select(a => Place(w / 2 * (1 + a.Cos), w / 2 * (1 + a.Sin))),
                ],
                DrawnOutline.Half => [Place(0, 0), Place(w, 0), Place(w / 2, h)],
                DrawnOutline.Quarter => [Place(0, h), Place(0, 0), Place(w, 0)],
                _ => [Place(0, 0), Place(w, 0), Place(w, h), Place(0, h)],
            };
        }
    }

    /// <summary>Where a place on the section, in mm from the box's top left, lies in the picture.</summary>
    public PointPx Place(double x, double y)
    {
        var (sin, cos) = Math.SinCos(TurnDegrees * Math.PI / 180);
        var (dx, dy) = ((x - (Box.W / 2)) * PxPerMm, (y - (Box.H / 2)) * PxPerMm);
        var (px, py) = ((dx * cos) - (dy * sin), (dx * sin) + (dy * cos));
        var r2 = ((px * px) + (py * py)) / HalfDiagonal2;
        return new((WidthPx / 2.0) + (px * (1 + (LensBow * r2))), (HeightPx / 2.0) + (py * (1 + (LensBow * r2))));
    }

    public byte[] Draw()
    {
        using var bitmap = Bitmap();
        using var data = bitmap.Encode(Format, 92);
        return data.ToArray();
    }

    public SKBitmap Bitmap()
    {
        var bitmap = new SKBitmap(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
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
        if (BlurPx > 0)
        {
            using var sharp = SKImage.FromBitmap(bitmap);
            using var canvas = new SKCanvas(bitmap);
            using var blur = SKImageFilter.CreateBlur(BlurPx, BlurPx);
            using var paint = new SKPaint { ImageFilter = blur };
            canvas.DrawImage(sharp, 0, 0, new SKSamplingOptions(SKFilterMode.Nearest), paint);
        }
        return bitmap;
    }

    private double HalfDiagonal2 => (((double)WidthPx * WidthPx) + ((double)HeightPx * HeightPx)) / 4;

    private int At(double px, double py)
    {
        var (sin, cos) = Math.SinCos(TurnDegrees * Math.PI / 180);
        var (bentX, bentY) = (px - (WidthPx / 2.0), py - (HeightPx / 2.0));
        var (ux, uy) = (bentX, bentY);
        for (var k = 0; k < 6 && LensBow != 0; k++)
        {
            var r2 = ((ux * ux) + (uy * uy)) / HalfDiagonal2;
            (ux, uy) = (bentX / (1 + (LensBow * r2)), bentY / (1 + (LensBow * r2)));
        }
        var (dx, dy) = (ux / PxPerMm, uy / PxPerMm);
        var (x, y) = ((dx * cos) + (dy * sin) + (Box.W / 2), (dy * cos) - (dx * sin) + (Box.H / 2));
        return IsTreated(x, y) is { } treated ? Over(x, y) ?? (treated ? Treated : Untreated) : Background;
    }

    // Null outside the wood.
    private bool? IsTreated(double x, double y)
    {
        var (w, h, r) = (Box.W, Box.H, WidthMm / 2);
        double Arc(double u, double v) => r - double.Hypot(u, v);
        switch (Kind)
        {
            case DrawnOutline.Round:
                var (u, v) = (x - r, y - r);
                return Arc(u, v) < 0 ? null : Arc(u, v) < DepthMm(Math.Atan2(v, u) * r);
            case DrawnOutline.Half:
                return y < 0 || Arc(x - r, y) < 0 ? null : Math.Min(y, Arc(x - r, y)) < DepthMm(x);
            case DrawnOutline.Quarter:
                return x < 0 || y < 0 || Arc(x, y) < 0 ? null : Math.Min(Math.Min(x, y), Arc(x, y)) < DepthMm(x);
            case DrawnOutline.Core:
                return x < 0 || y < 0 || x > w || y > h ? null : y < DepthMm(x);
            default:
                if (x < 0 || y < 0 || x > w || y > h)
                    return null;
                return y < DepthMm(x)
                    || w - x < DepthMm(w + y)
                    || h - y < DepthMm((2 * w) + h - x)
                    || x < DepthMm((2 * w) + (2 * h) - y);
        }
    }
}

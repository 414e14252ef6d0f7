using SkiaSharp;

namespace Alburnum.DrawnSections;

/// <summary>What the piece lies on.</summary>
public enum Ground
{
    WhiteCard,
    GreyCard,
    BenchBoard,
    DarkCloth,
    Concrete,
    Gravel,
    Grass,
    Sawdust,
}

/// <summary>The ground under the piece, drawn once over the stretch that the camera can see.</summary>
public sealed class Background
{
    private const double TexelsPerMm = 3;
    private readonly Raster _texels;
    private readonly double _reachMm;
    private readonly double _scale;

    /// <summary>Draws the ground out to <paramref name="reachMm"/> from the middle.</summary>
    public Background(Ground ground, double reachMm, int seed)
    {
        _reachMm = reachMm;
        _scale = Math.Min(TexelsPerMm, 1100 / (2 * reachMm));
        var size = Math.Max(8, (int)(2 * reachMm * _scale));
        _texels = new Raster(size, size);
        if (ground == Ground.Grass)
            DrawGrass(seed);
        else
            Fill(ground, seed);
    }

    public Colour At(double x, double y) => _texels.At((x + _reachMm) * _scale, (y + _reachMm) * _scale).Colour;

    private void Fill(Ground ground, int seed) =>
        Parallel.For(
            0,
            _texels.Height,
            y =>
            {
                var row = _texels.Row(y);
                for (var x = 0; x < _texels.Width; x++)
                {
                    var colour = ColourAt(ground, (x + 0.5) / _scale - _reachMm, (y + 0.5) / _scale - _reachMm, seed);
                    row[4 * x] = colour.Red;
                    row[4 * x + 1] = colour.Green;
                    row[4 * x + 2] = colour.Blue;
                }
            }
        );

    private static Colour ColourAt(Ground ground, double x, double y, int seed) =>
        ground switch
        {
            Ground.WhiteCard => Colour.Of("#E9E7E1")
                * (1 + 0.015f * Noise.Fractal(x / 40, y / 40, 2, seed) + 0.012f * Noise.At(x * 1.4, y * 1.4, seed + 1)),
            Ground.GreyCard => Colour.Of("#8E8F8C")
                * (1 + 0.03f * Noise.Fractal(x / 50, y / 50, 2, seed) + 0.02f * Noise.At(x * 1.4, y * 1.4, seed + 1)),
            Ground.DarkCloth => Colour.Of("#30333A")
                * (
                    1
                    + 0.18f * Noise.Fractal(x / 45, y / 45, 3, seed)
                    + 0.20f * (float)(Math.Sin(x * 4.2) * Math.Sin(y * 4.2))
                    + 0.12f * Noise.At(x * 1.5, y * 1.5, seed + 1)
                ),
            Ground.BenchBoard => Board(x, y, seed),
            Ground.Concrete => Concrete(x, y, seed),
            Ground.Gravel => Gravel(x, y, seed),
            Ground.Sawdust => Sawdust(x, y, seed),
            _ => Colour.White,
        };

    private static Colour Board(double x, double y, int seed)
    {
        // Boards 95 mm wide with a dark gap, grain running along x.
        var offset = 37 * Noise.Even(0, 0, seed);
        var plank = (int)Math.Floor((y + offset) / 95);
        var within = (y + offset) / 95 - plank;
        var tone = 0.8f + 0.3f * Noise.Even(plank, 1, seed);
        var wave = y + 3 * Noise.At(x / 90, y / 30, seed + 2);
        var grain = Noise.At(x / 55, wave * 0.45, seed + 3 + plank) + 0.6f * Noise.At(x / 25, wave * 1.4, seed + 4);
        var colour = Colour.Of("#AD9070").Towards(Colour.Of("#8B6F52"), 0.5f + 0.5f * Math.Clamp(grain, -1, 1));
        colour = colour.Towards(
            Colour.Of("#7C7468"),
            0.35f * Smooth.Step(-0.2, 0.7, Noise.Fractal(x / 60, y / 25, 3, seed + 5))
        );
        var scratch = Smooth.Step(0.9, 0.97, Noise.At((x + 0.7 * y) / 50, (y - 0.7 * x) * 0.9, seed + 6));
        colour *= tone * (1 + 0.05f * Noise.At(x * 1.3, y * 1.3, seed + 7)) * (1 - 0.25f * scratch);
        var gap = Math.Min(within, 1 - within) * 95;
        return colour * (0.12f + 0.88f * Smooth.Step(0.3, 1.4, gap));
    }

    private static Colour Concrete(double x, double y, int seed)
    {
        var tone = 1 + 0.16f * Noise.Fractal(x / 60, y / 60, 4, seed) + 0.10f * Noise.At(x * 1.2, y * 1.2, seed + 1);
        var pit = Smooth.Step(0.72, 0.86, Noise.At(x / 2.2, y / 2.2, seed + 2));
        return Colour.Of("#9B988F") * tone * (1 - 0.5f * pit);
    }

    private static Colour Gravel(double x, double y, int seed)
    {
        // The nearest two of a scatter of stones: their distance gives the joints, a hash the colour.
        const double Size = 10;
        var u = x / Size + 0.22 * Noise.At(x / 5, y / 5, seed + 5);
        var v = y / Size + 0.22 * Noise.At(x / 5, y / 5, seed + 6);
        var cellX = (int)Math.Floor(u);
        var cellY = (int)Math.Floor(v);
        double nearest = 9;
        double second = 9;
        var key = 0;
        Point towards = default;
        for (var j = -1; j <= 1; j++)
        {
            for (var i = -1; i <= 1; i++)
            {
                var px = cellX + i + 0.1 + 0.8 * Noise.Even(cellX + i, cellY + j, seed);
                var py = cellY + j + 0.1 + 0.8 * Noise.Even(cellX + i, cellY + j, seed + 1);
                var distance = Math.Sqrt((px - u) * (px - u) + (py - v) * (py - v));
                if (distance < nearest)
                {
                    second = nearest;
                    nearest = distance;
                    key = (cellX + i) * 7919 + cellY + j;
                    towards = new(u - px, v - py);
                }
                else if (distance < second)
                {
                    second = distance;
                }
            }
        }
        var joint = Smooth.Step(0.02, 0.22, second - nearest) * (1 - 0.8f * Smooth.Step(0.45, 0.75, nearest));
        var tone = 0.55f + 0.75f * Noise.Even(key, 3, seed);
        var tint = Colour.Of("#8F8B85").Towards(Colour.Of("#A48F76"), Noise.Even(key, 4, seed));
        var shade = 1 - 0.55f * (float)(towards.X * 0.7 + towards.Y * 0.7);
        var grain = 1 + 0.16f * Noise.At(x * 1.3, y * 1.3, seed + 2);
        return tint * (tone * Math.Max(0.2f, shade) * grain * (0.10f + 0.90f * joint));
    }

    private static Colour Sawdust(double x, double y, int seed)
    {
        var heap = Noise.Fractal(x / 35, y / 35, 3, seed);
        var flake = Noise.At(x / 1.3, y / 1.3, seed + 1) + 0.7f * Noise.At(x * 1.4, y * 1.4, seed + 2);
        var chip = Smooth.Step(0.55, 0.75, Noise.At(x / 7 + 0.4 * heap, y / 2.6, seed + 3));
        return Colour.Of("#C4A988").Towards(Colour.Of("#DFD0B4"), 0.6f * chip) * (0.85f + 0.22f * heap + 0.20f * flake);
    }

    private void DrawGrass(int seed)
    {
        var random = new Random(seed);
        using var bitmap = new SKBitmap(_texels.Width, _texels.Height, SKColorType.Rgba8888, SKAlphaType.Premul);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(38, 36, 22));
        var area = 4 * _reachMm * _reachMm;
        var blades = (int)Math.Min(26000, area / 9);
        for (var k = 0; k < blades; k++)
        {
            var height = k / (double)blades;
            var x = random.NextDouble() * _texels.Width;
            var y = random.NextDouble() * _texels.Height;
            var angle = random.NextDouble() * 2 * Math.PI;
            var length = (14 + 34 * random.NextDouble()) * _scale;
            var bend = angle + 1.2 * (random.NextDouble() - 0.5);
            var light = 0.35 + 0.65 * height * (0.6 + 0.4 * random.NextDouble());
            var dry = random.NextDouble() < 0.16;
            var red = dry ? 170 : 84 + 40 * random.NextDouble();
            var green = dry ? 156 : 112 + 34 * random.NextDouble();
            var blue = dry ? 104 : 58 + 26 * random.NextDouble();
            using var paint = new SKPaint
            {
                Color = new SKColor((byte)(red * light), (byte)(green * light), (byte)(blue * light)),
                IsAntialias = true,
                Style = SKPaintStyle.Stroke,
                StrokeCap = SKStrokeCap.Round,
                StrokeWidth = (float)((0.9 + 1.5 * random.NextDouble()) * _scale),
            };
            using var path = new SKPathBuilder();
            path.MoveTo((float)x, (float)y);
            path.QuadTo(
                (float)(x + length / 2 * Math.Cos(angle)),
                (float)(y + length / 2 * Math.Sin(angle)),
                (float)(x + length * Math.Cos(bend)),
                (float)(y + length * Math.Sin(bend))
            );
            using var blade = path.Detach();
            canvas.DrawPath(blade, paint);
        }
        var bytes = bitmap.GetPixelSpan();
        for (var k = 0; k < _texels.Values.Length; k++)
            _texels.Values[k] = Colour.Linear(bytes[k]);
    }
}

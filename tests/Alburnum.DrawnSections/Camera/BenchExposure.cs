namespace Alburnum.DrawnSections;

/// <summary>One look of the camera at a bench with several pieces on it.</summary>
internal sealed class BenchExposure
{
    private const double NearOutlinePx = 2.0;
    private readonly BenchScene _bench;
    private readonly IReadOnlyList<(LaidPiece Laid, Exposure Alone)> _pieces;
    private readonly Background _ground;
    private readonly (Space Eye, Space Right, Space Down, Space Forward) _pose;

    public BenchExposure(BenchScene bench)
    {
        _bench = bench;
        _pose = bench.Lens.Pose();
        _pieces = [.. bench.Pieces.Select(laid => (laid, Exposure.Of(laid.Scene)))];
        var lens = bench.Lens;
        var reachMm = 0.7 * Math.Sqrt(((double)lens.WidthPx * lens.WidthPx) + ((double)lens.HeightPx * lens.HeightPx));
        _ground = new(bench.Ground, (reachMm / lens.PixelsPerMm) + 60, bench.Seed + 301);
    }

    /// <summary>Linear light on the sensor: red, green, blue.</summary>
    public Plane[] Take()
    {
        var (width, height) = (_bench.Lens.WidthPx, _bench.Lens.HeightPx);
        Plane[] planes = [new(width, height), new(width, height), new(width, height)];
        Parallel.For(
            0,
            height,
            y =>
            {
                for (var x = 0; x < width; x++)
                {
                    var colour = Seen(x + 0.5, y + 0.5, out var fromOutlineMm);
                    if (fromOutlineMm * _bench.Lens.PixelsPerMm < NearOutlinePx)
                        colour = Averaged(x, y);
                    planes[0].Row(y)[x] = colour.Red;
                    planes[1].Row(y)[x] = colour.Green;
                    planes[2].Row(y)[x] = colour.Blue;
                }
            }
        );
        return planes;
    }

    private Colour Averaged(int x, int y)
    {
        const int Across = 4;
        Colour sum = default;
        for (var j = 0; j < Across; j++)
        for (var i = 0; i < Across; i++)
            sum += Seen(x + ((i + 0.5) / Across), y + ((j + 0.5) / Across), out _);
        return sum * (1f / (Across * Across));
    }

    private Colour Seen(double px, double py, out double fromOutlineMm)
    {
        var ray = _bench.Lens.Ray(px, py, _pose.Right, _pose.Down, _pose.Forward);
        var onFace = OnPlane(ray, 0);
        var near = new List<Exposure>();
        var (face, side) = ((Colour?)null, (Colour?)null);
        fromOutlineMm = double.MaxValue;
        foreach (var (laid, alone) in _pieces)
        {
            // Beyond this a piece is neither seen nor in the way of the light.
            var half = laid.Scene.Shape.HalfExtent;
            if ((onFace - laid.Centre).Length > half.Length + (5 * laid.Scene.ThicknessMm))
                continue;
            near.Add(alone);
            var wood = alone.Wood(px, py, out var inside);
            fromOutlineMm = Math.Min(fromOutlineMm, Math.Abs(inside));
            if (inside > 0)
                face ??= wood;
            else
                side ??= wood;
        }
        var light = 1 + (float)(_bench.Light.Falloff * Point.Dot(onFace, _bench.Light.Towards) / 100);
        return (face ?? side ?? Ground(ray, px, py, near)) * light;
    }

    private Colour Ground(Space ray, double px, double py, List<Exposure> near)
    {
        var at = OnPlane(ray, _bench.Pieces[0].Scene.ThicknessMm);
        var (open, dim) = (1f, 1f);
        foreach (var alone in near)
        {
            var (own, beside) = alone.Shade(px, py);
            (open, dim) = (Math.Min(open, own), dim * beside);
        }
        return _ground.At(at.X, at.Y) * (_bench.Light with { Falloff = 0 }).On(at.X, at.Y, open) * dim;
    }

    private Point OnPlane(Space ray, double z)
    {
        var at = _pose.Eye + (ray * ((z - _pose.Eye.Z) / ray.Z));
        return new(at.X, at.Y);
    }
}

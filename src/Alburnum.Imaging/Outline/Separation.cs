using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>How well a placing separates a picture's colours into those of the section and those around it.</summary>
internal sealed class Separation
{
    /// <summary>The picture's border is background: its pixels count for more. It is one in so many of the shorter side wide. Our own choice.</summary>
    private const int BorderWeight = 3;

    private const int BorderPart = 20;

    /// <summary>No share of a colour inside is taken to be nearer to 0 or 1 than this: no colour is proof. Our own choice.</summary>
    private const double LeastShare = 0.01;

    private readonly int _w;
    private readonly int _h;
    private readonly GroupSums _rows;
    private readonly double[] _total = new double[Palette.Groups];
    private readonly double[] _likeTotal = new double[Palette.Groups];
    private readonly double _all;
    private readonly float[] _likeness;

    /// <summary>Looks at every pixel of the palette, or at every so many-th in each direction.</summary>
    public Separation(Palette palette, float[] likeness, int every)
    {
        Every = every;
        _likeness = likeness;
        (_w, _h) = (palette.Width / every, palette.Height / every);
        var group = new byte[_w * _h];
        var weight = new byte[_w * _h];
        var frame = Math.Max(1, Math.Min(_w, _h) / BorderPart);
        for (var y = 0; y < _h; y++)
        {
            for (var x = 0; x < _w; x++)
            {
                var i = (y * _w) + x;
                group[i] = palette.Group[(((y * every) + (every / 2)) * palette.Width) + (x * every) + (every / 2)];
                var border = x < frame || y < frame || x >= _w - frame || y >= _h - frame;
                weight[i] = (byte)(border ? BorderWeight : 1);
                _total[group[i]] += weight[i];
                _all += weight[i];
            }
        }
        _rows = new(group, weight, _w, _h);
        for (var k = 0; k < Palette.Groups; k++)
        for (var j = 0; j < Palette.Groups; j++)
            _likeTotal[k] += likeness[(Palette.Groups * k) + j] * _total[j];
    }

    public int Every { get; }

    public int Width => _w;

    public int Height => _h;

    /// <summary>
    /// What a pixel's colour says of whether it lies inside, on the mean, in nats: the mutual information (Shannon, 1948).
    /// </summary>
    /// <param name="outline">A convex outline in this picture's pixels.</param>
    public double Of(ReadOnlySpan<PointPx> outline)
    {
        Span<float> inside = stackalloc float[Palette.Groups];
        var area = Count(outline, inside);
        if (area <= 0 || area >= _all)
            return 0;
        // What is known of each group is shared by those like it. Most groups have nothing inside.
        Span<float> shared = stackalloc float[Palette.Groups];
        shared.Clear();
        for (var j = 0; j < Palette.Groups; j++)
        {
            if (inside[j] == 0)
                continue;
            GroupSums.Add(shared, _likeness.AsSpan(Palette.Groups * j, Palette.Groups), inside[j]);
        }
        var information = Entropy(area / _all);
        for (var k = 0; k < Palette.Groups; k++)
        {
            if (_total[k] == 0)
                continue;
            var within = Math.Clamp((int)(Levels * shared[k] / _likeTotal[k]), 0, Levels - 1);
            information +=
                ((inside[k] * LogLevel[within]) + ((_total[k] - inside[k]) * LogLevel[Levels - 1 - within])) / _all;
        }
        return information;
    }

    /// <summary>Steps of a share for which its logarithm is kept: finer than a hundredth of the least share.</summary>
    private const int Levels = 1000;

    private static readonly double[] LogLevel =
    [
        .. Enumerable
            .Range(0, Levels)
            .Select(i => Math.Log(Math.Clamp((i + 0.5) / Levels, LeastShare, 1 - LeastShare))),
    ];

    /// <summary>How likely a pixel of each group belongs to the section, 0 to 1, as learnt from an outline.</summary>
    public float[] Belonging(ReadOnlySpan<PointPx> outline)
    {
        Span<float> inside = stackalloc float[Palette.Groups];
        var area = Count(outline, inside);
        var belonging = new float[Palette.Groups];
        for (var k = 0; k < Palette.Groups; k++)
        {
            double i = 0,
                o = 0;
            for (var j = 0; j < Palette.Groups; j++)
            {
                i += _likeness[(Palette.Groups * k) + j] * inside[j];
                o += _likeness[(Palette.Groups * k) + j] * (_total[j] - inside[j]);
            }
            // By densities, so that a small section's colours count as much as a large background's.
            // One pixel of each group is added (Laplace's rule), so that no colour is impossible.
            var within = (i + 1) / (area + Palette.Groups);
            var without = (o + 1) / (_all - area + Palette.Groups);
            belonging[k] = (float)(within / (within + without));
        }
        return belonging;
    }

    private double Count(ReadOnlySpan<PointPx> outline, Span<float> inside)
    {
        inside.Clear();
        var (highest, lowest) = (double.MaxValue, double.MinValue);
        foreach (var p in outline)
            (highest, lowest) = (Math.Min(highest, p.Y), Math.Max(lowest, p.Y));
        var top = Math.Max(0, (int)Math.Ceiling(highest - 0.5));
        var bottom = Math.Min(_h - 1, (int)Math.Floor(lowest - 0.5));
        for (var y = top; y <= bottom; y++)
        {
            var (from, to) = Row(outline, y + 0.5);
            var first = Math.Max(0, (int)Math.Ceiling(from - 0.5));
            var last = Math.Min(_w - 1, (int)Math.Floor(to - 0.5));
            if (first <= last)
                _rows.Count(y, first, last + 1, inside);
        }
        double area = 0;
        foreach (var n in inside)
            area += n;
        return area;
    }

    // Where a convex outline's row begins and ends.
    private static (double From, double To) Row(ReadOnlySpan<PointPx> points, double y)
    {
        var (from, to) = (double.MaxValue, double.MinValue);
        for (var k = 0; k < points.Length; k++)
        {
            var (p, q) = (points[k], points[k + 1 == points.Length ? 0 : k + 1]);
            if (p.Y <= y == q.Y <= y)
                continue;
            var x = p.X + ((y - p.Y) / (q.Y - p.Y) * (q.X - p.X));
            (from, to) = (Math.Min(from, x), Math.Max(to, x));
        }
        return (from, to);
    }

    private static double Entropy(double p) => p is <= 0 or >= 1 ? 0 : -(p * Math.Log(p)) - ((1 - p) * Math.Log(1 - p));
}

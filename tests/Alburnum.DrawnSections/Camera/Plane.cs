using System.Numerics;

namespace Alburnum.DrawnSections;

/// <summary>One channel of a picture.</summary>
internal sealed class Plane(int width, int height)
{
    public int Width { get; } = width;

    public int Height { get; } = height;

    public float[] Values { get; } = new float[width * height];

    public Span<float> Row(int y) => Values.AsSpan(Math.Clamp(y, 0, Height - 1) * Width, Width);

    /// <summary>This channel spread by a Gaussian.</summary>
    public Plane Blurred(double deviationPx)
    {
        var reach = (int)Math.Ceiling(3 * deviationPx);
        var weights = new float[2 * reach + 1];
        for (var k = -reach; k <= reach; k++)
            weights[k + reach] = (float)Math.Exp(-k * k / (2 * deviationPx * deviationPx));
        var sum = weights.Sum();
        for (var k = 0; k < weights.Length; k++)
            weights[k] /= sum;
        var across = new Plane(Width, Height);
        Parallel.For(
            0,
            Height,
            y =>
            {
                var padded = new float[Width + 2 * reach];
                Row(y).CopyTo(padded.AsSpan(reach));
                padded.AsSpan(0, reach).Fill(padded[reach]);
                padded.AsSpan(reach + Width).Fill(padded[reach + Width - 1]);
                for (var k = 0; k < weights.Length; k++)
                    Add(across.Row(y), padded.AsSpan(k, Width), weights[k]);
            }
        );
        var both = new Plane(Width, Height);
        Parallel.For(
            0,
            Height,
            y =>
            {
                for (var k = -reach; k <= reach; k++)
                    Add(both.Row(y), across.Row(y + k), weights[k + reach]);
            }
        );
        return both;
    }

    /// <summary>This channel smeared along a line.</summary>
    public Plane Smeared(double lengthPx, double angle)
    {
        var steps = Math.Max(2, (int)Math.Ceiling(lengthPx) + 1);
        var smeared = new Plane(Width, Height);
        Parallel.For(
            0,
            Height,
            y =>
            {
                var row = smeared.Row(y);
                for (var step = 0; step < steps; step++)
                {
                    var t = (step / (steps - 1.0) - 0.5) * lengthPx;
                    var dx = t * Math.Cos(angle);
                    var dy = t * Math.Sin(angle);
                    var top = (int)Math.Floor(dy);
                    var low = (float)(dy - top);
                    var shift = (int)Math.Floor(dx);
                    var part = (float)(dx - shift);
                    var a = Row(y + top);
                    var b = Row(y + top + 1);
                    for (var x = 0; x < row.Length; x++)
                    {
                        var x0 = Math.Clamp(x + shift, 0, Width - 1);
                        var x1 = Math.Clamp(x + shift + 1, 0, Width - 1);
                        var upper = a[x0] + part * (a[x1] - a[x0]);
                        var lower = b[x0] + part * (b[x1] - b[x0]);
                        row[x] += (upper + low * (lower - upper)) / steps;
                    }
                }
            }
        );
        return smeared;
    }

    private static void Add(Span<float> sum, ReadOnlySpan<float> values, float weight)
    {
        var x = 0;
        var gain = new Vector<float>(weight);
        for (; x <= sum.Length - Vector<float>.Count; x += Vector<float>.Count)
            (new Vector<float>(sum[x..]) + gain * new Vector<float>(values[x..])).CopyTo(sum[x..]);
        for (; x < sum.Length; x++)
            sum[x] += weight * values[x];
    }
}

using System.Numerics;

namespace Alburnum.Imaging.Outline;

/// <summary>How much of each group lies in any stretch of any row of a picture, kept summed from the left.</summary>
/// <remarks>A stretch costs the difference of two sums, however long it is.</remarks>
internal sealed class GroupSums
{
    private readonly float[] _sums;
    private readonly int _width;

    /// <param name="group">Group of each pixel, row by row.</param>
    /// <param name="weight">How much each pixel counts.</param>
    /// <param name="width">Width of the picture, px.</param>
    /// <param name="height">Height of the picture, px.</param>
    public GroupSums(ReadOnlySpan<byte> group, ReadOnlySpan<byte> weight, int width, int height)
    {
        _width = width;
        _sums = new float[Palette.Groups * (width + 1) * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var next = At(y, x + 1);
                At(y, x).CopyTo(next);
                next[group[(y * width) + x]] += weight[(y * width) + x];
            }
        }
    }

    /// <summary>Adds what lies in a stretch of a row to a count of each group.</summary>
    /// <param name="y">The row.</param>
    /// <param name="from">First pixel.</param>
    /// <param name="to">The pixel after the last.</param>
    /// <param name="count">One number for each group.</param>
    public void Count(int y, int from, int to, Span<float> count)
    {
        Add(count, At(y, to));
        Add(count, At(y, from), -1);
    }

    /// <summary>to += by · times, for each group.</summary>
    public static void Add(Span<float> to, ReadOnlySpan<float> by, float times = 1)
    {
        var k = 0;
        for (; k <= Palette.Groups - Vector<float>.Count; k += Vector<float>.Count)
            (new Vector<float>(to[k..]) + (new Vector<float>(by[k..]) * times)).CopyTo(to[k..]);
        for (; k < Palette.Groups; k++)
            to[k] += by[k] * times;
    }

    private Span<float> At(int y, int x) => _sums.AsSpan(Palette.Groups * ((y * (_width + 1)) + x), Palette.Groups);
}

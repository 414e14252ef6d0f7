using System.Numerics;

namespace Alburnum.Imaging.Geometry;

/// <summary>What a change of depth between neighbouring columns costs: nothing up to some rows, and in proportion beyond.</summary>
internal static class SlopeCost
{
    /// <summary>eased[d] = min over k of best[k] + cost·max(0, |d − k| − free).</summary>
    /// <param name="best">Least cost of each depth in the column before.</param>
    /// <param name="eased">Least cost of each depth after the step; as long as <paramref name="best"/>.</param>
    /// <param name="spare">Room to work in, as long; overwritten.</param>
    /// <param name="free">Rows of change that cost nothing. 0 or more.</param>
    /// <param name="cost">Cost of each row beyond. 0 or more.</param>
    public static void Ease(ReadOnlySpan<float> best, Span<float> eased, Span<float> spare, int free, float cost)
    {
        best.CopyTo(eased);
        for (var k = 1; k <= Math.Min(free, best.Length - 1); k++)
        {
            Lower(eased, best, k, 0);
            Lower(eased, best, -k, 0);
        }
        // A step of any length is made of steps of 1, 2, 4, 8 ... rows.
        for (var step = 1; step < best.Length; step *= 2)
        {
            eased.CopyTo(spare);
            Lower(eased, spare, step, cost * step);
            Lower(eased, spare, -step, cost * step);
        }
    }

    /// <summary>The depth in the column before from which a depth is reached at least cost; of equals itself, otherwise the shallowest.</summary>
    public static int CameFrom(ReadOnlySpan<float> best, int depth, int free, float cost)
    {
        var (from, least) = (depth, best[depth]);
        for (var k = 0; k < best.Length; k++)
        {
            var by = best[k] + (cost * Math.Max(0, Math.Abs(k - depth) - free));
            if (by < least)
                (from, least) = (k, by);
        }
        return from;
    }

    // of[d] = min(of[d], by[d + shift] + plus) wherever both exist.
    private static void Lower(Span<float> of, ReadOnlySpan<float> by, int shift, float plus)
    {
        of = of[Math.Max(0, -shift)..];
        by = by[Math.Max(0, shift)..];
        var n = Math.Min(of.Length, by.Length);
        var added = new Vector<float>(plus);
        var i = 0;
        for (; i <= n - Vector<float>.Count; i += Vector<float>.Count)
            Vector.Min(new Vector<float>(of[i..]), new Vector<float>(by[i..]) + added).CopyTo(of[i..]);
        for (; i < n; i++)
            of[i] = Math.Min(of[i], by[i] + plus);
    }
}

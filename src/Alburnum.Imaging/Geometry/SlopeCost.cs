using System.Numerics;

namespace Alburnum.Imaging.Geometry;

/// <summary>What a change of depth between neighbouring columns costs: nothing up to some rows, in proportion beyond, and never more than a jump.</summary>
/// <param name="FreeRows">Rows of change that cost nothing. 0 or more.</param>
/// <param name="PerRow">Cost of each row beyond. 0 or more.</param>
/// <param name="Jump">The most that any change costs. 0 or more.</param>
internal readonly record struct SlopeCost(int FreeRows, float PerRow, float Jump = float.PositiveInfinity)
{
    /// <summary>The cost of a change.</summary>
    public float Of(int rows) => Math.Min(Jump, PerRow * Math.Max(0, Math.Abs(rows) - FreeRows));

    /// <summary>eased[d] = min over k of best[k] + the cost of d − k.</summary>
    /// <param name="best">Least cost of each depth in the column before.</param>
    /// <param name="eased">Least cost of each depth after the step; as long as <paramref name="best"/>.</param>
    /// <param name="spare">Room to work in, as long; overwritten.</param>
    public void Ease(ReadOnlySpan<float> best, Span<float> eased, Span<float> spare)
    {
        best.CopyTo(eased);
        for (var k = 1; k <= Math.Min(FreeRows, best.Length - 1); k++)
        {
            Lower(eased, best, k, 0);
            Lower(eased, best, -k, 0);
        }
        // A step of any length is made of steps of 1, 2, 4, 8 ... rows.
        for (var step = 1; step < best.Length; step *= 2)
        {
            eased.CopyTo(spare);
            Lower(eased, spare, step, PerRow * step);
            Lower(eased, spare, -step, PerRow * step);
        }
        if (float.IsPositiveInfinity(Jump))
            return;
        spare.Fill(Least(best) + Jump);
        Lower(eased, spare, 0, 0);
    }

    /// <summary>The depth in the column before from which a depth is reached at least cost; of equals itself, otherwise the shallowest.</summary>
    public int CameFrom(ReadOnlySpan<float> best, int depth)
    {
        var (from, least) = (depth, best[depth]);
        for (var k = 0; k < best.Length; k++)
        {
            var by = best[k] + Of(k - depth);
            if (by < least)
                (from, least) = (k, by);
        }
        return from;
    }

    private static float Least(ReadOnlySpan<float> of)
    {
        var least = of[0];
        foreach (var each in of)
            least = Math.Min(least, each);
        return least;
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

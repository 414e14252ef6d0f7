namespace Alburnum.Imaging.Boundary;

/// <summary>The front along one face that gathers most evidence for treated wood outside it and untreated wood inside it.</summary>
/// <remarks>
/// Dynamic programming over the columns. The cost of a depth in a column is minus the evidence outside it; between neighbouring
/// columns the path may rise or fall freely up to a slope, and pays in proportion beyond it, so that a narrow streak costs more
/// than it gains while a true change of depth passes.
/// </remarks>
internal static class DepthPath
{
    /// <summary>Finds the front.</summary>
    /// <param name="evidence">Evidence for treated wood, column by column, each of <paramref name="rows"/> rows; positive is treated.</param>
    /// <param name="rows">Rows of each column.</param>
    /// <param name="reach">Rows of each column that may be treated by this face.</param>
    /// <param name="closed">True where the last column is the first one's neighbour.</param>
    /// <param name="freeRows">Change between neighbouring columns that costs nothing, rows.</param>
    /// <param name="costPerRow">Cost of each row of change beyond that.</param>
    /// <returns>Number of treated rows of each column.</returns>
    public static int[] Find(
        ReadOnlySpan<float> evidence,
        int rows,
        ReadOnlySpan<int> reach,
        bool closed,
        int freeRows,
        float costPerRow
    )
    {
        var columns = reach.Length;
        // A closed face is walked once more round on both sides, so that its ends meet.
        var lead = closed ? Math.Min(columns, 3 + (columns / 3)) : 0;
        var walked = columns + (2 * lead);
        var states = rows + 1;
        var best = new float[states];
        var next = new float[states];
        var eased = new float[states];
        var easedFrom = new short[states];
        var from = new short[walked * states];
        for (var w = 0; w < walked; w++)
        {
            var column = ((w - lead) % columns + columns) % columns;
            if (w > 0)
                Ease(best, eased, easedFrom, freeRows, costPerRow);
            var sum = 0f;
            var cells = evidence.Slice(column * rows, rows);
            var back = from.AsSpan(w * states, states);
            for (var d = 0; d < states; d++)
            {
                if (d > 0 && d <= reach[column])
                    sum -= cells[d - 1];
                // Beyond its reach a column says nothing: the path there is only carried along.
                next[d] = (w > 0 ? eased[d] : 0) + sum;
                back[d] = w > 0 ? easedFrom[d] : (short)0;
            }
            (best, next) = (next, best);
        }
        var path = new int[columns];
        var at = 0;
        for (var d = 1; d < states; d++)
            if (best[d] < best[at])
                at = d;
        for (var w = walked - 1; w >= 0; w--)
        {
            if (w - lead >= 0 && w - lead < columns)
                path[w - lead] = at;
            at = from[(w * states) + at];
        }
        return path;
    }

    // eased[d] = min over d' of best[d'] + cost·max(0, |d − d'| − free)
    private static void Ease(float[] best, float[] eased, short[] easedFrom, int free, float cost)
    {
        var n = best.Length;
        for (var d = 0; d < n; d++)
        {
            var low = Math.Max(0, d - free);
            var high = Math.Min(n - 1, d + free);
            var least = d;
            for (var k = low; k <= high; k++)
                if (best[k] < best[least])
                    least = k;
            eased[d] = best[least];
            easedFrom[d] = (short)least;
        }
        for (var d = 1; d < n; d++)
        {
            if (eased[d - 1] + cost < eased[d])
                (eased[d], easedFrom[d]) = (eased[d - 1] + cost, easedFrom[d - 1]);
        }
        for (var d = n - 2; d >= 0; d--)
        {
            if (eased[d + 1] + cost < eased[d])
                (eased[d], easedFrom[d]) = (eased[d + 1] + cost, easedFrom[d + 1]);
        }
    }
}

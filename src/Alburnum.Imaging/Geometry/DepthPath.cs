using System.Buffers;

namespace Alburnum.Imaging.Geometry;

/// <summary>The front along one face that gathers most evidence for treated wood outside it and untreated wood inside it.</summary>
/// <remarks>
/// Dynamic programming over the columns. The cost of a depth in a column is minus the evidence outside it; between neighbouring
/// columns the path may rise or fall freely up to a slope, and pays in proportion beyond it up to a jump, so that a narrow streak costs
/// more than it gains while a true change of depth passes.
/// </remarks>
internal static class DepthPath
{
    /// <summary>A closed face is walked once more over so many columns and this part of all, so that its ends meet. Our own choice.</summary>
    private const int LeastLead = 3;

    private const int LeadPart = 3;

    /// <summary>Finds the front.</summary>
    /// <param name="evidence">Evidence for treated wood, column by column, each of <paramref name="rows"/> rows; positive is treated.</param>
    /// <param name="rows">Rows of each column.</param>
    /// <param name="reach">Rows of each column that may be treated by this face.</param>
    /// <param name="closed">True where the last column is the first one's neighbour.</param>
    /// <param name="slope">What a change between neighbouring columns costs.</param>
    /// <returns>Number of treated rows of each column.</returns>
    public static int[] Find(
        ReadOnlySpan<float> evidence,
        int rows,
        ReadOnlySpan<int> reach,
        bool closed,
        SlopeCost slope
    )
    {
        var columns = reach.Length;
        var lead = closed ? Math.Min(columns, LeastLead + (columns / LeadPart)) : 0;
        var walked = columns + (2 * lead);
        var states = rows + 1;
        var rented = ArrayPool<float>.Shared.Rent((walked + 2) * states);
        // The least cost at which each depth of each column can be reached, and two columns to work in.
        Span<float> Column(int w) => rented.AsSpan(w * states, states);
        var eased = Column(walked);
        var spare = Column(walked + 1);
        eased.Clear();
        for (var w = 0; w < walked; w++)
        {
            var column = ((w - lead) % columns + columns) % columns;
            if (w > 0)
                slope.Ease(Column(w - 1), eased, spare);
            var here = Column(w);
            var cells = evidence.Slice(column * rows, rows);
            var sum = 0f;
            here[0] = eased[0];
            for (var d = 1; d < states; d++)
            {
                // Beyond its reach a column says nothing: the path there is only carried along.
                if (d <= reach[column])
                    sum -= cells[d - 1];
                here[d] = eased[d] + sum;
            }
        }
        var path = new int[columns];
        var last = Column(walked - 1);
        var at = 0;
        for (var d = 1; d < states; d++)
            if (last[d] < last[at])
                at = d;
        for (var w = walked - 1; w >= 0; w--)
        {
            if (w - lead >= 0 && w - lead < columns)
                path[w - lead] = at;
            if (w > 0)
                at = slope.CameFrom(Column(w - 1), at);
        }
        ArrayPool<float>.Shared.Return(rented);
        return path;
    }
}

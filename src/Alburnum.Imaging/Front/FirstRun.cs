namespace Alburnum.Imaging.Front;

/// <summary>Evidence weighed so that the depth is the first untreated wood along the normal, whatever lies beyond it.</summary>
/// <remarks>
/// Summed as it is, evidence for treated wood beyond a bay speaks against the bay. Here the cells beyond the first run of untreated wood are labelled
/// either way, as well as they can be (two states, Viterbi), and each return to treated wood costs something, so that specks of texture are no bays.
/// </remarks>
internal static class FirstRun
{
    /// <summary>Evidence whose sum down to a depth, but for a constant of the column, is that of the column with the first run of untreated wood there.</summary>
    /// <param name="evidence">Evidence for treated wood, column by column; positive is treated.</param>
    /// <param name="rows">Rows of each column.</param>
    /// <param name="reach">Rows of each column that count.</param>
    /// <param name="runRows">Shorter runs of untreated wood than this are no front, rows.</param>
    /// <param name="returnCost">What a return to treated wood beyond the run costs, in evidence. 0 or more; infinite: the evidence as it is.</param>
    public static float[] Weigh(
        ReadOnlySpan<float> evidence,
        int rows,
        ReadOnlySpan<int> reach,
        int runRows,
        float returnCost
    )
    {
        var weighed = evidence.ToArray();
        Span<float> beyond = new float[rows + 1];
        for (var i = 0; i < reach.Length; i++)
        {
            var cells = evidence.Slice(i * rows, reach[i]);
            Beyond(cells, beyond, returnCost);
            for (var d = 1; d <= cells.Length; d++)
                weighed[(i * rows) + d - 1] +=
                    beyond[Math.Min(cells.Length, d + runRows)] - beyond[Math.Min(cells.Length, d - 1 + runRows)];
        }
        return weighed;
    }

    // The most evidence that the cells from each on can give where the one before is untreated.
    private static void Beyond(ReadOnlySpan<float> cells, Span<float> untreated, float returnCost)
    {
        untreated[cells.Length] = 0;
        var treated = 0f;
        for (var j = cells.Length - 1; j >= 0; j--)
        {
            var (ifTreated, ifUntreated) = (cells[j] + treated, untreated[j + 1]);
            untreated[j] = Math.Max(ifUntreated, ifTreated - returnCost);
            treated = Math.Max(ifTreated, ifUntreated);
        }
    }
}

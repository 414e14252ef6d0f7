using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>
/// Sparsity pattern of a block matrix with one block row per cell of a graph: the cell itself first, then its neighbours of lower number,
/// then those of higher number; rising, where the graph's edges do.
/// </summary>
internal sealed class BlockCsrPattern
{
    /// <summary>The pattern of a graph.</summary>
    /// <param name="cells">Number of cells.</param>
    /// <param name="first">Cell of lower number of each edge.</param>
    /// <param name="second">Cell of higher number of each edge.</param>
    /// <param name="partition">How the rows are shared between two cores.</param>
    public BlockCsrPattern(int cells, ReadOnlySpan<int> first, ReadOnlySpan<int> second, TwoWayPartition partition)
    {
        var rowStart = new int[cells + 1];
        var upperStart = new int[cells];
        for (var i = 0; i < cells; i++)
            rowStart[i + 1] = 1;
        for (var c = 0; c < first.Length; c++)
        {
            rowStart[first[c] + 1]++;
            rowStart[second[c] + 1]++;
            upperStart[second[c]]++;
        }
        for (var i = 0; i < cells; i++)
        {
            rowStart[i + 1] += rowStart[i];
            upperStart[i] += rowStart[i] + 1;
        }
        var column = new int[rowStart[cells]];
        Transpose = new int[rowStart[cells]];
        FirstToSecond = new int[first.Length];
        SecondToFirst = new int[first.Length];
        var lower = new int[cells];
        var upper = upperStart.AsSpan().ToArray();
        for (var i = 0; i < cells; i++)
        {
            column[rowStart[i]] = i;
            Transpose[rowStart[i]] = rowStart[i];
            lower[i] = rowStart[i] + 1;
        }
        for (var c = 0; c < first.Length; c++)
        {
            var (i, j) = (first[c], second[c]);
            var (there, back) = (upper[i]++, lower[j]++);
            (column[there], column[back]) = (j, i);
            (Transpose[there], Transpose[back]) = (back, there);
            (FirstToSecond[c], SecondToFirst[c]) = (there, back);
        }
        Csr = new CsrPattern(rowStart, upperStart, column, partition);
    }

    /// <summary>Rows and columns of the blocks.</summary>
    public CsrPattern Csr { get; }

    /// <summary>For each block (i, j), where the block (j, i) lies.</summary>
    public int[] Transpose { get; }

    /// <summary>For each edge, the block in its first cell's row.</summary>
    public int[] FirstToSecond { get; }

    /// <summary>For each edge, the block in its second cell's row.</summary>
    public int[] SecondToFirst { get; }
}

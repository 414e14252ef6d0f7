using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Sparsity pattern of a square matrix in compressed sparse rows (CSR): each row holds its own column first, then lower columns, then higher ones, each rising.</summary>
/// <remarks>Saad, Iterative Methods for Sparse Linear Systems (2nd ed. 2003), 3.4; the diagonal is stored first so that sweeps find it at once.</remarks>
internal sealed class CsrPattern
{
    /// <summary>Takes a pattern.</summary>
    /// <param name="rowStart">Where each row starts, and where the last ends.</param>
    /// <param name="upperStart">Where each row's higher columns start.</param>
    /// <param name="column">Column of each entry.</param>
    /// <param name="partition">How the rows are shared between two cores.</param>
    public CsrPattern(int[] rowStart, int[] upperStart, int[] column, TwoWayPartition partition)
    {
        (RowStart, UpperStart, Column, Partition) = (rowStart, upperStart, column, partition);
        var split = partition.Split(Rows);
        InnerStart = new int[Rows];
        InnerEnd = new int[Rows];
        for (var i = 0; i < Rows; i++)
        {
            var (start, end) = (rowStart[i] + 1, rowStart[i + 1]);
            while (i >= split && start < upperStart[i] && column[start] < split)
                start++;
            while (i < split && end > upperStart[i] && column[end - 1] >= split)
                end--;
            (InnerStart[i], InnerEnd[i]) = (start, end);
        }
    }

    /// <summary>Where each row starts, and where the last ends.</summary>
    public int[] RowStart { get; }

    /// <summary>Where each row's higher columns start.</summary>
    public int[] UpperStart { get; }

    /// <summary>Column of each entry.</summary>
    public int[] Column { get; }

    /// <summary>How the rows are shared between two cores.</summary>
    public TwoWayPartition Partition { get; }

    /// <summary>Number of rows.</summary>
    public int Rows => RowStart.Length - 1;

    /// <summary>Where each row's lower columns in its own half of the rows start.</summary>
    public int[] InnerStart { get; }

    /// <summary>Where each row's higher columns in its own half of the rows end.</summary>
    public int[] InnerEnd { get; }
}

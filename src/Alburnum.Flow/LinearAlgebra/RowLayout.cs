using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Where the entries of a sparse matrix lie: row by row its own column, then lower columns, then higher ones, each rising.</summary>
/// <param name="RowStart">Where each row starts, and where the last ends.</param>
/// <param name="UpperStart">Where each row's higher columns start.</param>
/// <param name="Column">Column of each entry.</param>
internal sealed record RowLayout(int[] RowStart, int[] UpperStart, int[] Column)
{
    /// <summary>Number of rows.</summary>
    public int Rows => RowStart.Length - 1;

    /// <summary>Where each row's lower columns in its own half of the rows start.</summary>
    public int[] InnerStart { get; } = Inner(RowStart, UpperStart, Column, start: true);

    /// <summary>Where each row's higher columns in its own half of the rows end.</summary>
    public int[] InnerEnd { get; } = Inner(RowStart, UpperStart, Column, start: false);

    private static int[] Inner(int[] rowStart, int[] upperStart, int[] column, bool start)
    {
        var rows = upperStart.Length;
        var middle = Halves.Middle(rows);
        var inner = new int[rows];
        for (var i = 0; i < rows; i++)
        {
            var k = start ? rowStart[i] + 1 : rowStart[i + 1];
            if (start && i >= middle)
                while (k < upperStart[i] && column[k] < middle)
                    k++;
            if (!start && i < middle)
                while (k > upperStart[i] && column[k - 1] >= middle)
                    k--;
            inner[i] = k;
        }
        return inner;
    }
}

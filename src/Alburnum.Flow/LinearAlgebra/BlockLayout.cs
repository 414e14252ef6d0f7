using Alburnum.Flow.Mesh;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>
/// Where the blocks of a mesh's equations lie, one row per cell: the cell itself first, then its neighbours of lower number, then those of
/// higher number; rising, where the mesh's connections do.
/// </summary>
internal sealed class BlockLayout
{
    /// <summary>Lays out a mesh.</summary>
    public BlockLayout(FlowMesh mesh)
    {
        var cells = mesh.CellCount;
        var rowStart = new int[cells + 1];
        var upperStart = new int[cells];
        for (var i = 0; i < cells; i++)
            rowStart[i + 1] = 1;
        for (var c = 0; c < mesh.First.Length; c++)
        {
            rowStart[mesh.First[c] + 1]++;
            rowStart[mesh.Second[c] + 1]++;
            upperStart[mesh.Second[c]]++;
        }
        for (var i = 0; i < cells; i++)
        {
            rowStart[i + 1] += rowStart[i];
            upperStart[i] += rowStart[i] + 1;
        }
        var column = new int[rowStart[cells]];
        Twin = new int[rowStart[cells]];
        FirstToSecond = new int[mesh.First.Length];
        SecondToFirst = new int[mesh.First.Length];
        var lower = new int[cells];
        var upper = upperStart.AsSpan().ToArray();
        for (var i = 0; i < cells; i++)
        {
            column[rowStart[i]] = i;
            Twin[rowStart[i]] = rowStart[i];
            lower[i] = rowStart[i] + 1;
        }
        for (var c = 0; c < mesh.First.Length; c++)
        {
            var (i, j) = (mesh.First[c], mesh.Second[c]);
            var (there, back) = (upper[i]++, lower[j]++);
            (column[there], column[back]) = (j, i);
            (Twin[there], Twin[back]) = (back, there);
            (FirstToSecond[c], SecondToFirst[c]) = (there, back);
        }
        Rows = new RowLayout(rowStart, upperStart, column);
    }

    /// <summary>Rows and columns.</summary>
    public RowLayout Rows { get; }

    /// <summary>For each block of a row and a column, the block of that column's row and this row's column.</summary>
    public int[] Twin { get; }

    /// <summary>For each connection, the block in its first cell's row.</summary>
    public int[] FirstToSecond { get; }

    /// <summary>For each connection, the block in its second cell's row.</summary>
    public int[] SecondToFirst { get; }
}

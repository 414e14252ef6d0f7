using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>
/// A sparse matrix of 2 × 2 blocks with one row per cell: the cell itself first, then its neighbours of lower number, then those of
/// higher number; rising, where the mesh's connections do.
/// </summary>
internal sealed class BlockMatrix
{
    public BlockMatrix(FlowMesh mesh)
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
        Value = new float[4 * rowStart[cells]];
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
        Layout = new RowLayout(rowStart, upperStart, column);
    }

    /// <summary>Where the blocks lie.</summary>
    public RowLayout Layout { get; }

    /// <summary>For each block of a row and a column, the block of that column's row and this row's column.</summary>
    public int[] Twin { get; }

    /// <summary>Blocks row by row: liquid by pressure, liquid by saturation, air by pressure, air by saturation. They only point the way: single precision.</summary>
    public float[] Value { get; }

    public int[] FirstToSecond { get; }

    public int[] SecondToFirst { get; }

    public int Rows => Layout.Rows;

    /// <summary>The matrix times x, pairs of unknowns cell by cell.</summary>
    public void Multiply(float[] x, float[] y) => Halves.Run(Rows, (from, to) => Multiply(x, y, from, to));

    private void Multiply(float[] x, float[] y, int first, int end)
    {
        ref var from = ref MemoryMarshal.GetArrayDataReference(x);
        ref var to = ref MemoryMarshal.GetArrayDataReference(y);
        var rowStart = Layout.RowStart;
        for (var i = first; i < end; i++)
            BlockPair.Store(BlockPair.Joined(Parts(Value, rowStart[i], rowStart[i + 1], ref from)), ref to, i);
    }

    /// <summary>Blocks from one place up to another, each times the pair of its column; the halves of each product still apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<float> Parts(float[] blocks, int from, int to, ref float unknowns)
    {
        var sum = Vector128<float>.Zero;
        ref var block = ref MemoryMarshal.GetArrayDataReference(blocks);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Layout.Column);
        for (var k = from; k < to; k++)
        {
            var pair = BlockPair.Twice(ref unknowns, Unsafe.Add(ref column, k));
            sum += Vector128.LoadUnsafe(ref block, (nuint)(4 * k)) * pair;
        }
        return sum;
    }
}

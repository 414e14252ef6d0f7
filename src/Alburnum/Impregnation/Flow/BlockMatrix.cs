using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>
/// A sparse matrix of 2 × 2 blocks with one row per cell: the cell itself first, then its neighbours of lower number, then those of
/// higher number.
/// </summary>
internal sealed class BlockMatrix
{
    public BlockMatrix(FlowMesh mesh)
    {
        var cells = mesh.CellCount;
        RowStart = new int[cells + 1];
        UpperStart = new int[cells];
        for (var i = 0; i < cells; i++)
            RowStart[i + 1] = 1;
        for (var c = 0; c < mesh.First.Length; c++)
        {
            RowStart[mesh.First[c] + 1]++;
            RowStart[mesh.Second[c] + 1]++;
            UpperStart[mesh.Second[c]]++;
        }
        for (var i = 0; i < cells; i++)
        {
            RowStart[i + 1] += RowStart[i];
            UpperStart[i] += RowStart[i] + 1;
        }
        Column = new int[RowStart[cells]];
        Value = new float[4 * RowStart[cells]];
        Twin = new int[RowStart[cells]];
        FirstToSecond = new int[mesh.First.Length];
        SecondToFirst = new int[mesh.First.Length];
        var lower = new int[cells];
        var upper = UpperStart.AsSpan().ToArray();
        for (var i = 0; i < cells; i++)
        {
            Column[RowStart[i]] = i;
            Twin[RowStart[i]] = RowStart[i];
            lower[i] = RowStart[i] + 1;
        }
        for (var c = 0; c < mesh.First.Length; c++)
        {
            var (i, j) = (mesh.First[c], mesh.Second[c]);
            var (there, back) = (upper[i]++, lower[j]++);
            (Column[there], Column[back]) = (j, i);
            (Twin[there], Twin[back]) = (back, there);
            (FirstToSecond[c], SecondToFirst[c]) = (there, back);
        }
    }

    public int[] RowStart { get; }

    /// <summary>Where each row's neighbours of higher number start.</summary>
    public int[] UpperStart { get; }

    public int[] Column { get; }

    /// <summary>For each block of a row and a column, the block of that column's row and this row's column.</summary>
    public int[] Twin { get; }

    /// <summary>Blocks row by row: liquid by pressure, liquid by saturation, air by pressure, air by saturation. They only point the way: single precision.</summary>
    public float[] Value { get; }

    public int[] FirstToSecond { get; }

    public int[] SecondToFirst { get; }

    public int Rows => RowStart.Length - 1;

    /// <summary>The matrix times x, pairs of unknowns cell by cell.</summary>
    public void Multiply(float[] x, float[] y)
    {
        ref var from = ref MemoryMarshal.GetArrayDataReference(x);
        ref var to = ref MemoryMarshal.GetArrayDataReference(y);
        for (var i = 0; i < Rows; i++)
            BlockPair.Store(BlockPair.Joined(Parts(Value, RowStart[i], RowStart[i + 1], ref from)), ref to, i);
    }

    /// <summary>Blocks from one place up to another, each times the pair of its column; the halves of each product still apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<float> Parts(float[] blocks, int from, int to, ref float unknowns)
    {
        var sum = Vector128<float>.Zero;
        ref var block = ref MemoryMarshal.GetArrayDataReference(blocks);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Column);
        for (var k = from; k < to; k++)
        {
            var pair = BlockPair.Twice(ref unknowns, Unsafe.Add(ref column, k));
            sum += Vector128.LoadUnsafe(ref block, (nuint)(4 * k)) * pair;
        }
        return sum;
    }
}

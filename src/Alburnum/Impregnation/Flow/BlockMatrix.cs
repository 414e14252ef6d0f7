using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>A sparse matrix of 2 × 2 blocks with one row per cell: the cell itself first, then its neighbours.</summary>
internal sealed class BlockMatrix
{
    public BlockMatrix(FlowMesh mesh)
    {
        var cells = mesh.CellCount;
        RowStart = new int[cells + 1];
        for (var i = 0; i < cells; i++)
            RowStart[i + 1] = 1;
        for (var c = 0; c < mesh.First.Length; c++)
        {
            RowStart[mesh.First[c] + 1]++;
            RowStart[mesh.Second[c] + 1]++;
        }
        for (var i = 0; i < cells; i++)
            RowStart[i + 1] += RowStart[i];
        Column = new int[RowStart[cells]];
        Value = new double[4 * RowStart[cells]];
        FirstToSecond = new int[mesh.First.Length];
        SecondToFirst = new int[mesh.First.Length];
        var next = new int[cells];
        for (var i = 0; i < cells; i++)
        {
            Column[RowStart[i]] = i;
            next[i] = RowStart[i] + 1;
        }
        for (var c = 0; c < mesh.First.Length; c++)
        {
            var (i, j) = (mesh.First[c], mesh.Second[c]);
            Column[FirstToSecond[c] = next[i]++] = j;
            Column[SecondToFirst[c] = next[j]++] = i;
        }
    }

    public int[] RowStart { get; }

    public int[] Column { get; }

    /// <summary>Blocks row by row: liquid by pressure, liquid by saturation, air by pressure, air by saturation.</summary>
    public double[] Value { get; }

    public int[] FirstToSecond { get; }

    public int[] SecondToFirst { get; }

    public int Rows => RowStart.Length - 1;

    public void Multiply(double[] x, double[] y)
    {
        for (var i = 0; i < Rows; i++)
            RowTimes(i, RowStart[i], x).CopyTo(y, 2 * i);
    }

    /// <summary>One row times x, from a block of the row onward: from <c>RowStart[i] + 1</c> for all but the cell itself.</summary>
    /// <remarks>A block is four lanes; they meet the pair of unknowns laid twice side by side.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<double> RowTimes(int row, int from, double[] x)
    {
        var sum = Vector256<double>.Zero;
        ref var values = ref MemoryMarshal.GetArrayDataReference(Value);
        ref var unknowns = ref MemoryMarshal.GetArrayDataReference(x);
        var column = Column.AsSpan(from, RowStart[row + 1] - from);
        for (var k = 0; k < column.Length; k++)
        {
            var pair = Vector128.LoadUnsafe(ref unknowns, (nuint)(2 * column[k]));
            var block = Vector256.LoadUnsafe(ref values, (nuint)(4 * (from + k)));
            sum += block * Vector256.Create(pair, pair);
        }
        return Vector128.Create(sum.GetElement(0) + sum.GetElement(1), sum.GetElement(2) + sum.GetElement(3));
    }
}

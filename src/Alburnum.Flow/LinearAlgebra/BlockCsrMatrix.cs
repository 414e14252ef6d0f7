using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>A sparse matrix of 2 × 2 blocks, block by block in compressed sparse rows, in single or double precision.</summary>
internal sealed class BlockCsrMatrix<T>(BlockCsrPattern pattern)
    where T : unmanaged
{
    /// <summary>Where the blocks lie.</summary>
    public BlockCsrPattern Pattern { get; } = pattern;

    /// <summary>Blocks row by row, four numbers each: in the flow equations liquid by pressure, liquid by saturation, air by pressure, air by saturation.</summary>
    public T[] Value { get; } = new T[4 * pattern.Csr.Column.Length];

    /// <summary>Number of block rows.</summary>
    public int Rows => Pattern.Csr.Rows;

    /// <summary>y = A·x, pairs of unknowns cell by cell.</summary>
    public void Multiply(T[] x, T[] y) => Pattern.Csr.Partition.Run(Rows, (first, end) => Multiply(x, y, first, end));

    private void Multiply(T[] x, T[] y, int first, int end)
    {
        ref var from = ref MemoryMarshal.GetArrayDataReference(x);
        ref var to = ref MemoryMarshal.GetArrayDataReference(y);
        var rowStart = Pattern.Csr.RowStart;
        for (var i = first; i < end; i++)
            Block2x2.StorePair(Block2x2.Joined(Parts(Value, rowStart[i], rowStart[i + 1], ref from)), ref to, i);
    }

    /// <summary>Blocks from one place up to another, each times the pair of its column; the halves of each product still apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<T> Parts(T[] values, int from, int to, ref T unknowns)
    {
        var sum = Vector256<T>.Zero;
        ref var value = ref MemoryMarshal.GetArrayDataReference(values);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Pattern.Csr.Column);
        for (var k = from; k < to; k++)
            sum += Block2x2.Load(ref value, k) * Block2x2.Twice(ref unknowns, Unsafe.Add(ref column, k));
        return sum;
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>A sparse matrix of 2 × 2 blocks with one row per cell, in single or double precision.</summary>
internal sealed class BlockMatrix<T>(BlockLayout blocks)
    where T : unmanaged
{
    /// <summary>Where the blocks lie.</summary>
    public BlockLayout Blocks { get; } = blocks;

    /// <summary>Blocks row by row: liquid by pressure, liquid by saturation, air by pressure, air by saturation.</summary>
    public T[] Value { get; } = new T[4 * blocks.Rows.Column.Length];

    /// <summary>Number of rows.</summary>
    public int Rows => Blocks.Rows.Rows;

    /// <summary>The matrix times x, pairs of unknowns cell by cell.</summary>
    public void Multiply(T[] x, T[] y) => Halves.Run(Rows, (from, to) => Multiply(x, y, from, to));

    private void Multiply(T[] x, T[] y, int first, int end)
    {
        ref var from = ref MemoryMarshal.GetArrayDataReference(x);
        ref var to = ref MemoryMarshal.GetArrayDataReference(y);
        var rowStart = Blocks.Rows.RowStart;
        for (var i = first; i < end; i++)
            Quad.StorePair(Quad.Joined(Parts(Value, rowStart[i], rowStart[i + 1], ref from)), ref to, i);
    }

    /// <summary>Blocks from one place up to another, each times the pair of its column; the halves of each product still apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<T> Parts(T[] values, int from, int to, ref T unknowns)
    {
        var sum = Vector256<T>.Zero;
        ref var value = ref MemoryMarshal.GetArrayDataReference(values);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Blocks.Rows.Column);
        for (var k = from; k < to; k++)
            sum += Quad.Load(ref value, k) * Quad.Twice(ref unknowns, Unsafe.Add(ref column, k));
        return sum;
    }
}

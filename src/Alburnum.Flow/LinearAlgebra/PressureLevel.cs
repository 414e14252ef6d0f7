using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>The pressure equations on one grid of the multigrid: rows of entries, an answer, a right-hand side, and the way to the next coarser grid.</summary>
internal sealed class PressureLevel<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // A group moves as one, which makes the coarse equations too stiff: their answer falls short by about this factor.
    private static readonly T Stretch = T.CreateChecked(1.6);

    // Clears numbers too small to matter, which would slow the sweeps a hundredfold.
    private static readonly T Speck = T.CreateChecked(1e-20);
    private readonly T[] _inverse;

    // What the other half of the rows brings to each row, and what each row has left over.
    private readonly T[] _outer;
    private readonly T[] _left;

    /// <summary>A grid's equations; the values are kept, not copied.</summary>
    public PressureLevel(RowLayout layout, T[] value)
    {
        (Layout, Value) = (layout, value);
        X = new T[Rows];
        Right = new T[Rows];
        _inverse = new T[Rows];
        _outer = new T[Rows];
        _left = new T[Rows];
    }

    /// <summary>Where the entries lie.</summary>
    public RowLayout Layout { get; }

    /// <summary>The entries.</summary>
    public T[] Value { get; }

    /// <summary>The answer so far.</summary>
    public T[] X { get; }

    /// <summary>The right-hand side.</summary>
    public T[] Right { get; }

    /// <summary>Row of the coarser grid that each row belongs to; below 0 where to none.</summary>
    public int[] Group { get; set; } = [];

    /// <summary>Entry of the coarser grid that each entry is summed into; -1 where into none.</summary>
    public int[] Into { get; set; } = [];

    /// <summary>Number of rows.</summary>
    public int Rows => Layout.Rows;

    /// <summary>Sums the coarser grid's entries.</summary>
    public void SumInto(PressureLevel<T> coarse)
    {
        Array.Clear(coarse.Value);
        // Groups lie within one half, and so do the entries that theirs are summed into.
        Halves.Run(Rows, (first, end) => SumInto(coarse, Layout.RowStart[first], Layout.RowStart[end]));
    }

    private void SumInto(PressureLevel<T> coarse, int from, int to)
    {
        var (into, value) = (Into, Value);
        ref var sums = ref MemoryMarshal.GetArrayDataReference(coarse.Value);
        for (var k = from; k < to; k++)
            if (into[k] >= 0)
                Unsafe.Add(ref sums, into[k]) += value[k];
    }

    /// <summary>Inverts the rows' own entries.</summary>
    public void Invert()
    {
        for (var i = 0; i < Rows; i++)
        {
            var own = Value[Layout.RowStart[i]];
            _inverse[i] = own == T.Zero ? T.Zero : T.One / own;
        }
    }

    /// <summary>Gauss–Seidel forward where everything stands at zero: what higher rows hold is nothing yet.</summary>
    public void SweepFromZero() => Halves.Run(Rows, SweepFromZero);

    private void SweepFromZero(int first, int end)
    {
        var (start, upper, column) = (Layout.InnerStart, Layout.UpperStart, Layout.Column);
        var (value, x, right, inverse) = (Value, X, Right, _inverse);
        for (var i = first; i < end; i++)
            x[i] = (right[i] - Times(value, column, x, start[i], upper[i])) * inverse[i] + Speck - Speck;
    }

    /// <summary>Gauss–Seidel in place, forward or backward; each half takes the other as it was.</summary>
    public void Sweep(bool forward)
    {
        if (Halves.Middle(Rows) < Rows)
            Halves.Run(Rows, TakeOuter);
        Halves.Run(Rows, (first, end) => Sweep(forward, first, end));
    }

    private void TakeOuter(int first, int end)
    {
        var (rowStart, start, stop, column) = (Layout.RowStart, Layout.InnerStart, Layout.InnerEnd, Layout.Column);
        var (value, x, outer) = (Value, X, _outer);
        for (var i = first; i < end; i++)
            outer[i] =
                Times(value, column, x, rowStart[i] + 1, start[i]) + Times(value, column, x, stop[i], rowStart[i + 1]);
    }

    private void Sweep(bool forward, int first, int end)
    {
        var (start, stop, column) = (Layout.InnerStart, Layout.InnerEnd, Layout.Column);
        var (value, x, right, outer, inverse) = (Value, X, Right, _outer, _inverse);
        for (var step = first; step < end; step++)
        {
            var i = forward ? step : first + end - 1 - step;
            var others = outer[i] + Times(value, column, x, start[i], stop[i]);
            x[i] = (right[i] - others) * inverse[i] + Speck - Speck;
        }
    }

    /// <summary>Hands what a sweep forward from zero left over to the coarser grid: the higher rows' parts, and the other half's.</summary>
    public void RestrictAfterSweepFromZero(PressureLevel<T> coarse)
    {
        Array.Clear(coarse.Right);
        Halves.Run(
            Rows,
            (first, end) =>
            {
                LeaveAfterSweepFromZero(first, end);
                HandOver(coarse, first, end);
            }
        );
    }

    private void LeaveAfterSweepFromZero(int first, int end)
    {
        var (rowStart, start, upper, column) = (Layout.RowStart, Layout.InnerStart, Layout.UpperStart, Layout.Column);
        var (value, x, left) = (Value, X, _left);
        for (var i = first; i < end; i++)
            left[i] =
                -Times(value, column, x, upper[i], rowStart[i + 1])
                - Times(value, column, x, rowStart[i] + 1, start[i]);
    }

    /// <summary>Hands what is left over to the coarser grid.</summary>
    public void Restrict(PressureLevel<T> coarse)
    {
        Array.Clear(coarse.Right);
        Halves.Run(
            Rows,
            (first, end) =>
            {
                Leave(first, end);
                HandOver(coarse, first, end);
            }
        );
    }

    private void Leave(int first, int end)
    {
        var (rowStart, column, value, x, right, left) = (Layout.RowStart, Layout.Column, Value, X, Right, _left);
        for (var i = first; i < end; i++)
            left[i] = right[i] - Times(value, column, x, rowStart[i], rowStart[i + 1]);
    }

    // Groups lie within one half: no sum is written from both.
    private void HandOver(PressureLevel<T> coarse, int first, int end)
    {
        var (group, sums, left) = (Group, coarse.Right, _left);
        for (var i = first; i < end; i++)
            if (group[i] >= 0)
                sums[group[i]] += left[i];
    }

    /// <summary>Adds the coarser grid's answer.</summary>
    public void Prolong(PressureLevel<T> coarse) => Halves.Run(Rows, (first, end) => Prolong(coarse, first, end));

    private void Prolong(PressureLevel<T> coarse, int first, int end)
    {
        var (group, x, answer) = (Group, X, coarse.X);
        for (var i = first; i < end; i++)
            if (group[i] >= 0)
                x[i] += Stretch * answer[group[i]];
    }

    // Entries from one place up to another, each times the unknown of its column.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Times(T[] value, int[] column, T[] x, int from, int to)
    {
        var sum = T.Zero;
        ref var entry = ref MemoryMarshal.GetArrayDataReference(value);
        ref var at = ref MemoryMarshal.GetArrayDataReference(column);
        ref var unknown = ref MemoryMarshal.GetArrayDataReference(x);
        for (var k = from; k < to; k++)
            sum += Unsafe.Add(ref entry, k) * Unsafe.Add(ref unknown, Unsafe.Add(ref at, k));
        return sum;
    }
}

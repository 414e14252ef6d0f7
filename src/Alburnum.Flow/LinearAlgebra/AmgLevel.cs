using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>One level of an algebraic multigrid: a sparse matrix, an answer, a right-hand side, a Gauss–Seidel smoother, and the way to the next coarser level.</summary>
internal sealed class AmgLevel<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // An aggregate moves as one, which makes the coarse equations too stiff: their answer falls short by about this factor.
    private static readonly T Stretch = T.CreateChecked(1.6);

    // Clears numbers too small to matter, which would slow the sweeps a hundredfold.
    private static readonly T Speck = T.CreateChecked(1e-20);
    private readonly T[] _inverse;

    // What the other half of the rows brings to each row, and what each row has left over.
    private readonly T[] _outer;
    private readonly T[] _left;

    /// <summary>A level's equations; the values are kept, not copied.</summary>
    public AmgLevel(CsrPattern pattern, T[] value)
    {
        (Pattern, Value) = (pattern, value);
        X = new T[Rows];
        Right = new T[Rows];
        _inverse = new T[Rows];
        _outer = new T[Rows];
        _left = new T[Rows];
    }

    /// <summary>Where the entries lie.</summary>
    public CsrPattern Pattern { get; }

    /// <summary>The entries.</summary>
    public T[] Value { get; }

    /// <summary>The answer so far.</summary>
    public T[] X { get; }

    /// <summary>The right-hand side.</summary>
    public T[] Right { get; }

    /// <summary>Aggregate, a row of the coarser level, that each row belongs to; below 0 where to none.</summary>
    public int[] Aggregate { get; set; } = [];

    /// <summary>Entry of the coarser level that each entry is summed into; below 0 where into none.</summary>
    public int[] Into { get; set; } = [];

    /// <summary>Number of rows.</summary>
    public int Rows => Pattern.Rows;

    /// <summary>Sums the coarser level's entries.</summary>
    public void SumInto(AmgLevel<T> coarse)
    {
        Array.Clear(coarse.Value);
        // Aggregates lie within one half, and so do the entries that theirs are summed into.
        Pattern.Partition.Run(Rows, (first, end) => SumInto(coarse, Pattern.RowStart[first], Pattern.RowStart[end]));
    }

    private void SumInto(AmgLevel<T> coarse, int from, int to)
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
            var own = Value[Pattern.RowStart[i]];
            _inverse[i] = own == T.Zero ? T.Zero : T.One / own;
        }
    }

    /// <summary>Gauss–Seidel forward where everything stands at zero: what higher rows hold is nothing yet.</summary>
    public void SweepFromZero() => Pattern.Partition.Run(Rows, SweepFromZero);

    private void SweepFromZero(int first, int end)
    {
        var (start, upper, column) = (Pattern.InnerStart, Pattern.UpperStart, Pattern.Column);
        var (value, x, right, inverse) = (Value, X, Right, _inverse);
        for (var i = first; i < end; i++)
            x[i] = (right[i] - Times(value, column, x, start[i], upper[i])) * inverse[i] + Speck - Speck;
    }

    /// <summary>Gauss–Seidel in place, forward or backward; each half takes the other as it was.</summary>
    public void Sweep(bool forward)
    {
        if (Pattern.Partition.Split(Rows) < Rows)
            Pattern.Partition.Run(Rows, TakeOuter);
        Pattern.Partition.Run(Rows, (first, end) => Sweep(forward, first, end));
    }

    private void TakeOuter(int first, int end)
    {
        var (rowStart, start, stop, column) = (Pattern.RowStart, Pattern.InnerStart, Pattern.InnerEnd, Pattern.Column);
        var (value, x, outer) = (Value, X, _outer);
        for (var i = first; i < end; i++)
            outer[i] =
                Times(value, column, x, rowStart[i] + 1, start[i]) + Times(value, column, x, stop[i], rowStart[i + 1]);
    }

    private void Sweep(bool forward, int first, int end)
    {
        var (start, stop, column) = (Pattern.InnerStart, Pattern.InnerEnd, Pattern.Column);
        var (value, x, right, outer, inverse) = (Value, X, Right, _outer, _inverse);
        for (var step = first; step < end; step++)
        {
            var i = forward ? step : first + end - 1 - step;
            var others = outer[i] + Times(value, column, x, start[i], stop[i]);
            x[i] = (right[i] - others) * inverse[i] + Speck - Speck;
        }
    }

    /// <summary>Hands what a sweep forward from zero left over to the coarser level: the higher rows' parts, and the other half's.</summary>
    public void RestrictAfterSweepFromZero(AmgLevel<T> coarse)
    {
        Array.Clear(coarse.Right);
        Pattern.Partition.Run(
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
        var (rowStart, start, upper, column) = (
            Pattern.RowStart,
            Pattern.InnerStart,
            Pattern.UpperStart,
            Pattern.Column
        );
        var (value, x, left) = (Value, X, _left);
        for (var i = first; i < end; i++)
            left[i] =
                -Times(value, column, x, upper[i], rowStart[i + 1])
                - Times(value, column, x, rowStart[i] + 1, start[i]);
    }

    /// <summary>Hands what is left over to the coarser level.</summary>
    public void Restrict(AmgLevel<T> coarse)
    {
        Array.Clear(coarse.Right);
        Pattern.Partition.Run(
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
        var (rowStart, column, value, x, right, left) = (Pattern.RowStart, Pattern.Column, Value, X, Right, _left);
        for (var i = first; i < end; i++)
            left[i] = right[i] - Times(value, column, x, rowStart[i], rowStart[i + 1]);
    }

    // Aggregates lie within one half: no sum is written from both.
    private void HandOver(AmgLevel<T> coarse, int first, int end)
    {
        var (aggregate, sums, left) = (Aggregate, coarse.Right, _left);
        for (var i = first; i < end; i++)
            if (aggregate[i] >= 0)
                sums[aggregate[i]] += left[i];
    }

    /// <summary>Adds the coarser level's answer.</summary>
    public void Prolong(AmgLevel<T> coarse) => Pattern.Partition.Run(Rows, (first, end) => Prolong(coarse, first, end));

    private void Prolong(AmgLevel<T> coarse, int first, int end)
    {
        var (aggregate, x, answer) = (Aggregate, X, coarse.X);
        for (var i = first; i < end; i++)
            if (aggregate[i] >= 0)
                x[i] += Stretch * answer[aggregate[i]];
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

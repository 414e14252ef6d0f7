using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Alburnum.Impregnation.Flow;

/// <summary>The pressure equations on one grid of the multigrid: rows of entries, an answer, a right-hand side, and the way to the next coarser grid.</summary>
internal sealed class PressureLevel
{
    // A group moves as one, which makes the coarse equations too stiff: their answer falls short by about this factor.
    private const float Stretch = 2;

    // Clears numbers too small to matter, which would slow the sweeps a hundredfold.
    private const float Speck = 1e-20f;
    private readonly float[] _inverse;

    public PressureLevel(int[] rowStart, int[] upperStart, int[] column, float[] value)
    {
        (RowStart, UpperStart, Column, Value) = (rowStart, upperStart, column, value);
        X = new float[Rows];
        Right = new float[Rows];
        _inverse = new float[Rows];
    }

    public int[] RowStart { get; }
    public int[] UpperStart { get; }
    public int[] Column { get; }
    public float[] Value { get; }
    public float[] X { get; }
    public float[] Right { get; }
    public int[] Group { get; set; } = [];

    // Entry of the coarse equations that each entry is summed into; -1 where into none.
    public int[] Into { get; set; } = [];
    public int Rows => RowStart.Length - 1;

    public void SumInto(PressureLevel coarse)
    {
        Array.Clear(coarse.Value);
        ref var sums = ref MemoryMarshal.GetArrayDataReference(coarse.Value);
        for (var k = 0; k < Into.Length; k++)
            if (Into[k] >= 0)
                Unsafe.Add(ref sums, Into[k]) += Value[k];
    }

    public void Invert()
    {
        for (var i = 0; i < Rows; i++)
        {
            var own = Value[RowStart[i]];
            _inverse[i] = own == 0 ? 0 : 1 / own;
        }
    }

    // Gauss–Seidel forward where everything stands at zero: what higher cells hold is nothing yet.
    public void SweepFromZero()
    {
        var (rowStart, upperStart, x, right, inverse) = (RowStart, UpperStart, X, Right, _inverse);
        ref var row = ref MemoryMarshal.GetArrayDataReference(Value);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Column);
        for (var i = 0; i < x.Length; i++)
        {
            var others = Times(ref row, ref column, x, rowStart[i] + 1, upperStart[i]);
            x[i] = (right[i] - others) * inverse[i] + Speck - Speck;
        }
    }

    // Gauss–Seidel in place.
    public void Sweep(bool forward)
    {
        var (rowStart, x, right, inverse) = (RowStart, X, Right, _inverse);
        ref var row = ref MemoryMarshal.GetArrayDataReference(Value);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Column);
        for (var step = 0; step < x.Length; step++)
        {
            var i = forward ? step : x.Length - 1 - step;
            var others = Times(ref row, ref column, x, rowStart[i] + 1, rowStart[i + 1]);
            x[i] = (right[i] - others) * inverse[i] + Speck - Speck;
        }
    }

    // After a sweep forward from zero, only the higher cells' parts are left over.
    public void RestrictAfterSweepFromZero(PressureLevel coarse)
    {
        var (rowStart, upperStart, x, group, sums) = (RowStart, UpperStart, X, Group, coarse.Right);
        ref var row = ref MemoryMarshal.GetArrayDataReference(Value);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Column);
        Array.Clear(sums);
        for (var i = 0; i < x.Length; i++)
            if (group[i] >= 0)
                sums[group[i]] -= Times(ref row, ref column, x, upperStart[i], rowStart[i + 1]);
    }

    public void Restrict(PressureLevel coarse)
    {
        var (rowStart, x, right, group, sums) = (RowStart, X, Right, Group, coarse.Right);
        ref var row = ref MemoryMarshal.GetArrayDataReference(Value);
        ref var column = ref MemoryMarshal.GetArrayDataReference(Column);
        Array.Clear(sums);
        for (var i = 0; i < x.Length; i++)
            if (group[i] >= 0)
                sums[group[i]] += right[i] - Times(ref row, ref column, x, rowStart[i], rowStart[i + 1]);
    }

    // Entries from one place up to another, each times the unknown of its column.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Times(ref float row, ref int column, float[] x, int from, int to)
    {
        float sum = 0;
        ref var unknown = ref MemoryMarshal.GetArrayDataReference(x);
        for (var k = from; k < to; k++)
            sum += Unsafe.Add(ref row, k) * Unsafe.Add(ref unknown, Unsafe.Add(ref column, k));
        return sum;
    }

    public void Prolong(PressureLevel coarse)
    {
        for (var i = 0; i < Rows; i++)
            if (Group[i] >= 0)
                X[i] += Stretch * coarse.X[Group[i]];
    }
}

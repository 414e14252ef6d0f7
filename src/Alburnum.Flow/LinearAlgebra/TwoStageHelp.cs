using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Alburnum.Flow.Equations;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>A rough answer to the Newton equations: first the pressures by multigrid, then both unknowns by the incomplete factor.</summary>
/// <remarks>
/// The pressure equation of a cell is the balance of total volume: liquid counts by the air that it takes the room of, so that storing one
/// for the other drops out. Constrained pressure residual method (Wallis 1983), remembered.
/// </remarks>
internal sealed class TwoStageHelp<T>(BlockMatrix<T> matrix)
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private readonly PressureMultigrid<T> _multigrid = new();
    private readonly IncompleteFactor<T> _factor = new(matrix);
    private readonly T[] _weight = new T[2 * matrix.Rows];
    private readonly T[] _byPressure = new T[2 * matrix.Blocks.Rows.Column.Length];
    private readonly T[] _pressureValue = new T[matrix.Blocks.Rows.Column.Length];
    private readonly T[] _pressureRight = new T[matrix.Rows];
    private readonly T[] _pressure = new T[matrix.Rows];

    /// <summary>Takes the matrix as it now stands; false where a cell's own block is singular.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell.</param>
    /// <param name="regroup">Whether the coarse grids are to be chosen anew.</param>
    public bool SetUp(double[] state, bool regroup)
    {
        if (!_factor.Factor())
            return false;
        Halves.Run(matrix.Rows, (first, end) => Weigh(state, first, end));
        if (regroup)
            _multigrid.Group(matrix.Blocks.Rows, _pressureValue);
        else
            _multigrid.Refresh();
        return true;
    }

    private void Weigh(double[] state, int first, int end)
    {
        var rowStart = matrix.Blocks.Rows.RowStart;
        ref var block = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var pressureValue = ref MemoryMarshal.GetArrayDataReference(_pressureValue);
        for (var i = first; i < end; i++)
        {
            var pressure = state[2 * i] / FlowTerms.ReferencePa;
            var (liquid, air) = (T.CreateTruncating(pressure / (1 + pressure)), T.CreateTruncating(1 / (1 + pressure)));
            (_weight[2 * i], _weight[2 * i + 1]) = (liquid, air);
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
            {
                var (liquidByP, airByP) = (Unsafe.Add(ref block, 4 * k), Unsafe.Add(ref block, 4 * k + 2));
                Unsafe.Add(ref byPressure, 2 * k) = liquidByP;
                Unsafe.Add(ref byPressure, 2 * k + 1) = airByP;
                Unsafe.Add(ref pressureValue, k) = liquid * liquidByP + air * airByP;
            }
        }
    }

    /// <summary>The rough answer x to a right-hand side, pairs cell by cell.</summary>
    public void Apply(T[] right, T[] x)
    {
        Halves.Run(
            matrix.Rows,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    _pressureRight[i] = _weight[2 * i] * right[2 * i] + _weight[2 * i + 1] * right[2 * i + 1];
            }
        );
        _multigrid.Cycle(_pressureRight, _pressure);
        Halves.Run(matrix.Rows, (first, end) => LeftOver(right, x, first, end));
        _factor.Solve(x);
        Halves.Run(
            matrix.Rows,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    x[2 * i] += _pressure[i];
            }
        );
    }

    // What the pressures found leave out of balance.
    private void LeftOver(T[] right, T[] left, int first, int end)
    {
        var rowStart = matrix.Blocks.Rows.RowStart;
        ref var pressure = ref MemoryMarshal.GetArrayDataReference(_pressure);
        ref var column = ref MemoryMarshal.GetArrayDataReference(matrix.Blocks.Rows.Column);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var rights = ref MemoryMarshal.GetArrayDataReference(right);
        ref var lefts = ref MemoryMarshal.GetArrayDataReference(left);
        for (var i = first; i < end; i++)
        {
            var pair = Quad.Twice(ref rights, i);
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                pair -=
                    Quad.Twice(ref byPressure, k)
                    * Vector256.Create(Unsafe.Add(ref pressure, Unsafe.Add(ref column, k)));
            Quad.StorePair(pair, ref lefts, i);
        }
    }
}

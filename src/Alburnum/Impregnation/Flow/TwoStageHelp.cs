using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>A rough answer to the Newton equations: first the pressures by multigrid, then both unknowns by the incomplete factor.</summary>
/// <remarks>
/// The pressure equation of a cell is the balance of total volume: liquid counts by the air that it takes the room of, so that storing one
/// for the other drops out. Constrained pressure residual method (Wallis 1983), remembered.
/// </remarks>
internal sealed class TwoStageHelp(BlockMatrix matrix)
{
    private readonly PressureMultigrid _multigrid = new();
    private readonly IncompleteFactor _factor = new(matrix);
    private readonly float[] _weight = new float[2 * matrix.Rows];
    private readonly float[] _byPressure = new float[2 * matrix.Layout.Column.Length];
    private readonly float[] _pressureValue = new float[matrix.Layout.Column.Length];
    private readonly float[] _pressureRight = new float[matrix.Rows];
    private readonly float[] _pressure = new float[matrix.Rows];

    /// <summary>Takes the matrix as it now stands; false where a cell's own block is singular.</summary>
    /// <param name="state">Air pressure (Pa) and saturation, cell by cell.</param>
    /// <param name="regroup">Whether the coarse grids are to be chosen anew.</param>
    public bool SetUp(double[] state, bool regroup)
    {
        if (!_factor.Factor())
            return false;
        Halves.Run(matrix.Rows, (first, end) => Weigh(state, first, end));
        if (regroup)
            _multigrid.Group(matrix.Layout, _pressureValue);
        else
            _multigrid.Refresh();
        return true;
    }

    private void Weigh(double[] state, int first, int end)
    {
        var rowStart = matrix.Layout.RowStart;
        ref var block = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var pressureValue = ref MemoryMarshal.GetArrayDataReference(_pressureValue);
        for (var i = first; i < end; i++)
        {
            var pressure = (float)(state[2 * i] / FlowKernel.ReferencePa);
            var (liquid, air) = (pressure / (1 + pressure), 1 / (1 + pressure));
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
    public void Apply(float[] right, float[] x)
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
    private void LeftOver(float[] right, float[] left, int first, int end)
    {
        var rowStart = matrix.Layout.RowStart;
        ref var pressure = ref MemoryMarshal.GetArrayDataReference(_pressure);
        ref var column = ref MemoryMarshal.GetArrayDataReference(matrix.Layout.Column);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var rights = ref MemoryMarshal.GetArrayDataReference(right);
        ref var lefts = ref MemoryMarshal.GetArrayDataReference(left);
        for (var i = first; i < end; i++)
        {
            var pair = BlockPair.Twice(ref rights, i);
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                pair -=
                    BlockPair.Twice(ref byPressure, k)
                    * Vector128.Create(Unsafe.Add(ref pressure, Unsafe.Add(ref column, k)));
            BlockPair.Store(pair, ref lefts, i);
        }
    }
}

using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Constrained pressure residual (CPR) preconditioner: first the pressures by one multigrid cycle, then both unknowns by block ILU(0).</summary>
/// <param name="matrix">The matrix A of pairs (pressure, saturation).</param>
/// <param name="pressureWeight">For each row, what its two equations count in the pressure equation; filled anew before each <see cref="SetUp"/>.</param>
/// <remarks>
/// With R the weighted sum of a cell's two equations and P the injection of pressures:
/// M⁻¹ = ILU⁻¹·(I − A·P·AMG⁻¹·R) + P·AMG⁻¹·R, where AMG ≈ R·A·P. Wallis, "Incomplete Gaussian elimination as a preconditioning for
/// generalized conjugate gradient acceleration" (SPE 12265, 1983); the two stages as in Wallis, Kendall and Little (SPE 13536, 1985).
/// </remarks>
internal sealed class CprPreconditioner<T>(BlockCsrMatrix<T> matrix, T[] pressureWeight) : IPreconditioner<T>
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    private readonly AggregationAmg<T> _multigrid = new();
    private readonly BlockIlu0<T> _ilu = new(matrix);
    private readonly T[] _byPressure = new T[2 * matrix.Pattern.Csr.Column.Length];
    private readonly T[] _pressureValue = new T[matrix.Pattern.Csr.Column.Length];
    private readonly T[] _pressureRight = new T[matrix.Rows];
    private readonly T[] _pressure = new T[matrix.Rows];

    /// <inheritdoc/>
    public FactorOutcome SetUp(bool coarsen)
    {
        if (_ilu.Factor() == FactorOutcome.SingularBlock)
            return FactorOutcome.SingularBlock;
        matrix.Pattern.Csr.Partition.Run(matrix.Rows, WeighEquations);
        if (coarsen)
            _multigrid.Coarsen(matrix.Pattern.Csr, _pressureValue);
        else
            _multigrid.Refresh();
        return FactorOutcome.Factored;
    }

    private void WeighEquations(int first, int end)
    {
        var rowStart = matrix.Pattern.Csr.RowStart;
        ref var block = ref MemoryMarshal.GetArrayDataReference(matrix.Value);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var pressureValue = ref MemoryMarshal.GetArrayDataReference(_pressureValue);
        for (var i = first; i < end; i++)
        {
            var (liquid, air) = (pressureWeight[2 * i], pressureWeight[2 * i + 1]);
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
            {
                var (liquidByP, airByP) = (Unsafe.Add(ref block, 4 * k), Unsafe.Add(ref block, 4 * k + 2));
                Unsafe.Add(ref byPressure, 2 * k) = liquidByP;
                Unsafe.Add(ref byPressure, 2 * k + 1) = airByP;
                Unsafe.Add(ref pressureValue, k) = liquid * liquidByP + air * airByP;
            }
        }
    }

    /// <inheritdoc/>
    public void Apply(T[] r, T[] z)
    {
        var partition = matrix.Pattern.Csr.Partition;
        partition.Run(
            matrix.Rows,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    _pressureRight[i] = pressureWeight[2 * i] * r[2 * i] + pressureWeight[2 * i + 1] * r[2 * i + 1];
            }
        );
        _multigrid.Cycle(_pressureRight, _pressure);
        partition.Run(matrix.Rows, (first, end) => SubtractPressures(r, z, first, end));
        _ilu.Solve(z);
        partition.Run(
            matrix.Rows,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    z[2 * i] += _pressure[i];
            }
        );
    }

    // What the pressures found leave over: r − A·P·p.
    private void SubtractPressures(T[] r, T[] left, int first, int end)
    {
        var rowStart = matrix.Pattern.Csr.RowStart;
        ref var pressure = ref MemoryMarshal.GetArrayDataReference(_pressure);
        ref var column = ref MemoryMarshal.GetArrayDataReference(matrix.Pattern.Csr.Column);
        ref var byPressure = ref MemoryMarshal.GetArrayDataReference(_byPressure);
        ref var rights = ref MemoryMarshal.GetArrayDataReference(r);
        ref var lefts = ref MemoryMarshal.GetArrayDataReference(left);
        for (var i = first; i < end; i++)
        {
            var pair = Block2x2.Twice(ref rights, i);
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                pair -=
                    Block2x2.Twice(ref byPressure, k)
                    * Vector256.Create(Unsafe.Add(ref pressure, Unsafe.Add(ref column, k)));
            Block2x2.StorePair(pair, ref lefts, i);
        }
    }
}

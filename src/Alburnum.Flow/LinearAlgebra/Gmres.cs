using System.Numerics;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Restarted GMRES, preconditioned from the right, in single or double precision.</summary>
/// <param name="matrix">The matrix A.</param>
/// <param name="preconditioner">The approximate inverse M⁻¹.</param>
/// <param name="restart">Directions after which the method starts anew, 1 or more.</param>
/// <param name="relativeTolerance">‖b − A·x‖/‖b‖ from which x is good enough.</param>
/// <param name="maxIterations">Iterations allowed over all restarts.</param>
/// <remarks>
/// Minimises ‖b − A·x‖ over x ∈ M⁻¹·span{r, AM⁻¹r, (AM⁻¹)²r, …}: Arnoldi by modified Gram–Schmidt, least squares by Givens rotations.
/// Saad and Schultz, "GMRES: a generalized minimal residual algorithm" (1986); Saad, Iterative Methods for Sparse Linear Systems (2nd ed.
/// 2003), 6.5 and 9.3. The preconditioned directions are kept, as in flexible GMRES (9.4), so that putting x together costs no further
/// preconditioning.
/// </remarks>
internal sealed class Gmres<T>(
    BlockCsrMatrix<T> matrix,
    IPreconditioner<T> preconditioner,
    int restart,
    double relativeTolerance,
    int maxIterations
) : ILinearSolver
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // Coarse grids that no longer fit show in the number of iterations.
    private const int CoarsenAbove = 8;
    private readonly VectorKernels<T> _vectors = new(matrix.Pattern.Csr.Partition);
    private readonly T[] _sum = new T[2 * matrix.Rows];
    private readonly List<T[]> _basis = [];
    private readonly List<T[]> _preconditioned = [];
    private int _iterations = int.MaxValue;

    /// <inheritdoc/>
    public LinearOutcome Solve(double[] right, double[] x)
    {
        if (preconditioner.SetUp(coarsen: _iterations > CoarsenAbove) == FactorOutcome.SingularBlock)
            return LinearOutcome.Singular;
        _iterations = 0;
        var size = _vectors.Norm(right);
        if (size == 0)
        {
            Array.Clear(x);
            return LinearOutcome.Exact;
        }
        // Everything is brought to the size of one, which keeps single precision away from its ends.
        Array.Clear(_sum);
        _vectors.Scaled(right, 1 / size, At(_basis, 0));
        var left = 1.0;
        while (left > relativeTolerance && _iterations < maxIterations)
        {
            left = Cycle();
            if (!double.IsFinite(left))
                return new LinearOutcome(LinearEnding.PrecisionExhausted, _iterations, 1);
            if (left > relativeTolerance)
                left = Residual(right, size, At(_basis, 0));
        }
        _vectors.Scaled(_sum, size, x);
        return new LinearOutcome(
            left <= relativeTolerance ? LinearEnding.Converged : LinearEnding.Stagnated,
            _iterations,
            left
        );
    }

    // The residual as it truly is, where the method's own count was not enough.
    private double Residual(double[] right, double size, T[] residual)
    {
        matrix.Multiply(_sum, residual);
        for (var i = 0; i < right.Length; i++)
            residual[i] = T.CreateTruncating(right[i] / size) - residual[i];
        return _vectors.Norm(residual);
    }

    // From the residual in the first place of the basis; adds to the sum and says what is left over.
    private double Cycle()
    {
        var leastSquares = new HessenbergLeastSquares(restart, _vectors.Norm(_basis[0]));
        _vectors.Scale(_basis[0], 1 / leastSquares.Residual);
        var h = new double[restart + 1];
        while (
            leastSquares.Columns < restart && leastSquares.Residual > relativeTolerance && _iterations < maxIterations
        )
        {
            _iterations++;
            var k = leastSquares.Columns;
            preconditioner.Apply(_basis[k], At(_preconditioned, k));
            var next = At(_basis, k + 1);
            matrix.Multiply(_preconditioned[k], next);
            for (var i = 0; i <= k; i++)
            {
                h[i] = _vectors.Dot(next, _basis[i]);
                _vectors.AddScaled(next, -h[i], _basis[i]);
            }
            h[k + 1] = _vectors.Norm(next);
            if (h[k + 1] > 0)
                _vectors.Scale(next, 1 / h[k + 1]);
            if (leastSquares.Add(h) == ColumnOutcome.Zero)
                break;
        }
        var y = leastSquares.Solve();
        for (var i = 0; i < y.Length; i++)
            _vectors.AddScaled(_sum, y[i], _preconditioned[i]);
        return leastSquares.Residual;
    }

    private T[] At(List<T[]> vectors, int k)
    {
        if (vectors.Count == k)
            vectors.Add(new T[2 * matrix.Rows]);
        return vectors[k];
    }
}

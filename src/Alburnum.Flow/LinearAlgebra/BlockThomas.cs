namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Solves a block tridiagonal system exactly by the block Thomas algorithm: elimination down the line, substitution back up.</summary>
/// <remarks>
/// With blocks Lᵢ, Dᵢ, Uᵢ of row i: Pᵢ = Dᵢ − Lᵢ·Cᵢ₋₁, Cᵢ = Pᵢ⁻¹·Uᵢ, yᵢ = Pᵢ⁻¹·(bᵢ − Lᵢ·yᵢ₋₁); then xᵢ = yᵢ − Cᵢ·xᵢ₊₁. Golub and
/// Van Loan, Matrix Computations, on block tridiagonal systems. No exchange of rows: storage keeps the pivots away from zero.
/// </remarks>
internal sealed class BlockThomas(BlockCsrMatrix<double> matrix) : ILinearSolver
{
    private readonly double[] _reduced = new double[4 * matrix.Rows];

    /// <inheritdoc/>
    public LinearOutcome Solve(double[] right, double[] x)
    {
        var rows = matrix.Rows;
        Span<double> pivot = stackalloc double[4];
        Span<double> off = stackalloc double[4];
        for (var i = 0; i < rows; i++)
        {
            matrix.Value.AsSpan(4 * matrix.Pattern.Csr.RowStart[i], 4).CopyTo(pivot);
            var (b0, b1) = (right[2 * i], right[2 * i + 1]);
            if (i > 0 && Block(i, i - 1, off))
            {
                var c = _reduced.AsSpan(4 * (i - 1), 4);
                pivot[0] -= off[0] * c[0] + off[1] * c[2];
                pivot[1] -= off[0] * c[1] + off[1] * c[3];
                pivot[2] -= off[2] * c[0] + off[3] * c[2];
                pivot[3] -= off[2] * c[1] + off[3] * c[3];
                b0 -= off[0] * x[2 * i - 2] + off[1] * x[2 * i - 1];
                b1 -= off[2] * x[2 * i - 2] + off[3] * x[2 * i - 1];
            }
            var determinant = pivot[0] * pivot[3] - pivot[1] * pivot[2];
            if (determinant == 0 || !double.IsFinite(determinant))
                return LinearOutcome.Singular;
            x[2 * i] = (pivot[3] * b0 - pivot[1] * b1) / determinant;
            x[2 * i + 1] = (pivot[0] * b1 - pivot[2] * b0) / determinant;
            var r = _reduced.AsSpan(4 * i, 4);
            r.Clear();
            if (i + 1 == rows || !Block(i, i + 1, off))
                continue;
            r[0] = (pivot[3] * off[0] - pivot[1] * off[2]) / determinant;
            r[1] = (pivot[3] * off[1] - pivot[1] * off[3]) / determinant;
            r[2] = (pivot[0] * off[2] - pivot[2] * off[0]) / determinant;
            r[3] = (pivot[0] * off[3] - pivot[2] * off[1]) / determinant;
        }
        for (var i = rows - 2; i >= 0; i--)
        {
            var c = _reduced.AsSpan(4 * i, 4);
            x[2 * i] -= c[0] * x[2 * i + 2] + c[1] * x[2 * i + 3];
            x[2 * i + 1] -= c[2] * x[2 * i + 2] + c[3] * x[2 * i + 3];
        }
        return LinearOutcome.Exact;
    }

    private bool Block(int row, int column, Span<double> block)
    {
        var csr = matrix.Pattern.Csr;
        for (var k = csr.RowStart[row] + 1; k < csr.RowStart[row + 1]; k++)
        {
            if (csr.Column[k] != column)
                continue;
            matrix.Value.AsSpan(4 * k, 4).CopyTo(block);
            return true;
        }
        return false;
    }
}

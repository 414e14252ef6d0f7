namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Solves the Newton equations of a line of cells exactly: block elimination down, substitution up.</summary>
internal sealed class LineElimination(BlockMatrix<double> matrix) : INewtonEquations
{
    private readonly double[] _reduced = new double[4 * matrix.Rows];

    /// <inheritdoc/>
    public int Iterations => 0;

    /// <inheritdoc/>
    public bool Solve(double[] state, double[] right, double[] x)
    {
        var rows = matrix.Rows;
        Span<double> pivot = stackalloc double[4];
        Span<double> below = stackalloc double[4];
        for (var i = 0; i < rows; i++)
        {
            matrix.Value.AsSpan(4 * matrix.Blocks.Rows.RowStart[i], 4).CopyTo(pivot);
            var (b0, b1) = (right[2 * i], right[2 * i + 1]);
            if (i > 0 && Block(i, i - 1, below))
            {
                var c = _reduced.AsSpan(4 * (i - 1), 4);
                pivot[0] -= below[0] * c[0] + below[1] * c[2];
                pivot[1] -= below[0] * c[1] + below[1] * c[3];
                pivot[2] -= below[2] * c[0] + below[3] * c[2];
                pivot[3] -= below[2] * c[1] + below[3] * c[3];
                b0 -= below[0] * x[2 * i - 2] + below[1] * x[2 * i - 1];
                b1 -= below[2] * x[2 * i - 2] + below[3] * x[2 * i - 1];
            }
            var determinant = pivot[0] * pivot[3] - pivot[1] * pivot[2];
            if (determinant == 0 || !double.IsFinite(determinant))
                return false;
            x[2 * i] = (pivot[3] * b0 - pivot[1] * b1) / determinant;
            x[2 * i + 1] = (pivot[0] * b1 - pivot[2] * b0) / determinant;
            var r = _reduced.AsSpan(4 * i, 4);
            if (i + 1 < rows && Block(i, i + 1, below))
            {
                r[0] = (pivot[3] * below[0] - pivot[1] * below[2]) / determinant;
                r[1] = (pivot[3] * below[1] - pivot[1] * below[3]) / determinant;
                r[2] = (pivot[0] * below[2] - pivot[2] * below[0]) / determinant;
                r[3] = (pivot[0] * below[3] - pivot[2] * below[1]) / determinant;
            }
            else
            {
                r.Clear();
            }
        }
        for (var i = rows - 2; i >= 0; i--)
        {
            var c = _reduced.AsSpan(4 * i, 4);
            x[2 * i] -= c[0] * x[2 * i + 2] + c[1] * x[2 * i + 3];
            x[2 * i + 1] -= c[2] * x[2 * i + 2] + c[3] * x[2 * i + 3];
        }
        return true;
    }

    private bool Block(int row, int column, Span<double> block)
    {
        for (var k = matrix.Blocks.Rows.RowStart[row] + 1; k < matrix.Blocks.Rows.RowStart[row + 1]; k++)
        {
            if (matrix.Blocks.Rows.Column[k] != column)
                continue;
            matrix.Value.AsSpan(4 * k, 4).CopyTo(block);
            return true;
        }
        return false;
    }
}

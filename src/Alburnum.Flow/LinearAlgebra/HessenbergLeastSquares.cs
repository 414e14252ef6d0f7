namespace Alburnum.Flow.LinearAlgebra;

/// <summary>What became of a column that was to be added.</summary>
internal enum ColumnOutcome
{
    /// <summary>It was added.</summary>
    Added,

    /// <summary>It is nothing but zeros and was not added: the directions so far hold all that can be reached (a breakdown of Arnoldi's method).</summary>
    Zero,
}

/// <summary>min ‖βe₁ − H·y‖ for an upper Hessenberg H that grows by a column at a time, by Givens rotations.</summary>
/// <remarks>Saad, Iterative Methods for Sparse Linear Systems (2nd ed. 2003), 6.5.3.</remarks>
internal sealed class HessenbergLeastSquares
{
    private readonly double[,] _r;
    private readonly double[] _cosine;
    private readonly double[] _sine;
    private readonly double[] _g;

    /// <summary>No columns yet.</summary>
    /// <param name="most">Columns at most.</param>
    /// <param name="beta">Length β of the right-hand side.</param>
    public HessenbergLeastSquares(int most, double beta)
    {
        (_r, _cosine, _sine, _g) = (new double[most, most], new double[most], new double[most], new double[most + 1]);
        _g[0] = beta;
    }

    /// <summary>Columns so far.</summary>
    public int Columns { get; private set; }

    /// <summary>Least ‖βe₁ − H·y‖ with the columns so far.</summary>
    public double Residual => Math.Abs(_g[Columns]);

    /// <summary>Adds a column of H unless it is nothing but zeros.</summary>
    /// <param name="h">The column, one entry more than there are columns with it.</param>
    public ColumnOutcome Add(ReadOnlySpan<double> h)
    {
        var k = Columns;
        var upper = h[0];
        for (var i = 0; i < k; i++)
        {
            _r[i, k] = _cosine[i] * upper + _sine[i] * h[i + 1];
            upper = _cosine[i] * h[i + 1] - _sine[i] * upper;
        }
        var radius = Math.Sqrt(upper * upper + h[k + 1] * h[k + 1]);
        if (radius == 0)
            return ColumnOutcome.Zero;
        (_cosine[k], _sine[k]) = (upper / radius, h[k + 1] / radius);
        _r[k, k] = radius;
        _g[k + 1] = -_sine[k] * _g[k];
        _g[k] *= _cosine[k];
        Columns++;
        return ColumnOutcome.Added;
    }

    /// <summary>The y of least residual, one number a column.</summary>
    public double[] Solve()
    {
        var y = new double[Columns];
        for (var i = y.Length - 1; i >= 0; i--)
        {
            var sum = _g[i];
            for (var j = i + 1; j < y.Length; j++)
                sum -= _r[i, j] * y[j];
            y[i] = sum / _r[i, i];
        }
        return y;
    }
}

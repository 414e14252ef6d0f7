using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Alburnum.Impregnation.Flow;

/// <summary>
/// Solves the Newton equations of a sheet or block of cells: GMRES, helped first by multigrid on pressure, then by a sweep
/// there and back over both unknowns.
/// </summary>
/// <remarks>
/// The pressure equation of a cell is the sum of its two balances weighted so that its own saturation drops out: the balance
/// of total volume. Constrained pressure residual method (Wallis 1983), remembered.
/// </remarks>
internal sealed class TwoStageKrylov : INewtonEquations
{
    private const int Restart = 20;

    // Far from the front corrections fade below what a double holds at full speed; adding and taking away a speck clears them.
    private static readonly Vector128<double> Speck = Vector128.Create(1e-150);
    private const int RegroupAbove = 8;
    private const int MaxIterations = 120;
    private readonly BlockMatrix _matrix;
    private readonly PressureMultigrid _multigrid = new();
    private readonly double[] _weight;
    private readonly double[] _inverse;
    private readonly double[] _pressureValue;
    private readonly double[] _pressureRight;
    private readonly double[] _pressure;
    private readonly double[] _residual;
    private readonly List<double[]> _basis = [];
    private readonly List<double[]> _helped = [];

    public TwoStageKrylov(BlockMatrix matrix)
    {
        _matrix = matrix;
        _weight = new double[2 * matrix.Rows];
        _inverse = new double[4 * matrix.Rows];
        _pressureValue = new double[matrix.Column.Length];
        _pressureRight = new double[matrix.Rows];
        _pressure = new double[matrix.Rows];
        _residual = new double[2 * matrix.Rows];
    }

    /// <summary>Iterations of the last solve.</summary>
    public int Iterations { get; private set; }

    public bool Solve(double[] right, double[] x, double tolerance)
    {
        if (!SetUp())
            return false;
        var n = right.Length;
        Array.Clear(x);
        var residual = _residual;
        right.CopyTo(residual, 0);
        var norm = Norm(residual);
        var target = norm * tolerance;
        Iterations = 0;
        if (norm == 0)
            return true;
        while (Iterations < MaxIterations)
        {
            norm = Cycle(residual, norm, x, target);
            if (!double.IsFinite(norm))
                return false;
            if (norm <= target)
                return true;
            _matrix.Multiply(x, residual);
            for (var i = 0; i < n; i++)
                residual[i] = right[i] - residual[i];
            norm = Norm(residual);
        }
        return norm <= 100 * target;
    }

    private double Cycle(double[] residual, double norm, double[] x, double target)
    {
        var h = new double[Restart + 1, Restart];
        var cosine = new double[Restart];
        var sine = new double[Restart];
        var g = new double[Restart + 1];
        g[0] = norm;
        Scaled(residual, 1 / norm, At(_basis, 0));
        var k = 0;
        for (; k < Restart && Math.Abs(g[k]) > target && Iterations < MaxIterations; k++)
        {
            Iterations++;
            Precondition(_basis[k], At(_helped, k));
            var next = At(_basis, k + 1);
            _matrix.Multiply(_helped[k], next);
            for (var i = 0; i <= k; i++)
            {
                h[i, k] = Dot(next, _basis[i]);
                AddScaled(next, -h[i, k], _basis[i]);
            }
            var length = h[k + 1, k] = Norm(next);
            if (length > 0)
                Scaled(next, 1 / length, next);
            for (var i = 0; i < k; i++)
            {
                (h[i, k], h[i + 1, k]) = (
                    cosine[i] * h[i, k] + sine[i] * h[i + 1, k],
                    cosine[i] * h[i + 1, k] - sine[i] * h[i, k]
                );
            }
            var radius = Math.Sqrt(h[k, k] * h[k, k] + length * length);
            if (radius == 0)
                break;
            cosine[k] = h[k, k] / radius;
            sine[k] = length / radius;
            h[k, k] = radius;
            g[k + 1] = -sine[k] * g[k];
            g[k] *= cosine[k];
        }
        var y = new double[k];
        for (var i = k - 1; i >= 0; i--)
        {
            var sum = g[i];
            for (var j = i + 1; j < k; j++)
                sum -= h[i, j] * y[j];
            y[i] = sum / h[i, i];
        }
        // The helped directions are kept: putting the answer together costs no further help.
        for (var i = 0; i < k; i++)
            AddScaled(x, y[i], _helped[i]);
        return Math.Abs(g[k]);
    }

    private bool SetUp()
    {
        var (rowStart, value) = (_matrix.RowStart, _matrix.Value);
        for (var i = 0; i < _matrix.Rows; i++)
        {
            var d = value.AsSpan(4 * rowStart[i], 4);
            var determinant = d[0] * d[3] - d[1] * d[2];
            if (determinant == 0 || !double.IsFinite(determinant))
                return false;
            _inverse[4 * i] = d[3] / determinant;
            // By columns.
            _inverse[4 * i + 1] = -d[2] / determinant;
            _inverse[4 * i + 2] = -d[1] / determinant;
            _inverse[4 * i + 3] = d[0] / determinant;
            var scale = Math.Abs(d[1]) + Math.Abs(d[3]);
            var sign = d[3] < 0 ? -1 : 1;
            _weight[2 * i] = sign * d[3] / scale;
            _weight[2 * i + 1] = -sign * d[1] / scale;
            for (var k = rowStart[i]; k < rowStart[i + 1]; k++)
                _pressureValue[k] = _weight[2 * i] * value[4 * k] + _weight[2 * i + 1] * value[4 * k + 2];
        }
        if (_multigrid.LevelCount == 0 || Iterations > RegroupAbove)
            _multigrid.Group(rowStart, _matrix.Column, _pressureValue);
        else
            _multigrid.Refresh();
        return true;
    }

    private void Precondition(double[] right, double[] x)
    {
        for (var i = 0; i < _matrix.Rows; i++)
            _pressureRight[i] = _weight[2 * i] * right[2 * i] + _weight[2 * i + 1] * right[2 * i + 1];
        _multigrid.Cycle(_pressureRight, _pressure);
        for (var i = 0; i < _matrix.Rows; i++)
        {
            x[2 * i] = _pressure[i];
            x[2 * i + 1] = 0;
        }
        for (var i = 0; i < _matrix.Rows; i++)
            Relax(i, right, x);
        for (var i = _matrix.Rows - 1; i >= 0; i--)
            Relax(i, right, x);
    }

    // Read and written as one pair: the next cell needs the pair at once, and two halves would make it wait.
    private void Relax(int i, double[] right, double[] x)
    {
        ref var rights = ref MemoryMarshal.GetArrayDataReference(right);
        ref var inverses = ref MemoryMarshal.GetArrayDataReference(_inverse);
        var pair = Vector128.LoadUnsafe(ref rights, (nuint)(2 * i)) - _matrix.RowTimes(i, _matrix.RowStart[i] + 1, x);
        var byFirst = Vector128.LoadUnsafe(ref inverses, (nuint)(4 * i)) * pair.GetElement(0);
        var bySecond = Vector128.LoadUnsafe(ref inverses, (nuint)(4 * i + 2)) * pair.GetElement(1);
        (byFirst + bySecond + Speck - Speck).StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(x), (nuint)(2 * i));
    }

    private double[] At(List<double[]> vectors, int k)
    {
        if (vectors.Count == k)
            vectors.Add(new double[2 * _matrix.Rows]);
        return vectors[k];
    }

    private static double Norm(double[] v) => Math.Sqrt(Dot(v, v));

    private static double Dot(double[] a, double[] b)
    {
        var lanes = Vector<double>.Zero;
        var width = Vector<double>.Count;
        var i = 0;
        for (; i <= a.Length - width; i += width)
            lanes += new Vector<double>(a, i) * new Vector<double>(b, i);
        var sum = Vector.Sum(lanes);
        for (; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static void AddScaled(double[] y, double factor, double[] x)
    {
        var width = Vector<double>.Count;
        var i = 0;
        for (; i <= y.Length - width; i += width)
            (new Vector<double>(y, i) + factor * new Vector<double>(x, i)).CopyTo(y, i);
        for (; i < y.Length; i++)
            y[i] += factor * x[i];
    }

    private static void Scaled(double[] x, double factor, double[] y)
    {
        for (var i = 0; i < x.Length; i++)
            y[i] = factor * x[i];
    }
}

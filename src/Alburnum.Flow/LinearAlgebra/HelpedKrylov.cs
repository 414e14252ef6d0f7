using System.Numerics;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>Solves the Newton equations of a sheet or block of cells: GMRES with a rough answer's help, in single or double precision.</summary>
/// <remarks>Newton's next iteration mends what is left over, so that neither closeness nor digits are needed here.</remarks>
internal sealed class HelpedKrylov<T> : INewtonEquations
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    // Part of the right-hand side that may be left over: closer costs more than it saves Newton.
    private const double Tolerance = 0.1;
    private const int Restart = 12;
    private static readonly int MaxIterations = typeof(T) == typeof(float) ? 40 : 120;

    // Coarse grids that no longer fit show in the number of iterations.
    private const int RegroupAbove = 8;
    private readonly BlockMatrix<T> _matrix;
    private readonly TwoStageHelp<T> _help;
    private readonly T[] _sum;
    private readonly List<T[]> _basis = [];
    private readonly List<T[]> _helped = [];

    public HelpedKrylov(BlockMatrix<T> matrix)
    {
        _matrix = matrix;
        _help = new TwoStageHelp<T>(matrix);
        _sum = new T[2 * matrix.Rows];
    }

    /// <inheritdoc/>
    public int Iterations { get; private set; } = MaxIterations;

    /// <inheritdoc/>
    public bool Solve(double[] state, double[] right, double[] x)
    {
        if (!_help.SetUp(state, Iterations > RegroupAbove))
            return false;
        Iterations = 0;
        var size = Size(right);
        if (size == 0)
        {
            Array.Clear(x);
            return true;
        }
        // Everything is brought to the size of one, which keeps single precision away from its ends.
        Array.Clear(_sum);
        var residual = At(_basis, 0);
        Halves.Run(
            right.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    residual[i] = T.CreateTruncating(right[i] * (1 / size));
            }
        );
        var left = 1.0;
        while (left > Tolerance && Iterations < MaxIterations)
        {
            left = Cycle();
            if (!double.IsFinite(left))
                return false;
            if (left <= Tolerance)
                break;
            _matrix.Multiply(_sum, residual);
            for (var i = 0; i < right.Length; i++)
                residual[i] = T.CreateTruncating(right[i] / size) - residual[i];
            left = Norm(residual);
        }
        Halves.Run(
            x.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    x[i] = size * double.CreateTruncating(_sum[i]);
            }
        );
        return left <= (typeof(T) == typeof(float) ? Tolerance : 1);
    }

    // From the residual in the first place of the basis; adds to the sum and says what is left over.
    private double Cycle()
    {
        var h = new double[Restart + 1, Restart];
        var (cosine, sine, g) = (new double[Restart], new double[Restart], new double[Restart + 1]);
        g[0] = Norm(_basis[0]);
        Scale(_basis[0], 1 / g[0]);
        var k = 0;
        for (; k < Restart && Math.Abs(g[k]) > Tolerance && Iterations < MaxIterations; k++)
        {
            Iterations++;
            _help.Apply(_basis[k], At(_helped, k));
            var next = At(_basis, k + 1);
            _matrix.Multiply(_helped[k], next);
            for (var i = 0; i <= k; i++)
            {
                h[i, k] = Dot(next, _basis[i]);
                AddScaled(next, -h[i, k], _basis[i]);
            }
            var length = h[k + 1, k] = Norm(next);
            if (length > 0)
                Scale(next, 1 / length);
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
            (cosine[k], sine[k]) = (h[k, k] / radius, length / radius);
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
            AddScaled(_sum, y[i], _helped[i]);
        return Math.Abs(g[k]);
    }

    private T[] At(List<T[]> vectors, int k)
    {
        if (vectors.Count == k)
            vectors.Add(new T[2 * _matrix.Rows]);
        return vectors[k];
    }

    private static double Size(double[] v) =>
        Math.Sqrt(
            Halves.Sum(
                v.Length,
                (first, end) =>
                {
                    double sum = 0;
                    for (var i = first; i < end; i++)
                        sum += v[i] * v[i];
                    return sum;
                }
            )
        );

    private static double Norm(T[] v) => Math.Sqrt(Dot(v, v));

    private static double Dot(T[] a, T[] b) =>
        Halves.Sum(
            a.Length,
            (first, end) =>
            {
                var lanes = Vector<T>.Zero;
                var i = first;
                for (; i <= end - Vector<T>.Count; i += Vector<T>.Count)
                    lanes += new Vector<T>(a, i) * new Vector<T>(b, i);
                var sum = double.CreateTruncating(Vector.Sum(lanes));
                for (; i < end; i++)
                    sum += double.CreateTruncating(a[i] * b[i]);
                return sum;
            }
        );

    private static void AddScaled(T[] y, double factor, T[] x) =>
        Halves.Run(
            y.Length,
            (first, end) =>
            {
                var by = T.CreateTruncating(factor);
                var i = first;
                for (; i <= end - Vector<T>.Count; i += Vector<T>.Count)
                    (new Vector<T>(y, i) + by * new Vector<T>(x, i)).CopyTo(y, i);
                for (; i < end; i++)
                    y[i] += by * x[i];
            }
        );

    private static void Scale(T[] x, double factor) =>
        Halves.Run(
            x.Length,
            (first, end) =>
            {
                var by = T.CreateTruncating(factor);
                for (var i = first; i < end; i++)
                    x[i] *= by;
            }
        );
}

using Alburnum.Imaging.Outcomes;

namespace Alburnum.Imaging.Geometry;

/// <summary>A linear system without a solution of its own.</summary>
/// <param name="Column">The first column, from 0, that those before it leave nothing of.</param>
internal readonly record struct Singular(int Column);

/// <summary>Small dense linear systems, solved so often that they must not cost an allocation of a library's matrices.</summary>
internal static class LinearSystem
{
    /// <summary>A pivot smaller than this is none. The systems here are scaled to about 1.</summary>
    private const double LeastPivot = 1e-14;

    /// <summary>Solves a·x = b by Gaussian elimination with partial pivoting; a and b are overwritten.</summary>
    public static Outcome<double[], Singular> Solve(double[,] a, double[] b)
    {
        var n = b.Length;
        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
                if (Math.Abs(a[i, k]) > Math.Abs(a[pivot, k]))
                    pivot = i;
            if (pivot != k)
            {
                for (var j = 0; j < n; j++)
                    (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
                (b[k], b[pivot]) = (b[pivot], b[k]);
            }
            if (!(Math.Abs(a[k, k]) >= LeastPivot))
                return new Singular(k);
            for (var i = k + 1; i < n; i++)
            {
                var factor = a[i, k] / a[k, k];
                for (var j = k; j < n; j++)
                    a[i, j] -= factor * a[k, j];
                b[i] -= factor * b[k];
            }
        }
        var x = new double[n];
        for (var i = n - 1; i >= 0; i--)
        {
            var sum = b[i];
            for (var j = i + 1; j < n; j++)
                sum -= a[i, j] * x[j];
            x[i] = sum / a[i, i];
        }
        return x;
    }

    /// <summary>The inverse. The matrix is left as it is.</summary>
    public static Outcome<double[,], Singular> Inverse(double[,] a)
    {
        var n = a.GetLength(0);
        var inverse = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            var unit = new double[n];
            unit[k] = 1;
            if (!Solve((double[,])a.Clone(), unit).Has(out var column, out var singular))
                return singular;
            for (var j = 0; j < n; j++)
                inverse[j, k] = column[j];
        }
        return inverse;
    }
}

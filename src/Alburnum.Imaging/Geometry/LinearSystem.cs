namespace Alburnum.Imaging.Geometry;

/// <summary>Small dense linear systems.</summary>
internal static class LinearSystem
{
    /// <summary>Solves a·x = b by elimination with pivoting; a and b are overwritten. A singular direction gets 0.</summary>
    public static double[] Solve(double[,] a, double[] b)
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
            if (Math.Abs(a[k, k]) < 1e-14)
                continue;
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
            x[i] = Math.Abs(a[i, i]) < 1e-14 ? 0 : sum / a[i, i];
        }
        return x;
    }
}

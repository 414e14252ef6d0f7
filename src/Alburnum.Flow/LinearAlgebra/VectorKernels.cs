using System.Numerics;
using Alburnum.Flow.Partitioning;

namespace Alburnum.Flow.LinearAlgebra;

/// <summary>The vector operations of a Krylov method, several lanes at a time and in two parts where the vectors are long.</summary>
internal sealed class VectorKernels<T>(TwoWayPartition partition)
    where T : unmanaged, IBinaryFloatingPointIeee754<T>
{
    /// <summary>‖v‖, for a vector in double precision.</summary>
    public double Norm(double[] v) =>
        Math.Sqrt(
            partition.Sum(
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

    /// <summary>‖v‖.</summary>
    public double Norm(T[] v) => Math.Sqrt(Dot(v, v));

    /// <summary>a·b.</summary>
    public double Dot(T[] a, T[] b) =>
        partition.Sum(
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

    /// <summary>y += factor·x.</summary>
    public void AddScaled(T[] y, double factor, T[] x) =>
        partition.Run(
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

    /// <summary>x *= factor.</summary>
    public void Scale(T[] x, double factor) =>
        partition.Run(
            x.Length,
            (first, end) =>
            {
                var by = T.CreateTruncating(factor);
                for (var i = first; i < end; i++)
                    x[i] *= by;
            }
        );

    /// <summary>y = factor·x, from double precision.</summary>
    public void Scaled(double[] x, double factor, T[] y) =>
        partition.Run(
            x.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    y[i] = T.CreateTruncating(x[i] * factor);
            }
        );

    /// <summary>y = factor·x, to double precision.</summary>
    public void Scaled(T[] x, double factor, double[] y) =>
        partition.Run(
            x.Length,
            (first, end) =>
            {
                for (var i = first; i < end; i++)
                    y[i] = factor * double.CreateTruncating(x[i]);
            }
        );
}

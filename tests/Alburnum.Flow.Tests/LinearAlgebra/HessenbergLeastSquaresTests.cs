using Alburnum.Flow.LinearAlgebra;
using CsCheck;

namespace Alburnum.Flow.Tests.LinearAlgebra;

public class HessenbergLeastSquaresTests
{
    [Fact]
    public void The_residual_it_counts_is_the_residual_of_its_answer_and_no_neighbour_is_better()
    {
        Gen.Select(Gen.Double[-2, 2].Array[10], Gen.Double[0.3, 2].Array[4], Gen.Double[0.1, 3])
            .Sample(
                (upper, below, beta) =>
                {
                    // Four columns of a Hessenberg matrix: what lies below the diagonal are lengths, above 0.
                    double[][] h =
                    [
                        [.. upper[..1], below[0]],
                        [.. upper[1..3], below[1]],
                        [.. upper[3..6], below[2]],
                        [.. upper[6..10], below[3]],
                    ];
                    var squares = new HessenbergLeastSquares(most: 4, beta);
                    foreach (var column in h)
                        Assert.Equal(ColumnOutcome.Added, squares.Add(column));
                    var y = squares.Solve();

                    Assert.Equal(Residual(h, beta, y), squares.Residual, 1e-6 * (1 + y.Max(Math.Abs)));
                    for (var i = 0; i < y.Length; i++)
                    {
                        double[] moved = [.. y];
                        moved[i] += 1e-3;
                        Assert.True(Residual(h, beta, moved) >= squares.Residual - 1e-9 * (1 + y.Max(Math.Abs)));
                    }
                },
                iter: 200
            );
    }

    [Fact]
    public void A_column_of_zeros_is_not_added()
    {
        var squares = new HessenbergLeastSquares(most: 2, beta: 3);

        Assert.Equal(ColumnOutcome.Zero, squares.Add([0, 0]));

        Assert.Equal(0, squares.Columns);
        Assert.Equal(3, squares.Residual);
    }

    private static double Residual(double[][] h, double beta, double[] y)
    {
        var left = new double[y.Length + 1];
        left[0] = beta;
        for (var j = 0; j < y.Length; j++)
        for (var i = 0; i < h[j].Length; i++)
            left[i] -= h[j][i] * y[j];
        return Math.Sqrt(left.Sum(part => part * part));
    }
}

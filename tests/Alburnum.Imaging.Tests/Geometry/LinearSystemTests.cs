using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Tests.Geometry;

public class LinearSystemTests
{
    [Fact]
    public void A_singular_system_has_no_solution() =>
        Assert.Null(
            LinearSystem.Solve(
                new double[,]
                {
                    { 1, 2 },
                    { 2, 4 },
                },
                [1, 2]
            )
        );

    [Fact]
    public void A_system_is_solved_whatever_the_order_of_its_rows() =>
        Assert.Equal(
            [3, 2],
            LinearSystem.Solve(
                new double[,]
                {
                    { 0, 1 },
                    { 1, 1 },
                },
                [2, 5]
            )!
        );

    [Fact]
    public void The_inverse_undoes_the_matrix()
    {
        double[,] a =
        {
            { 4, 1 },
            { 2, 3 },
        };
        var inverse = LinearSystem.Inverse(a)!;

        Assert.Equal(1, (inverse[0, 0] * a[0, 0]) + (inverse[0, 1] * a[1, 0]), 1e-12);
        Assert.Equal(0, (inverse[0, 0] * a[0, 1]) + (inverse[0, 1] * a[1, 1]), 1e-12);
    }
}

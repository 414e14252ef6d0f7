using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Tests.Geometry;

public class LinearSystemTests
{
    private static readonly double[,] OneRowTwice =
    {
        { 1, 2 },
        { 2, 4 },
    };

    [Fact]
    public void A_singular_system_has_no_solution_and_names_the_column_that_is_not_determined()
    {
        Assert.False(LinearSystem.Solve((double[,])OneRowTwice.Clone(), [1, 2]).Has(out _, out var singular));
        Assert.Equal(new Singular(Column: 1), singular);
    }

    [Fact]
    public void A_singular_matrix_has_no_inverse()
    {
        Assert.False(LinearSystem.Inverse(OneRowTwice).Has(out _, out var singular));
        Assert.Equal(new Singular(Column: 1), singular);
    }

    [Fact]
    public void A_system_is_solved_whatever_the_order_of_its_rows()
    {
        double[,] a =
        {
            { 0, 1 },
            { 1, 1 },
        };

        Assert.True(LinearSystem.Solve(a, [2, 5]).Has(out var x, out _));
        Assert.Equal([3, 2], x);
    }

    [Fact]
    public void The_inverse_undoes_the_matrix()
    {
        double[,] a =
        {
            { 4, 1 },
            { 2, 3 },
        };

        Assert.True(LinearSystem.Inverse(a).Has(out var inverse, out _));
        Assert.Equal(1, (inverse[0, 0] * a[0, 0]) + (inverse[0, 1] * a[1, 0]), 1e-12);
        Assert.Equal(0, (inverse[0, 0] * a[0, 1]) + (inverse[0, 1] * a[1, 1]), 1e-12);
    }
}

using Alburnum.Flow.Pieces;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.Flow.Tests.Pieces;

/// <summary>Product on single ways of whole schedules, by what must hold whatever the walls take.</summary>
public class ProductRunTests
{
    private const double Voids = 0.6;
    private static readonly double[] Permeabilities = [1e-19, 1e-18, 1e-17, 1e-16, 1e-15, 1e-14];

    public static TheoryData<double, double> Walls =>
        new()
        {
            { 0.3, 0 },
            { 2, 0 },
            { 0.3, 5 },
            { 2, 5 },
            { 0.3, double.PositiveInfinity },
            { 2, double.PositiveInfinity },
        };

    [Theory]
    [MemberData(nameof(Walls))]
    public void The_more_the_walls_take_the_more_stays_and_the_shallower(double share, double bend)
    {
        foreach (var schedule in new[] { Flows.FullCell, EmptyCell })
        {
            var liquid = Questions.Table(schedule);
            var product = ProductRun.Table(Questions.Of(schedule), new WallShare(share, bend));
            foreach (var k in Permeabilities)
            {
                var (carried, kept) = (liquid.At(k, Voids, 50, 0), product.At(k, Voids, 50, 0));
                var what = $"{schedule.Name}, {k}: {carried.Net} and {kept.Net}";
                Assert.True(kept.Net > carried.Net - 1e-3, what);
                Assert.True(kept.Net <= 1.001, what);
                Assert.True(kept.Reached <= carried.Reached + 1e-9, what);
                for (var depth = 0.02; depth <= 1; depth += 0.07)
                    Assert.True(kept.KeptWithin(depth) > carried.KeptWithin(depth) - 1e-3, $"{what}, at {depth}");
            }
        }
    }

    [Fact]
    public void Walls_that_take_nothing_leave_product_and_solution_together()
    {
        var product = ProductRun.Table(Questions.Of(EmptyCell), new WallShare(0, 0));

        Assert.Equal(
            Questions.Table(EmptyCell).At(1e-15, Voids, 50, 0.4).KeptWithin(0.3),
            product.At(1e-15, Voids, 50, 0.4).KeptWithin(0.3)
        );
    }

    [Fact]
    public void A_coefficient_alone_gives_back_what_it_took_and_a_limit_alone_keeps_it()
    {
        var liquid = Questions.Table(EmptyCell).At(1e-15, Voids, 50, 0).Net;
        double Net(double bend) =>
            ProductRun.Table(Questions.Of(EmptyCell), new WallShare(4, bend)).At(1e-15, Voids, 50, 0).Net;

        Assert.Equal(liquid, Net(0), 2e-3);
        Assert.True(Net(double.PositiveInfinity) > 1.1 * liquid, $"{liquid}, {Net(double.PositiveInfinity)}");
    }

    private static Schedule EmptyCell { get; } =
        new(
            "empty cell",
            [
                new Stage("pressure", Contact.Liquid, 60, 101.3, 1200),
                new Stage("hold", Contact.Liquid, 60, 1200, 1200),
                new Stage("release", Contact.Liquid, 15, 1200, 101.3),
                new Stage("vacuum", Contact.Air, 40, 20, 20),
            ]
        );
}

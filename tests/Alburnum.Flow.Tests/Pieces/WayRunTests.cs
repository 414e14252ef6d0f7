using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Tests.Shared.ClosedForms;

namespace Alburnum.Flow.Tests.Pieces;

/// <summary>What is read between runs on single ways, against closed forms and against runs of their own.</summary>
public class WayRunTests
{
    private const double Voids = 0.6;

    [Fact]
    public void Under_constant_pressure_from_a_vacuum_it_is_the_plane_front()
    {
        // Two hours at 0.1 kPa first, so that next to no air is left ahead.
        var schedule = new Schedule(
            "hold",
            [new Stage("vacuum", Contact.Air, 1e5, 0.1, 0.1), new Stage("pressure", Contact.Liquid, 120, 1200, 1200)]
        );
        // A twentieth of the voids keeps its air, and the front of power laws is slower than a sharp one by the liquid behind it.
        var depth = Questions.Table(schedule).DepthMm(1e-17, Voids, 50);

        Assert.Equal(PlaneFront.DepthMm(1e-17, 1200, 120, 1.002, Voids * 0.95), depth, 0.05 * depth);
    }

    [Theory]
    [InlineData(1e-19, 1e-20, 10)]
    [InlineData(1e-18, 2e-19, 4)]
    [InlineData(1e-17, 1e-18, 15)]
    [InlineData(1e-16, 1e-19, 12)]
    [InlineData(1e-15, 1e-19, 12)]
    [InlineData(1e-15, 1e-18, 20)]
    public void A_way_through_sapwood_into_heartwood_is_that_of_a_run_with_two_layers(
        double sapwood,
        double heartwood,
        double sapwoodMm
    )
    {
        var mesh = LineMesh.Flat(50, 500, depth => depth < sapwoodMm ? sapwood : heartwood, Voids);
        var run = Flows.Run(DryWood.Of(mesh, FluidPair.Of(TreatingLiquid.Water())), Flows.FullCell, StepControl.Usual);
        Assert.IsType<Completed>(run.Ending);
        var solved = 50 * run.ArrivalMinutes.Count(arrival => arrival is not null) / 500.0;

        var read = LayeredWay.DepthMm(Questions.Table(Flows.FullCell), Voids, (sapwood, sapwoodMm), (heartwood, 50));
        Assert.Equal(solved, read, 0.1 * solved + 0.1);
    }

    [Fact]
    public void The_wood_s_own_water_holds_the_solution_back()
    {
        double[] depths =
        [
            .. new[] { 0, 0.1, 0.3, 0.5, 0.7 }.Select(water =>
                Questions.Table(Flows.FullCell, water).DepthMm(1e-18, Voids, 50)
            ),
        ];

        Assert.Equal(depths.OrderDescending(), depths);
        Assert.True(depths[^1] < 0.8 * depths[0], string.Join(", ", depths));
    }
}

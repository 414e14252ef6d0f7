using Alburnum.Impregnation;
using Alburnum.Impregnation.Flow;
using Alburnum.Impregnation.Fronts;
using Alburnum.Impregnation.Prediction;
using Alburnum.Tests.Impregnation.Flow;

namespace Alburnum.Tests.Impregnation.Prediction;

/// <summary>The quick model against its closed form, and against the flow solver over whole schedules.</summary>
public class QuickFrontTests
{
    private const double Voids = 0.6;

    [Fact]
    public void Under_constant_pressure_from_a_vacuum_it_is_the_closed_form()
    {
        // Two hours at 0.1 kPa first, so that next to no air is left ahead; without surface tension, no capillary pull.
        var liquid = new TreatingLiquid("test", 1.002, 1000, 0);
        var schedule = new Schedule(
            "hold",
            [new Stage("vacuum", Contact.Air, 1e5, 0.1, 0.1), new Stage("pressure", Contact.Liquid, 120, 1200, 1200)]
        );
        var depth = new QuickFront(schedule, liquid, isRound: false).DepthMm(1e-17, Voids, 50);

        Assert.Equal(PlaneFront.DepthMm(1e-17, 1200, 120, 1.002, Voids), depth, 0.01 * depth);
    }

    [Fact]
    public void Permeability_is_found_again_from_the_depth()
    {
        var front = new QuickFront(Flows.FullCell, TreatingLiquid.Water(), isRound: false);
        foreach (var k in new[] { 1e-20, 3e-19, 2e-18, 4e-17 })
            Assert.Equal(k, front.PermeabilityM2(front.DepthMm(k, Voids, 50), Voids, 50), 1e-3 * k);
    }

    [Theory]
    [InlineData("full cell", 1e-19)]
    [InlineData("full cell", 1e-18)]
    [InlineData("full cell", 1e-17)]
    [InlineData("empty cell", 1e-18)]
    [InlineData("empty cell", 1e-17)]
    public void Over_a_whole_schedule_it_stands_within_a_fifth_of_the_flow_solver(string name, double k)
    {
        var schedule = name == "full cell" ? Flows.FullCell : Flows.EmptyCell;
        var front = new QuickFront(schedule, TreatingLiquid.Water(), isRound: false);
        var mesh = LineMesh.Flat(25, 250, _ => k, Voids);
        var run = Flows.Run(FlowProblem.Dry(mesh, FluidPair.Of(TreatingLiquid.Water())), schedule, StepControl.Usual);

        Assert.IsType<Settled>(run.Ending);
        var solved = 25 * run.ArrivalMinutes.Count(arrival => arrival is not null) / 250.0;
        Assert.InRange(front.DepthMm(k, Voids, 25) / solved, 0.8, 1.25);
    }
}

using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Tests.Pieces;

/// <summary>The quick model over whole schedules, against the flow solver.</summary>
public class QuickFrontAgainstSolverTests
{
    private const double Voids = 0.6;

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
        var run = Flows.Run(DryWood.Of(mesh, FluidPair.Of(TreatingLiquid.Water())), schedule, StepControl.Usual);

        Assert.IsType<Completed>(run.Ending);
        var solved = 25 * run.ArrivalMinutes.Count(arrival => arrival is not null) / 250.0;
        Assert.InRange(front.DepthMm(k, Voids, 25) / solved, 0.8, 1.25);
    }
}

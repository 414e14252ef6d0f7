using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Impregnation;

/// <summary>Every schedule that ships, on a section with sapwood and heartwood, and in a line: nothing is lost in any step.</summary>
[Computed]
public sealed class ScheduleBalanceChecks
{
    public static TheoryData<string> Names =>
        [.. new FactLibrary(Repository.At("data")).Impregnation.Schedules.Select(schedule => schedule.Value.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    [WorkedOut("conservation of mass: liquid and air held = at the start + what came through the faces")]
    public void No_step_of_any_schedule_loses_liquid_or_air(string name)
    {
        var schedule = new FactLibrary(Repository.At("data"))
            .Impregnation.Schedules.Single(row => row.Value.Name == name)
            .Value;
        var sapwood = new WoodFlow(new Permeability(1.5e-15, 1e-15, 6e-12), 0.6);
        var heartwood = new WoodFlow(new Permeability(2e-19, 2e-19, 1e-15), 0.55);
        var piece = new Piece(new RectangularSection(60, 40), new LogGeometry(5, -12, 20, 60), sapwood, heartwood);
        var mesh = SectionMesh.Of(piece, FluidPair.Of(TreatingLiquid.Water()), 18);
        var run = FlowSolver.Run(
            mesh.Problem,
            schedule,
            StepControl.Usual,
            cancellation: TestContext.Current.CancellationToken
        );

        Assert.IsType<Completed>(run.Ending);
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.AirImbalance), 0, 1e-9));
        // Solution went in, and what is kept is no more than what was ever in.
        Assert.True(run.Moments.Max(moment => moment.GainedM3) > 0);
        Assert.InRange(run.Moments[^1].GainedM3, 0, run.Moments.Max(moment => moment.GainedM3));
    }
}

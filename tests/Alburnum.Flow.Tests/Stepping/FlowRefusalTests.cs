using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests.Stepping;

/// <summary>What the solver refuses, and what it says when it cannot go on.</summary>
public class FlowRefusalTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());
    private static readonly FlowMesh Line = LineMesh.Flat(20, 40, _ => 1e-17, 0.6);

    [Fact]
    public void A_run_that_uses_up_its_steps_says_where_and_when_and_still_balances()
    {
        var run = Flows.Run(DryWood.Of(Line, Fluids), Flows.FullCell, new StepControl(greatestSteps: 12));

        var limit = Assert.IsType<StepLimit>(run.Ending);
        Assert.Equal(12, limit.Steps);
        Assert.InRange(limit.Cell, 0, 39);
        Assert.Equal("initial vacuum", limit.Stage);
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));
    }

    [Fact]
    public void A_step_that_will_not_converge_says_the_stage_the_cell_and_by_how_much_and_keeps_the_last_balance()
    {
        // A tolerance finer than round-off on cells whose void volumes differ by a factor of 1e18.
        var mesh = new FlowMesh([1e-3, 1e15], [(0, 1, 1e-3)], [(0, 1.0)]);
        var run = Flows.Run(
            new FlowProblem(mesh, Fluids, [0.3, 0.3], 101.325),
            Flows.Hold(4000, 60),
            new StepControl(cellTolerance: 1e-14)
        );

        var stopped = Assert.IsType<StepTooSmall>(run.Ending);
        Assert.Equal("pressure", stopped.Stage);
        Assert.InRange(stopped.Cell, 0, 1);
        Assert.True(stopped.ResidualShare > 1e-14);
        Assert.InRange(Math.Abs(run.Moments[^1].LiquidImbalance), 0, 1e-9);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.2)]
    [InlineData(double.NaN)]
    public void A_saturation_that_cannot_be_is_refused(double saturation) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Flows.Run(
                new FlowProblem(Line, Fluids, [.. Enumerable.Repeat(saturation, 40)]),
                Flows.FullCell,
                StepControl.Usual
            )
        );

    [Fact]
    public void A_negative_permeability_is_refused_with_its_unit()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => LineMesh.Flat(20, 40, _ => -1e-18, 0.6));

        Assert.Contains("m²", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cancelling_stops_the_run()
    {
        using var stop = new CancellationTokenSource();
        var seen = new Shares(stop);

        Assert.Throws<OperationCanceledException>(() =>
            FlowSolver.Run(DryWood.Of(Line, Fluids), Flows.FullCell, StepControl.Usual, seen, stop.Token)
        );
        Assert.InRange(seen.Last, 0.001, 0.5);
    }

    // Cancels once a tenth is done.
    private sealed class Shares(CancellationTokenSource stop) : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value)
        {
            Last = value;
            if (value > 0.1)
                stop.Cancel();
        }
    }
}

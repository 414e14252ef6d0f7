using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests.Stepping;

/// <summary>How solution and the wood's own water are told apart.</summary>
public class SolutionAccountTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());

    private static (FlowProblem Problem, FlowRun Run) Held(double water)
    {
        var problem = DryWood.Of(LineMesh.Flat(25, 100, _ => 1e-17, 0.6), Fluids) with
        {
            InitialSaturation = [.. Enumerable.Repeat(water, 100)],
        };
        return (problem, Flows.Run(problem, Flows.Hold(1300, 60), StepControl.Usual));
    }

    private static double Sum(FlowProblem problem, IReadOnlyList<double> shares) =>
        shares.Zip(problem.Mesh.VoidM3.ToArray(), (share, voids) => share * voids).Sum();

    [Fact]
    public void In_dry_wood_all_liquid_is_solution()
    {
        var (_, run) = Held(0);

        Assert.Equal(run.Saturation, run.Solution, (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void Solution_held_is_what_came_in_where_nothing_left()
    {
        var (problem, run) = Held(0.4);

        Assert.Equal(run.Moments[^1].GainedM3, Sum(problem, run.Solution), 1e-6 * run.Moments[^1].GainedM3);
        Assert.All(run.Solution.Zip(run.Saturation), cell => Assert.InRange(cell.First, 0, cell.Second + 1e-9));
    }

    [Fact]
    public void Water_is_pushed_ahead_of_the_solution()
    {
        var (_, run) = Held(0.4);

        var solution = run.PeakSolution.Count(share => share >= 0.5);
        var liquid = run.Saturation.Count(share => share >= 0.7);
        Assert.True(solution < 0.75 * liquid, $"{solution} cells of solution, {liquid} of liquid");
    }
}

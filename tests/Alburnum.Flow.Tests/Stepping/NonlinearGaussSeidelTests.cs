using Alburnum.Flow.Equations;
using Alburnum.Flow.Partitioning;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests.Stepping;

public class NonlinearGaussSeidelTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());

    [Fact]
    public void A_front_thrown_too_far_is_brought_closer_to_balance_and_cells_far_from_it_stay()
    {
        var mesh = LineMesh.Flat(20, 40, _ => 2e-16, 0.6);
        var assembly = new JacobianAssembly<double>(mesh, Fluids, TwoWayPartition.Usual);
        var before = new double[80];
        var state = new double[80];
        var moved = new double[80];
        for (var i = 0; i < 40; i++)
        {
            // Half full of air at 2 bar; the iteration before filled the first ten cells at one blow.
            (before[2 * i], before[2 * i + 1]) = (0.1 * mesh.VoidM3[i], 0.9 * 2 * mesh.VoidM3[i]);
            (state[2 * i], state[2 * i + 1]) = (2e5, i < 10 ? 1 : 0.1);
            moved[2 * i + 1] = i < 10 ? -0.9 : 0;
        }
        var step = Step(before);
        var thrown = Worst();
        new NonlinearGaussSeidel(mesh, Fluids, assembly.Jacobian.Pattern, assembly.Mobility).Relax(state, moved, step);

        Assert.InRange(Worst(), 0, 0.3 * thrown);
        for (var i = 11; i < 40; i++)
            Assert.Equal((2e5, 0.1), (state[2 * i], state[2 * i + 1]));

        double Worst()
        {
            assembly.Take(state, step.Warmth);
            assembly.Assemble(state, step);
            // The cells beside those that may be moved feel them, and are left to the next iteration for the whole.
            return assembly.Residual.Take(20).Max(Math.Abs);
        }
    }

    private static TimeStep Step(double[] before) =>
        new(before, 5, VesselBoundary.Of(5e5, Contact.Liquid, Fluids, CellWarmth.Even), Flows.Even(before.Length / 2));

    [Fact]
    public void Where_no_saturation_moved_nothing_is_relaxed()
    {
        var mesh = LineMesh.Flat(20, 10, _ => 2e-16, 0.6);
        var assembly = new JacobianAssembly<double>(mesh, Fluids, TwoWayPartition.Usual);
        double[] state = [.. Enumerable.Range(0, 10).SelectMany(i => new[] { 1e5 * (1 + i), 0.3 })];
        var before = new double[20];
        var step = Step(before);
        assembly.Take(state, step.Warmth);
        double[] kept = [.. state];
        new NonlinearGaussSeidel(mesh, Fluids, assembly.Jacobian.Pattern, assembly.Mobility).Relax(
            state,
            new double[20],
            step
        );

        Assert.Equal(kept, state);
    }
}

using Alburnum.Flow.Equations;
using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;

namespace Alburnum.Flow.Tests.Pieces;

public class IncisedCellTests
{
    private static readonly IncisingPattern Pattern = new(8, 9, 1.2, 27, 4.5);
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());

    [Fact]
    public void Wood_and_cuts_together_fill_the_cell()
    {
        var wood = new WoodFlow(new Permeability(1e-18, 1e-18, 6e-15), 0.6);
        var cell = IncisedCell.Of(Pattern, wood, Fluids, 16, (54, 45, 64));

        var voids = cell.Problem.Mesh.VoidM3.ToArray().Sum();
        var whole = 13.5e-3 * 4.5e-3 * 16e-3;
        // Half a cut at each of two corners of the quarter: half the cuts of a cell of 27 × 4.5 mm.
        var cuts = Pattern.CutOutCm3PerM2 * 1e-6 * 27e-3 * 4.5e-3 / 2;
        Assert.Equal((whole - cuts) * 0.6, voids, 0.01 * whole);
    }

    [Fact]
    public void Without_a_way_along_or_across_the_grain_the_face_fills_as_a_plain_one()
    {
        // A shallow scratch in wood that conducts inwards only: the flat front, away from the cut.
        var wood = new WoodFlow(new Permeability(1e-18, 1e-25, 1e-25), 0.6);
        var cell = IncisedCell.Of(new IncisingPattern(1, 2, 0.2, 20, 6), wood, Fluids, 8, (10, 8, 16));
        var run = Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual);
        var line = Flows.Run(
            DryWood.Of(LineMesh.Flat(8, 16, _ => 1e-18, 0.6), Fluids),
            Flows.FullCell,
            StepControl.Usual
        );

        var depth = 8 * line.ArrivalMinutes.Count(arrival => arrival is not null) / 16.0;
        Assert.Equal(depth, cell.UnbrokenMm(run), 0.51);
    }

    [Fact]
    public void Wood_that_levels_out_along_the_grain_within_a_millionth_of_a_step_takes_few_linear_iterations()
    {
        // Open sapwood: 0.3 mm along the grain levels out in a microsecond, and steps last minutes.
        var wood = new WoodFlow(new Permeability(2e-16, 5e-17, 2e-11), 0.6);
        var cell = IncisedCell.Of(Pattern, wood, Fluids, 12, (12, 12, 12));
        var run = Flows.Run(cell.Problem, Flows.Hold(101.3, 60), StepControl.Usual);

        var settled = Assert.IsType<Completed>(run.Ending);
        Assert.InRange(settled.LinearIterations, settled.NewtonIterations / 2, 6 * settled.NewtonIterations);
    }

    [Fact]
    public void The_quick_reach_agrees_with_the_cell_within_2_mm_and_no_liquid_is_lost()
    {
        const double k = 1.4e-19;
        var wood = new WoodFlow(new Permeability(k, k, 6000 * k), 0.6);
        var cell = IncisedCell.Of(Pattern, wood, Fluids, 14, (12, 12, 28));
        var run = Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual);
        Assert.IsType<Completed>(run.Ending);
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));

        var across = Questions.Table(Flows.FullCell).DepthMm(k, 0.6, 14);
        var quick = new IncisedReach(Pattern, 6000).UnbrokenMm(across);
        Assert.Equal(quick, cell.UnbrokenMm(run), 2.0);
        Assert.True(cell.UnbrokenMm(run) > across);
    }

    [Fact]
    public void A_stagger_that_has_no_planes_of_symmetry_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            IncisedCell.Of(
                new IncisingPattern(8, 9, 1.2, 27, 4.5, stagger: 0.3),
                new WoodFlow(new Permeability(1e-18, 1e-18, 1e-15), 0.6),
                Fluids,
                16,
                (8, 8, 8)
            )
        );
}

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
    public void Cuts_take_no_wood_out_and_their_sides_are_open_to_the_vessel()
    {
        var wood = new WoodFlow(new Permeability(1e-18, 2e-18, 6e-15), 0.6);
        var cell = IncisedCell.Of(Pattern, wood, Fluids, 16, 24);
        var mesh = cell.Problem.Mesh;

        Assert.Equal(13.5e-3 * 2.25e-3 * 16e-3 * 0.6, mesh.VoidM3.ToArray().Sum(), 1e-12);
        Assert.Equal(
            1,
            cell.Depths(Flows.Run(cell.Problem, Flows.Hold(101.3, 1), StepControl.Usual)).Sum(at => at.Share),
            1e-9
        );
    }

    [Fact]
    public void Without_a_way_along_or_across_the_grain_the_face_fills_as_a_plain_one()
    {
        // A shallow scratch in wood that conducts inwards only: the flat front, away from the cut.
        var wood = new WoodFlow(new Permeability(1e-18, 1e-25, 1e-25), 0.6);
        var cell = IncisedCell.Of(new IncisingPattern(1, 2, 0.2, 20, 6), wood, Fluids, 8, 16);
        var run = Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual);
        var line = Flows.Run(
            DryWood.Of(LineMesh.Flat(8, 16, _ => 1e-18, 0.6), Fluids),
            Flows.FullCell,
            StepControl.Usual
        );

        var depth = 8 * line.ArrivalMinutes.Count(arrival => arrival is not null) / 16.0;
        Assert.Equal(depth, cell.Depths(run).Min(at => at.DepthMm), 0.51);
    }

    [Fact]
    public void Wood_that_levels_out_along_the_grain_within_a_millionth_of_a_step_takes_few_linear_iterations()
    {
        // Open sapwood: 0.3 mm along the grain levels out in a microsecond, and steps last minutes.
        var wood = new WoodFlow(new Permeability(2e-16, 5e-17, 2e-11), 0.6);
        var cell = IncisedCell.Of(Pattern, wood, Fluids, 12, 12);
        var run = Flows.Run(cell.Problem, Flows.Hold(101.3, 60), StepControl.Usual);

        var settled = Assert.IsType<Completed>(run.Ending);
        Assert.InRange(settled.LinearIterations, settled.NewtonIterations / 2, 6 * settled.NewtonIterations);
    }

    // Depth of the cuts and distance of their rows, mm, permeability across the grain, m², and along over across.
    public static TheoryData<double, double, double, double> Woods =>
        new()
        {
            { 8, 4.5, 3e-20, 6000 },
            { 8, 4.5, 5e-19, 6000 },
            { 8, 4.5, 2e-18, 6000 },
            { 8, 10, 1.4e-19, 6000 },
            { 8, 10, 2e-18, 6000 },
            { 10, 6, 1.4e-19, 6000 },
            { 10, 6, 2e-18, 6000 },
            { 19, 8, 3e-20, 6000 },
            { 12, 8, 4e-19, 6000 },
            { 19, 8, 2e-18, 6000 },
            // As in heartwood of spruce and pine.
            { 10, 4.5, 8e-20, 300 },
            { 6, 4.5, 4e-19, 300 },
            { 10, 4.5, 5e-19, 300 },
            { 8, 10, 2e-18, 300 },
        };

    [Theory]
    [MemberData(nameof(Woods))]
    public void Cores_from_distances_to_the_cuts_agree_with_the_cell(
        double depthMm,
        double acrossMm,
        double k,
        double along
    )
    {
        var pattern = new IncisingPattern(depthMm, 9, 1.2, 27, acrossMm);
        var cell = IncisedCell.Of(pattern, new WoodFlow(new Permeability(k, k, along * k), 0.6), Fluids, 50, 24);
        var run = Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual);
        Assert.IsType<Completed>(run.Ending);
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));

        var depths = cell.Depths(run);
        var across = Questions.Table(Flows.FullCell).DepthMm(k, 0.6, 50);
        var reach = new IncisedReach(pattern, along);
        var unbroken = depths.Min(at => at.DepthMm);
        var mean = depths.Sum(at => at.Share * at.DepthMm);
        Assert.Equal(unbroken, reach.UnbrokenMm(across), 0.3 + 0.03 * unbroken);
        Assert.Equal(mean, reach.MeanMm(across, double.PositiveInfinity), 0.08 * mean);
    }

    // The fronts from two rows have just met: there a hair more or less closes the border.
    [Theory]
    [InlineData(10, 4.5, 1.7e-19)]
    [InlineData(19, 8, 5e-19)]
    public void Where_two_fronts_have_just_met_the_border_is_told_shallower_than_the_cell_s_and_the_mean_agrees(
        double depthMm,
        double acrossMm,
        double k
    )
    {
        const double Along = 300;
        var pattern = new IncisingPattern(depthMm, 9, 1.2, 27, acrossMm);
        var cell = IncisedCell.Of(pattern, new WoodFlow(new Permeability(k, k, Along * k), 0.6), Fluids, 50, 24);
        var depths = cell.Depths(Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual));
        var across = Questions.Table(Flows.FullCell).DepthMm(k, 0.6, 50);
        var reach = new IncisedReach(pattern, Along);

        Assert.InRange(reach.UnbrokenMm(across), across, depths.Min(at => at.DepthMm));
        var mean = depths.Sum(at => at.Share * at.DepthMm);
        Assert.Equal(mean, reach.MeanMm(across, double.PositiveInfinity), 0.08 * mean);
    }

    [Theory]
    [InlineData(8, 4.5, 5e-19)]
    [InlineData(10, 6, 1.4e-19)]
    [InlineData(8, 10, 2e-18)]
    public void Half_as_many_boxes_again_move_the_unbroken_border_by_less_than_3_tenths_of_a_mm(
        double depthMm,
        double acrossMm,
        double k
    )
    {
        Assert.Equal(Unbroken(20), Unbroken(30), 0.3);

        double Unbroken(int boxes)
        {
            var pattern = new IncisingPattern(depthMm, 9, 1.2, 27, acrossMm);
            var cell = IncisedCell.Of(pattern, new WoodFlow(new Permeability(k, k, 6000 * k), 0.6), Fluids, 50, boxes);
            return cell.Depths(Flows.Run(cell.Problem, Flows.FullCell, StepControl.Usual)).Min(at => at.DepthMm);
        }
    }

    [Fact]
    public void Where_liquid_spreads_along_the_grain_at_once_it_does_not_matter_how_rows_are_shifted()
    {
        Assert.Equal(Unbroken(0, 12), Unbroken(0.5, 24), 0.1);

        double Unbroken(double stagger, int boxes)
        {
            var pattern = new IncisingPattern(8, 9, 1.2, 27, 4.5, stagger);
            var wood = new WoodFlow(new Permeability(2e-18, 2e-18, 2e-11), 0.6);
            var cell = IncisedCell.Of(pattern, wood, Fluids, 16, boxes);
            Assert.Equal(12, cell.Boxes.Y);
            return cell.Depths(Flows.Run(cell.Problem, Flows.Hold(1300, 20), StepControl.Usual)).Min(at => at.DepthMm);
        }
    }

    [Fact]
    public void A_stagger_that_has_no_planes_of_symmetry_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            IncisedCell.Of(
                new IncisingPattern(8, 9, 1.2, 27, 4.5, stagger: 0.3),
                new WoodFlow(new Permeability(1e-18, 1e-18, 1e-15), 0.6),
                Fluids,
                16,
                8
            )
        );
}

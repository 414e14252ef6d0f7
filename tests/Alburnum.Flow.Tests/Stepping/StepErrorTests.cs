using Alburnum.Flow.Equations;
using Alburnum.Flow.Mesh;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;

namespace Alburnum.Flow.Tests.Stepping;

/// <summary>What the time steps of a whole schedule leave open, against steps allowed a hundredth of the error.</summary>
public class StepErrorTests
{
    private static readonly FluidPair Fluids = FluidPair.Of(TreatingLiquid.Water());
    private static readonly StepControl Fine = new(growth: 2, cellTolerance: 1e-7, uptakeError: 5e-6);

    [Theory]
    [InlineData(false, 1e-19)]
    [InlineData(false, 1e-17)]
    [InlineData(false, 1e-15)]
    [InlineData(true, 1e-18)]
    [InlineData(true, 1e-16)]
    [InlineData(true, 1e-14)]
    public void A_schedule_is_carried_through_within_four_thousandths_of_the_uptake_and_one_and_a_half_per_cent_of_the_air(
        bool isEmptyCell,
        double permeabilityM2
    )
    {
        var problem = DryWood.Of(LineMesh.Flat(GradedEdges.FromOneEnd(50, 60, 3), permeabilityM2, 0.6), Fluids);
        var schedule = isEmptyCell ? Flows.EmptyCell : Flows.FullCell;
        var usual = Flows.Run(problem, schedule, StepControl.Usual);
        var fine = Flows.Run(problem, schedule, Fine);

        var uptake = fine.Moments.Max(moment => moment.GainedM3);
        double minutes = 0;
        foreach (var stage in schedule.Stages)
        {
            minutes += stage.Minutes;
            var (found, truth) = (At(usual), At(fine));
            Assert.Equal(truth.GainedM3, found.GainedM3, 0.004 * uptake);
            Assert.Equal(truth.AirM3, found.AirM3, 0.015 * truth.AirM3);
        }
        Assert.InRange(Assert.IsType<Completed>(usual.Ending).Steps, 10, 150);

        FlowMoment At(FlowRun run) => run.Moments.MinBy(moment => Math.Abs(moment.Minutes - minutes))!;
    }

    [Fact]
    public void No_cell_holds_less_than_nothing_or_more_than_its_voids()
    {
        foreach (var schedule in new[] { Flows.FullCell, Flows.EmptyCell })
        {
            var run = Flows.Run(
                DryWood.Of(LineMesh.Flat(30, 80, _ => 2e-16, 0.6), Fluids),
                schedule,
                StepControl.Rough
            );
            // Within what Newton's method may leave over.
            Assert.All(run.Saturation, saturation => Assert.InRange(saturation, -1e-3, 1 + 1e-3));
        }
    }

    [Fact]
    public void A_correction_is_cut_to_what_the_cells_can_bear_and_moves_no_more_than_it_says()
    {
        var mesh = LineMesh.Flat(30, 3, _ => 1e-16, 0.5);
        var voids = mesh.VoidM3[0];
        // The first nearly full, the second nearly empty of liquid, the third without air.
        double[] held = [0.96 * voids, 0.04 * voids, 0.04 * voids, voids, 0.5 * voids, 0];
        var correction = new StepFlows(mesh);
        correction.FaceLiquid[0] = -0.5 * voids;
        (correction.Liquid[0], correction.Liquid[1]) = (-0.3 * voids, 0.2 * voids);
        correction.Air[1] = -0.1 * voids;
        new FluxCorrection(mesh).Limit(held, correction);
        var (liquid, air) = (held[0] + held[2] + held[4], held[1] + held[3] + held[5]);
        correction.Carry(held);

        Assert.All(Enumerable.Range(0, 3), i => Assert.InRange(held[2 * i], 0, voids));
        Assert.All(Enumerable.Range(0, 3), i => Assert.InRange(held[2 * i + 1], 0, 2 * voids));
        Assert.Equal(0, correction.Air[1]);
        Assert.Equal(liquid - correction.FaceLiquid[0], held[0] + held[2] + held[4], 1e-15);
        Assert.Equal(air, held[1] + held[3] + held[5], 1e-15);
    }
}

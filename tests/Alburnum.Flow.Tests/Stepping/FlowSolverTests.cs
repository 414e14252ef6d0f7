using Alburnum.Flow.Equations;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Tests.Shared.ClosedForms;

namespace Alburnum.Flow.Tests.Stepping;

public class FlowSolverTests
{
    private const double Voids = 0.6;

    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(240)]
    public void A_flat_front_under_constant_pressure_follows_the_closed_form_within_1_percent(double minutes)
    {
        var mesh = LineMesh.Flat(50, 200, _ => 1e-17, Voids);
        var run = Flows.Run(
            DryWood.Of(mesh, Flows.Sharp(), 0.001),
            Flows.Hold(1200, minutes),
            new StepControl(firstSeconds: 0.1, growth: 1.02)
        );

        Assert.IsType<Completed>(run.Ending);
        var expected = PlaneFront.DepthMm(1e-17, 1200, minutes, 1.002, Voids);
        Assert.Equal(expected, Flows.FrontMm(run, Voids), 0.01 * expected);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    [InlineData(40)]
    public void A_front_closing_on_the_pith_follows_the_closed_form_within_1_percent(double minutes)
    {
        var mesh = LineMesh.Round(50, 200, _ => 1e-16, Voids);
        var run = Flows.Run(
            DryWood.Of(mesh, Flows.Sharp(), 0.001),
            Flows.Hold(1200, minutes),
            new StepControl(firstSeconds: 0.1, growth: 1.02)
        );

        var fill = RadialFront.MinutesToFill(50, 1e-16, 1200, 1.002, Voids);
        var expected = RadialFront.TreatedShare(RadialFront.DepthMm(minutes, fill, 50), 50);
        var found = run.Moments[^1].GainedM3 / (Math.PI * 0.05 * 0.05 * Voids);
        Assert.Equal(expected, found, 0.01 * expected);
    }

    [Theory]
    [InlineData(0.25, 2)]
    [InlineData(0.50, 1)]
    [InlineData(0.90, 1)]
    public void Air_shut_in_ahead_slows_the_front_as_the_closed_form_says(double shareOfLimit, double percent)
    {
        var limit = 100 * PlaneFront.FillLimit(101.3, 1300);
        var depth = shareOfLimit * limit;
        var minutes = PlaneFront.MinutesToDepthAgainstAir(depth, 100, 1e-15, (101.3, 1300), 1.002, Voids);
        var mesh = LineMesh.Flat(100, 200, _ => 1e-15, Voids);
        var run = Flows.Run(
            DryWood.Of(mesh, Flows.Sharp(), 101.3),
            Flows.Hold(1300, minutes),
            new StepControl(firstSeconds: 0.01, growth: 1.02)
        );

        Assert.Equal(depth, Flows.FrontMm(run, Voids), percent / 100 * depth);
    }

    [Fact]
    public void Held_for_ever_the_front_stops_where_an_ideal_gas_would_stop_it()
    {
        var mesh = LineMesh.Flat(100, 50, _ => 1e-14, Voids);
        var run = Flows.Run(DryWood.Of(mesh, Flows.Sharp(), 101.325), Flows.Hold(1380, 600), StepControl.Usual);

        Assert.Equal(0.9266, run.Moments[^1].GainedM3 / (0.1 * Voids), 0.0001);
    }

    public static TheoryData<string> Schedules => ["full cell", "empty cell"];

    [Theory]
    [MemberData(nameof(Schedules))]
    public void No_liquid_and_no_air_is_lost_in_any_step(string name)
    {
        var schedule = name == "full cell" ? Flows.FullCell : Flows.EmptyCell;
        var mesh = LineMesh.Flat(25, 60, depth => depth < 12 ? 3e-16 : 2e-19, Voids);
        var run = Flows.Run(DryWood.Of(mesh, FluidPair.Of(TreatingLiquid.Water())), schedule, StepControl.Usual);

        Assert.IsType<Completed>(run.Ending);
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.LiquidImbalance), 0, 1e-9));
        Assert.All(run.Moments, moment => Assert.InRange(Math.Abs(moment.AirImbalance), 0, 1e-9));
        Assert.All(run.Saturation, saturation => Assert.InRange(saturation, -1e-5, 1 + 1e-5));
    }
}

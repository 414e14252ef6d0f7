using Alburnum.Impregnation;

namespace Alburnum.Tests.Impregnation;

public class ScheduleTests
{
    [Fact]
    public void Every_impossible_step_is_named_at_once()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            ScheduleSteps.Build(
                "bad",
                [new("vacuum", Contact.Air, -15, 5, 10), new("pressure", Contact.Air, 1300, -1, 60)]
            )
        );

        Assert.Equal(["kPa", "rampMinutes", "contact"], refused.Problems.Select(problem => problem.Field));
    }

    [Fact]
    public void Pressure_is_read_off_the_line_between_the_ends_of_a_stage()
    {
        var schedule = ScheduleSteps.Build("one", [new("pressure", Contact.Liquid, 1101.325, 10, 60)]);

        Assert.Equal(601.325, schedule.Stages[0].KPaAt(5), 1e-9);
        Assert.Equal(1101.325, schedule.Stages[1].KPaAt(20), 1e-9);
        Assert.Equal(70, schedule.Minutes);
        Assert.Equal(20, schedule.WithPressurePeriod(10).Minutes);
    }

    [Theory]
    [InlineData(-1e-18)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void A_permeability_that_cannot_be_is_refused(double k) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Permeability(k, 1e-18, 1e-15));

    [Fact]
    public void Moisture_above_saturation_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => VoidFraction.Of(0.43, 200));
}

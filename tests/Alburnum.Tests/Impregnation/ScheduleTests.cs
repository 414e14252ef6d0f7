using Alburnum.Impregnation;

namespace Alburnum.Tests.Impregnation;

public class ScheduleTests
{
    private static Schedule OneStep =>
        new(
            "one",
            [
                new("pressure", Contact.Liquid, 10, Schedule.AtmosphereKPa, 1101.325),
                new("pressure", Contact.Liquid, 60, 1101.325, 1101.325),
            ]
        );

    [Fact]
    public void A_peak_below_another_pressure_of_the_schedule_is_refused()
    {
        Assert.Equal(Schedule.AtmosphereKPa, OneStep.BelowPeakKPa);
        Assert.Equal(200, OneStep.WithPeak(200).PeakKPa);
        Assert.Throws<ArgumentOutOfRangeException>(() => OneStep.WithPeak(Schedule.AtmosphereKPa));
    }

    [Fact]
    public void Pressure_is_read_off_the_line_between_the_ends_of_a_stage()
    {
        var schedule = OneStep;

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
    public void Wood_wetter_than_saturation_has_less_than_no_voids() => Assert.True(VoidFraction.Of(0.43, 200) < 0);
}

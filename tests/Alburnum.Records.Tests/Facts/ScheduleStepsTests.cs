using Alburnum.Impregnation;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Facts;

public sealed class ScheduleStepsTests
{
    [Fact]
    public void Every_impossible_step_is_named_at_once()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            ScheduleSteps.Build(
                "bad",
                [new("vacuum", Contact.Air, -15, 5, 10), new("pressure", Contact.Air, 1300, -1, 60)],
                "schedules.yaml"
            )
        );

        Assert.Equal(["kPa", "rampMinutes", "contact"], refused.Problems.Select(problem => problem.Field));
    }

    [Fact]
    public void A_file_without_a_schedule_is_refused()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("own.yaml", "schedules: []\n");

        var problem = Assert.Single(
            Assert.Throws<InputRefusedException>(() => ImpregnationLibrary.ReadSchedules(file)).Problems
        );

        Assert.Equal(("own.yaml", "schedules", "no row"), (problem.File, problem.Field, problem.Found));
    }

    [Fact]
    public void A_step_goes_to_its_pressure_and_holds_it()
    {
        var schedule = ScheduleSteps.Build(
            "one",
            [new("pressure", Contact.Liquid, 1101.325, 10, 60)],
            "schedules.yaml"
        );

        Assert.Equal(601.325, schedule.Stages[0].KPaAt(5), 1e-9);
        Assert.Equal(1101.325, schedule.Stages[1].KPaAt(20), 1e-9);
    }
}

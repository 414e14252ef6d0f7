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
    public void A_file_of_the_plants_own_may_name_the_programs_sources_and_how_hot_a_step_is()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write(
            "own.yaml",
            """
            schedules:
              - name: own
                steps:
                  - { step: steaming, against: air, kPa: 186, rampMinutes: 0, holdMinutes: 60, celsius: 118 }
                  - { step: pressure, against: liquid, kPa: 1200, rampMinutes: 0, holdMinutes: 60 }
                source: trade-practice
                standing: common practice
            """
        );

        var schedule = Assert.Single(Facts.ReadSchedules(file));

        Assert.Equal(Standing.CommonPractice, schedule.Provenance.Standing);
        Assert.Equal([118, null], schedule.Value.Stages.Select(stage => stage.Celsius));
    }

    [Theory]
    [InlineData(Contact.Air, 151)]
    [InlineData(Contact.Liquid, 96)]
    public void A_step_hotter_than_solution_or_steam_can_be_is_refused(Contact contact, double celsius)
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            ScheduleSteps.Build("one", [new("hot", contact, 101.3, 0, 10, celsius), Pressed], "schedules.yaml")
        );

        Assert.Equal("celsius", Assert.Single(refused.Problems).Field);
    }

    private static readonly ScheduleStep Pressed = new("pressure", Contact.Liquid, 1300, 0, 60);
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    [Fact]
    public void A_file_without_a_schedule_is_refused()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("own.yaml", "schedules: []\n");

        var problem = Assert.Single(Assert.Throws<InputRefusedException>(() => Facts.ReadSchedules(file)).Problems);

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

using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class DesignChargeTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static readonly ChargeOrder Posts = new()
    {
        Name = "posts",
        Treatment = new()
        {
            File = "posts.yaml",
            Species = Facts.Species.Get("Scots pine"),
            All = Alburnum.Impregnation.WoodThroughout.Sapwood,
            MoisturePercent = 26,
            Schedule = "full cell",
            DepthMm = 12,
        },
        Pieces = [new(new RectangularSection(75, 75), 1800, 200)],
        DryingCelsius = 20,
        DryingHumidity = 0.65,
        RetentionKgPerM3 = 6,
        SolutionDensityKgPerM3 = 1005,
    };

    private static readonly Lazy<ChargeDesign> Quickest = new(() => Of(Posts, ChargeCost.Time));

    private static ChargeDesign Of(ChargeOrder order, ChargeCost least) =>
        DesignCharge.Run(order, new(0.9, 0.9, least), null, Facts, null, TestContext.Current.CancellationToken).Design;

    [Fact]
    public void Every_schedule_is_tried_and_either_planned_or_told_why_not()
    {
        var tried = Quickest.Value.Tried;

        Assert.Equal(
            Facts.Impregnation.Schedules.Select(schedule => schedule.Value.Name),
            tried.Select(trial => trial.Schedule.Value.Name)
        );
        Assert.All(tried, trial => Assert.True(trial.Plan is null ^ trial.Shortfall is null));
        Assert.All(
            tried.Where(trial => !trial.Schedule.Value.IsUnderPressure),
            trial => Assert.Null(trial.PressureMinutes)
        );
    }

    [Fact]
    public void A_schedule_that_is_enough_meets_the_depth_often_enough_and_with_a_shorter_period_it_does_not()
    {
        var chosen = Quickest.Value.Tried.First(trial =>
            trial.Plan is not null && trial.PressureMinutes > DesignCharge.PeriodsMinutes[0]
        );
        var shorter = DesignCharge.PeriodsMinutes.Last(minutes => minutes < chosen.PressureMinutes);

        Assert.InRange(chosen.DepthChance, 0.95, 1);
        Assert.InRange(Chance(chosen.PressureMinutes!.Value), 0.95, 1);
        Assert.InRange(Chance(shorter), 0, 0.9499);

        double Chance(double minutes) =>
            ExpectedCharge
                .Of(
                    Posts,
                    request => request with { Schedule = chosen.Schedule.Value.Name, PressureMinutes = minutes },
                    Facts,
                    TestContext.Current.CancellationToken
                )
                .BatchShares.Count(share => share >= 0.9) / 100.0;
    }

    [Fact]
    public void The_quickest_takes_no_longer_and_the_thriftiest_no_more_than_any_other_that_is_enough()
    {
        var enough = Quickest.Value.Tried.Where(trial => trial.Plan is not null).ToList();
        var thriftiest = (
            Quickest.Value with
            {
                Goal = Quickest.Value.Goal with { Least = ChargeCost.Solution },
            }
        ).Chosen!;

        Assert.True(enough.Count > 1);
        Assert.Equal(enough.Min(trial => trial.Schedule.Value.Minutes), Quickest.Value.Chosen!.Schedule.Value.Minutes);
        Assert.Equal(enough.Min(trial => trial.Plan!.SolutionL.Value), thriftiest.Plan!.SolutionL.Value);
        Assert.NotEqual(Quickest.Value.Chosen, thriftiest);
    }

    [Fact]
    public void The_strength_is_that_of_the_plain_plan_and_what_the_uncertainty_asks_more()
    {
        var chosen = Quickest.Value.Chosen!;
        var zone = chosen.Plan!.Question.ZoneLPerM3;

        // 1.645 standard deviations below, the retention is still there.
        Assert.Equal(
            6,
            chosen.Plan.StrengthPercent.Value / 100 * 1.005 * (zone.Value - 1.6449 * zone.StandardUncertainty),
            1e-3
        );
    }

    [Fact]
    public void Where_the_label_allows_less_no_schedule_is_chosen()
    {
        var design = Of(Posts with { StrengthMostPercent = 1 }, ChargeCost.Time);

        Assert.Null(design.Chosen);
        Assert.Contains(design.Tried, trial => trial.Shortfall is StrengthTooHigh { IsOfLabel: true });
    }
}

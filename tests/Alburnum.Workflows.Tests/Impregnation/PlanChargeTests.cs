using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class PlanChargeTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static ChargeOrder Posts(int count) =>
        new()
        {
            Name = "posts",
            Treatment = new()
            {
                File = "posts.yaml",
                Species = Facts.Species.Get("Scots pine"),
                SapwoodMm = 30,
                MoisturePercent = 26,
                Schedule = "full cell",
                DepthMm = 20,
            },
            Pieces = [new(SectionText.TryParse("75x75", out var section) ? section : null!, 1800, count)],
            DryingCelsius = 20,
            DryingHumidity = 0.65,
            RetentionKgPerM3 = 6,
            SolutionDensityKgPerM3 = 1005,
        };

    [Fact]
    public void A_plan_is_short_of_the_depth_where_refractory_wood_must_be_treated_deep()
    {
        var pine = Posts(100);
        var spruce = pine with
        {
            Treatment = pine.Treatment with { Species = Facts.Species.Get("Norway spruce"), SapwoodMm = null },
        };

        Assert.False(
            PlanCharge.Run(pine with { Treatment = pine.Treatment with { DepthMm = 6 } }, Facts, Stop).IsShortOfDepth
        );
        Assert.True(PlanCharge.Run(spruce, Facts, Stop).IsShortOfDepth);
    }

    [Fact]
    public void Twice_the_pieces_take_twice_the_solution_at_the_same_strength()
    {
        var (some, more) = (PlanCharge.Run(Posts(100), Facts, Stop).Plan, PlanCharge.Run(Posts(200), Facts, Stop).Plan);

        Assert.Equal(2 * some.SolutionL.Value, more.SolutionL.Value, 1e-6);
        Assert.Equal(some.StrengthPercent.Value, more.StrengthPercent.Value, 1e-9);
    }

    public static TheoryData<string> UnderPressure =>
        [
            .. Facts
                .Impregnation.Schedules.Where(schedule => schedule.Value.PeakKPa > 1000)
                .Select(schedule => schedule.Value.Name),
        ];

    [Theory]
    [MemberData(nameof(UnderPressure))]
    public void Permeable_pine_needs_a_strength_of_one_to_two_and_a_half_per_cent_known_to_a_quarter(string schedule)
    {
        var order = Posts(200);
        var plan = PlanCharge
            .Run(order with { Treatment = order.Treatment with { Schedule = schedule } }, Facts, Stop)
            .Plan;

        Assert.InRange(plan.StrengthPercent.Value, 1, 2.5);
        Assert.InRange(plan.StrengthPercent.StandardUncertainty / plan.StrengthPercent.Value, 0.1, 0.25);
    }

    [Fact]
    public void Two_rows_of_one_size_are_planned_like_one()
    {
        var one = Posts(200);
        var two = one with { Pieces = [.. Posts(50).Pieces, .. Posts(150).Pieces] };

        Assert.Equal(
            PlanCharge.Run(one, Facts, Stop).Plan.ConcentrateKg.Value,
            PlanCharge.Run(two, Facts, Stop).Plan.ConcentrateKg.Value,
            1e-9
        );
    }

    [Fact]
    public void Only_timber_above_its_limit_must_dry()
    {
        Assert.Null(PlanCharge.Run(Posts(1) with { MoistureLimitPercent = 28 }, Facts, Stop).DryingDays);
        var posts = Posts(1);
        var wet = posts with { MoistureLimitPercent = 28, Treatment = posts.Treatment with { MoisturePercent = 36 } };
        Assert.True(PlanCharge.Run(wet, Facts, Stop).DryingDays > 0);
    }

    [Fact]
    public void Air_that_never_dries_the_timber_to_its_limit_is_refused() =>
        Assert.Equal(
            "moistureLimit",
            Assert
                .Single(
                    Assert
                        .Throws<InputRefusedException>(() =>
                            PlanCharge.Run(
                                Posts(1) with
                                {
                                    MoistureLimitPercent = 18,
                                    DryingHumidity = 0.95,
                                },
                                Facts,
                                Stop
                            )
                        )
                        .Problems
                )
                .Field
        );

    [Fact]
    public void A_strength_above_the_label_is_refused_under_the_label_limit()
    {
        var problem = Assert.Single(
            Assert
                .Throws<InputRefusedException>(() =>
                    PlanCharge.Run(Posts(200) with { StrengthMostPercent = 1 }, Facts, Stop)
                )
                .Problems
        );

        Assert.Equal(("posts.yaml", "strengthMostPercent"), (problem.File, problem.Field));
        Assert.StartsWith("1 %, where 1.", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void An_uptake_known_no_better_than_to_half_of_itself_is_refused()
    {
        var order = Posts(200);
        var larch = order with
        {
            RetentionKgPerM3 = 0.5,
            Treatment = order.Treatment with
            {
                Species = Facts.Species.Get("European larch"),
                All = Alburnum.Impregnation.WoodThroughout.Heartwood,
                Schedule = "double vacuum",
                DepthMm = 6,
            },
        };

        Assert.Contains(
            "known to half of itself",
            Assert.Throws<InputRefusedException>(() => PlanCharge.Run(larch, Facts, Stop)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_charge_without_readings_cannot_be_reconciled() =>
        Assert.Contains(
            "readings",
            Assert.Throws<InputRefusedException>(() => ReconcileCharge.Run(Posts(1), Facts, Stop)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0, true)]
    [InlineData(1.9, true)]
    [InlineData(2.1, false)]
    [InlineData(-2.1, false)]
    public void An_uptake_within_two_standard_uncertainties_is_as_expected(double deviations, bool isAsExpected)
    {
        var expected = PlanCharge.Run(Posts(200), Facts, Stop).Plan.Question.UptakeLPerM3;
        var order = Posts(200);
        var kept = (expected.Value + deviations * expected.StandardUncertainty) * order.VolumeM3;
        var readings = new ChargeReadings
        {
            VolumeM3 = order.VolumeM3,
            TankBeforeL = 9000,
            TankAtPeakL = null,
            VesselFreeL = null,
            TankAfterL = 9000 - kept,
            TankStandardUncertaintyL = 10,
            WeightBeforeKg = null,
            WeightAfterKg = null,
            WeightStandardUncertaintyKg = 10,
            StrengthBeforePercent = 2,
            StrengthAfterPercent = null,
            StrengthStandardUncertaintyPercent = 0.02,
            SolutionDensityKgPerM3 = 1005,
        };

        Assert.Equal(isAsExpected, ReconcileCharge.Run(order with { Readings = readings }, Facts, Stop).IsAsExpected);
    }
}

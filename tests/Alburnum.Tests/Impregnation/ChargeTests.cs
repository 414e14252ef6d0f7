using Alburnum.Impregnation.Charging;
using CsCheck;

namespace Alburnum.Tests.Impregnation;

public class ChargeTests
{
    private static readonly ChargeReadings Readings = new ChargeReadings
    {
        VolumeM3 = 2,
        TankBeforeL = 9000,
        TankAtPeakL = 3300,
        VesselFreeL = 4600,
        TankAfterL = 8060,
        TankStandardUncertaintyL = 10,
        WeightBeforeKg = 1120,
        WeightAfterKg = 2030,
        WeightStandardUncertaintyKg = 10,
        StrengthBeforePercent = 2.0,
        StrengthAfterPercent = 1.9,
        StrengthStandardUncertaintyPercent = 0.01,
        SolutionDensityKgPerM3 = 1000,
    };

    private static readonly ChargeQuestion Zone = new()
    {
        VolumeM3 = 2,
        SurfaceM2 = 100,
        DensityKgPerM3 = 560,
        UptakeLPerM3 = new Estimate(250, 50),
        ZoneLPerM3 = new Estimate(400, 60),
        RetentionKgPerM3 = 6,
        SolutionDensityKgPerM3 = 1010,
    };

    [Fact]
    public void A_plan_puts_the_retention_into_the_zone_and_its_masses_add_up()
    {
        var plan = ChargePlan.For(Zone);

        // 400 L of solution to the m³ of zone at 1.01 kg/L carry 6 kg of product.
        Assert.Equal(100 * 6 / (400 * 1.01), plan.StrengthPercent.Value, 1e-9);
        Assert.Equal(500, plan.SolutionL.Value, 1e-9);
        Assert.Equal(505, plan.ConcentrateKg.Value + plan.WaterKg.Value, 1e-9);
        Assert.Equal(1120, plan.WeightBeforeKg, 1e-9);
        Assert.Equal(1120 + 505, plan.WeightAfterKg.Value, 1e-9);
        Assert.Equal(0.2, plan.SolutionL.StandardUncertainty / plan.SolutionL.Value, 1e-9);
    }

    [Fact]
    public void A_zone_that_takes_too_little_is_beyond_any_solution()
    {
        var question = new ChargeQuestion
        {
            VolumeM3 = 2,
            SurfaceM2 = 100,
            DensityKgPerM3 = 560,
            UptakeLPerM3 = new Estimate(20, 5),
            ZoneLPerM3 = new Estimate(10, 5),
            RetentionKgPerM3 = 6,
            SolutionDensityKgPerM3 = 1000,
        };

        Assert.True(question.IsBeyondAnySolution);
        Assert.False((question with { ZoneLPerM3 = new Estimate(12, 5) }).IsBeyondAnySolution);
        Assert.Throws<ArgumentOutOfRangeException>(() => ChargePlan.For(question));
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(0.95)]
    [InlineData(0.99)]
    public void A_strength_aimed_with_a_chance_is_enough_in_that_share_of_zones_drawn(double chance)
    {
        var strength = ChargePlan.For(Zone.Aimed(chance)!).StrengthPercent.Value / 100;
        var random = new Random(5);
        var zones = Enumerable
            .Range(0, 40_000)
            .Select(_ =>
                400 + 60 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble())
            );

        Assert.Equal(chance, zones.Average(zone => strength * 1.01 * zone >= 6 ? 1.0 : 0), 0.01);
    }

    [Fact]
    public void A_zone_that_may_hold_nothing_is_aimed_at_in_vain() =>
        Assert.Null((Zone with { ZoneLPerM3 = new Estimate(100, 70) }).Aimed(0.95));

    [Fact]
    public void What_is_in_the_way_of_a_plan_is_told()
    {
        Assert.Null(Zone.Shortfall);
        Assert.Null((Zone with { StrengthMostPercent = 1.5 }).Shortfall);
        Assert.Equal(
            (1.4851, 1.4, true),
            (Zone with { StrengthMostPercent = 1.4 }).Shortfall is StrengthTooHigh label
                ? (Math.Round(label.NeededPercent, 4), label.MostPercent, label.IsOfLabel)
                : default
        );
        Assert.False(
            (
                (StrengthTooHigh)(Zone with { ZoneLPerM3 = new Estimate(10, 1), StrengthMostPercent = 60 }).Shortfall!
            ).IsOfLabel
        );
        Assert.Null((Zone with { ZoneLPerM3 = new Estimate(400, 200) }).Shortfall);
        Assert.Equal(
            new ZoneTooUncertain(new Estimate(400, 201)),
            (Zone with { ZoneLPerM3 = new Estimate(400, 201) }).Shortfall
        );
    }

    [Fact]
    public void Readings_give_gross_net_kickback_and_retention()
    {
        var account = ChargeAccount.Of(Readings);

        Assert.Equal(940, account.NetByTankL.Value, 1e-9);
        Assert.Equal(910, account.NetByWeightL!.Value.Value, 1e-9);
        Assert.Equal(1100, account.GrossL!.Value.Value, 1e-9);
        Assert.Equal(190, account.KickbackL!.Value.Value, 1e-9);
        Assert.Equal(455, account.NetLPerM3.Value, 1e-9);
        // 9000 L at 2 % before, 8090 L at 1.9 % after, of 1 kg/L, over 2 m³.
        Assert.Equal((9000 * 0.02 - 8090 * 0.019) / 2, account.RetentionKgPerM3.Value, 1e-9);
        Assert.Contains(new TankAndWeightAgree(), account.Findings);
    }

    [Fact]
    public void The_uncertainty_of_a_retention_holds_strengths_tank_and_scales()
    {
        // 9000 L and 8090 L by 0.01 %, 10 L by the 0.1 % lost, and two weighings of 10 kg by 1.9 %: in hundredths of a kilogram over 2 m³.
        double[] parts = [90, 80.9, 1, 1.9 * Math.Sqrt(200)];

        Assert.Equal(
            Math.Sqrt(parts.Sum(part => part * part)) / 200,
            ChargeAccount.Of(Readings).RetentionKgPerM3.StandardUncertainty,
            1e-9
        );
    }

    [Fact]
    public void The_uncertainty_of_an_uptake_holds_that_of_the_timber_s_volume()
    {
        var (exact, rough) = (
            ChargeAccount.Of(Readings).NetLPerM3,
            ChargeAccount.Of(Readings with { VolumeStandardUncertaintyShare = 0.01 }).NetLPerM3
        );

        Assert.Equal(double.Hypot(exact.StandardUncertainty, 0.01 * exact.Value), rough.StandardUncertainty, 1e-9);
    }

    [Fact]
    public void The_parts_of_an_uncertainty_are_what_each_reading_moves()
    {
        var readings = Readings with
        {
            SolutionDensityStandardUncertaintyKgPerM3 = 2,
            VolumeStandardUncertaintyShare = 0.01,
        };
        foreach (
            var read in (ChargeReadings[])
                [
                    readings,
                    readings with
                    {
                        WeightBeforeKg = null,
                        WeightAfterKg = null,
                    },
                    readings with
                    {
                        TankAfterL = 8300,
                    },
                ]
        )
        {
            var account = ChargeAccount.Of(read);
            double Moved(ChargeReadings moved) =>
                Math.Abs(ChargeAccount.Of(moved).RetentionKgPerM3.Value - account.RetentionKgPerM3.Value);
            double Part(ChargeCause cause) => account.RetentionBudget.Single(part => part.Cause == cause).KgPerM3;

            Assert.Equal(Moved(read with { StrengthBeforePercent = 2.01 }), Part(ChargeCause.StrengthBefore), 1e-9);
            Assert.Equal(Moved(read with { StrengthAfterPercent = 1.91 }), Part(ChargeCause.StrengthAfter), 1e-9);
            Assert.Equal(Moved(read with { TankBeforeL = 9010 }), Part(ChargeCause.TankBefore), 1e-9);
            Assert.Equal(Moved(read with { SolutionDensityKgPerM3 = 1002 }), Part(ChargeCause.SolutionDensity), 1e-9);
            Assert.Equal(0.01 * account.RetentionKgPerM3.Value, Part(ChargeCause.TimberVolume), 1e-9);
            var isTankRead = read.WeightAfterKg is null || read.TankAfterL > 8100;
            if (isTankRead)
                Assert.Equal(Moved(read with { TankAfterL = read.TankAfterL + 10 }), Part(ChargeCause.TankAfter), 1e-9);
            if (read.WeightAfterKg is not null)
                Assert.Equal(
                    Math.Sqrt(2) * Moved(read with { WeightAfterKg = 2040 }),
                    Part(ChargeCause.Weighing),
                    1e-9
                );
            Assert.Equal(
                Math.Sqrt(account.RetentionBudget.Sum(part => part.KgPerM3 * part.KgPerM3)),
                account.RetentionKgPerM3.StandardUncertainty,
                1e-9
            );
        }
    }

    [Fact]
    public void Where_tank_and_scales_differ_beyond_doubt_neither_is_believed()
    {
        // 700 L by the tank, 910 L by the scales; 10 L a reading of the tank, 10 kg a weighing, of 1 kg/L.
        var account = ChargeAccount.Of(Readings with { TankAfterL = 8300 });

        Assert.Equal(new TimberGainedMore(210), account.Findings[0]);
        Assert.Equal(805, account.NetL.Value, 1e-9);
        Assert.Equal(Math.Sqrt((105 * 105) + 100), account.NetL.StandardUncertainty, 1e-9);
        Assert.Equal((9000 * 0.02 - 8195 * 0.019) / 2, account.RetentionKgPerM3.Value, 1e-9);
        var apart = account.RetentionBudget.Single(part => part.Cause == ChargeCause.TankAgainstScales);
        Assert.Equal(105 * 0.019 / 2, apart.KgPerM3, 1e-9);
        Assert.DoesNotContain(
            ChargeAccount.Of(Readings).RetentionBudget,
            part => part.Cause == ChargeCause.TankAgainstScales
        );
    }

    [Fact]
    public void A_tank_that_lost_more_than_was_in_the_timber_at_peak_pressure_is_told()
    {
        Assert.Contains(new KeptMoreThanAtPeak(), ChargeAccount.Of(Readings with { TankAfterL = 7700 }).Findings);
        Assert.DoesNotContain(new KeptMoreThanAtPeak(), ChargeAccount.Of(Readings).Findings);
    }

    [Fact]
    public void Product_beyond_what_the_solution_carried_is_what_the_tank_lost_in_strength()
    {
        var account = ChargeAccount.Of(Readings);

        // 910 L at 2 % carry 18.2 kg; 26.29 kg are gone.
        Assert.Equal(26.29 / 18.2 - 1, account.SelectiveShare!.Value.Value, 1e-9);
        Assert.Equal(
            0,
            ChargeAccount.Of(Readings with { StrengthAfterPercent = 2 }).SelectiveShare!.Value.Value,
            1e-12
        );
        Assert.Null(ChargeAccount.Of(Readings with { StrengthAfterPercent = null }).SelectiveShare);
    }

    [Fact]
    public void A_tank_of_one_strength_gives_what_the_solution_kept_carries() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[8000, 8990])
            .Sample(
                (strength, after) =>
                {
                    var account = ChargeAccount.Of(
                        Readings with
                        {
                            TankAfterL = after,
                            WeightBeforeKg = null,
                            WeightAfterKg = null,
                            StrengthBeforePercent = strength,
                            StrengthAfterPercent = null,
                        }
                    );
                    Assert.Equal((9000 - after) * strength / 100 / 2, account.RetentionKgPerM3.Value, 1e-9);
                }
            );

    [Fact]
    public void A_discrepancy_between_tank_and_scales_is_found()
    {
        Assert.Contains(new TankLostMore(190), ChargeAccount.Of(Readings with { TankAfterL = 7900 }).Findings);
        Assert.Contains(new TimberGainedMore(110), ChargeAccount.Of(Readings with { TankAfterL = 8200 }).Findings);
        Assert.Contains(
            new NotWeighed(),
            ChargeAccount.Of(Readings with { WeightBeforeKg = null, WeightAfterKg = null }).Findings
        );
    }

    [Fact]
    public void Whatever_may_be_asked_of_drying_has_an_answer() =>
        Gen.Select(Gen.Double[0.5, 2000], Gen.Double[0.1, 250], Gen.Double[0.01, 100])
            .Sample(
                (thicknessMm, limitPercent, more) =>
                    DryingTime.Days(
                        thicknessMm,
                        Math.Min(250, limitPercent + more),
                        limitPercent,
                        Math.Max(0, Math.Min(30, limitPercent - 0.01)),
                        DryingTime.SoftwoodDiffusionM2PerS.Value
                    ) >= 0,
                iter: 200
            );

    [Fact]
    public void More_kept_than_was_in_at_peak_is_found() =>
        Assert.Contains(new KeptMoreThanAtPeak(), ChargeAccount.Of(Readings with { TankAtPeakL = 3800 }).Findings);

    [Theory]
    [InlineData(1.8, typeof(SolutionLostStrength))]
    [InlineData(2.2, typeof(SolutionGainedStrength))]
    public void A_change_of_strength_by_more_than_a_twentieth_is_found(double after, Type finding) =>
        Assert.Contains(
            ChargeAccount.Of(Readings with { StrengthAfterPercent = after }).Findings,
            found => found.GetType() == finding
        );

    [Fact]
    public void Every_contradiction_of_the_readings_is_found_at_once()
    {
        var contradictory = Readings with { TankAfterL = 9500, WeightAfterKg = 900 };

        Assert.Equal([new TankGained(9000, 9500), new TimberLost(1120, 900)], ChargeAccount.Faults(contradictory));
        Assert.Throws<ArgumentException>(() => ChargeAccount.Of(contradictory));
    }

    [Fact]
    public void Half_of_what_gives_an_uptake_is_a_fault()
    {
        Assert.Equal(
            [new GrossHalfRead(IsPeakMissing: true), new WeighedOnce(IsBeforeMissing: false)],
            ChargeAccount.Faults(Readings with { TankAtPeakL = null, WeightAfterKg = null })
        );
        Assert.Equal([new TankRoseToPeak(9100)], ChargeAccount.Faults(Readings with { TankAtPeakL = 9100 }));
    }

    [Fact]
    public void Timber_takes_up_no_more_than_its_own_volume()
    {
        var litres = 1000 * Readings.VolumeM3;

        Assert.Equal(
            [new TookMoreThanTimber(UptakeReading.TankAfter, litres + 1, Readings.VolumeM3)],
            ChargeAccount.Faults(Readings with { TankAfterL = Readings.TankBeforeL - litres - 1 })
        );
        Assert.Equal(
            [new TookMoreThanTimber(UptakeReading.TankAtPeak, litres + 1, Readings.VolumeM3)],
            ChargeAccount.Faults(Readings with { TankAtPeakL = Readings.TankBeforeL - litres - 1, VesselFreeL = 0 })
        );
    }

    [Fact]
    public void The_vessel_holds_no_more_under_pressure_than_went_into_it()
    {
        var read = Readings with { TankAtPeakL = 8800 };

        Assert.Equal([new VesselGained(8800, read.TankBeforeL - read.VesselFreeL!.Value)], ChargeAccount.Faults(read));
    }

    [Fact]
    public void Timber_is_no_lighter_than_the_lightest_wood()
    {
        var fault = Assert.Single(ChargeAccount.Faults(Readings with { WeightBeforeKg = 100, WeightAfterKg = 900 }));

        Assert.Equal(new TimberTooLight(100, 80 * Readings.VolumeM3), fault);
    }

    [Fact]
    public void Timber_gives_no_product_to_the_tank()
    {
        var read = Readings with { StrengthAfterPercent = 2.5 };
        var most = read.StrengthBeforePercent * read.TankBeforeL / read.TankAfterL;

        Assert.Equal([new TankGainedProduct(2.5, most)], ChargeAccount.Faults(read));
        Assert.Empty(ChargeAccount.Faults(read with { StrengthAfterPercent = most }));
    }

    [Fact]
    public void A_solution_without_product_is_no_solution() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ChargeAccount.Of(Readings with { StrengthBeforePercent = 0 }));

    [Fact]
    public void Twice_the_thickness_dries_in_four_times_the_days()
    {
        var thin = DryingTime.Days(25, 60, 28, 12, 3e-10);

        Assert.Equal(4 * thin, DryingTime.Days(50, 60, 28, 12, 3e-10), 1e-6 * thin);
        Assert.Equal(0, DryingTime.Days(25, 26, 28, 12, 3e-10));
    }
}

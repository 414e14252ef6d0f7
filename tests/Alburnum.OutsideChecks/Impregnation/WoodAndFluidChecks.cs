using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Tests.Shared.ClosedForms;

namespace Alburnum.OutsideChecks.Impregnation;

[Computed]
public sealed class WoodAndFluidChecks
{
    [Fact]
    [Published("Wood Handbook (FPL-GTR-190), 2010", "chapter 4, worked example for white ash, at second hand")]
    public void White_ash_of_basic_gravity_0_55_weighs_678_kg_per_m3_at_12_percent()
    {
        var shrinkage = WoodDensity.UsualShrinkagePercent(0.55);
        var gravity = WoodDensity.SpecificGravity(0.55, shrinkage, 12);

        // The printed 0.605 was read off a chart; 1 % allows for that.
        Assert.Equal(0.605, gravity, 0.00605);
        Assert.Equal(678, WoodDensity.KgPerM3(gravity, 12), 6.78);
    }

    [Fact]
    [Published("Wood Handbook (FPL-GTR-190), 2010", "tables 4-3 and 5-3a, coast Douglas-fir, at second hand")]
    public void Coast_Douglas_fir_at_12_percent_has_the_printed_gravity()
    {
        Assert.Equal(7.44, WoodDensity.ShrinkagePercent(12.4, 12), 1e-9);
        Assert.Equal(0.48, WoodDensity.SpecificGravity(0.45, 12.4, 12), 0.007);
    }

    [Fact]
    [WorkedOut("what is not wall holds water: G/1.54 + G·M/100 = 1, G 0.40")]
    public void Wood_of_gravity_0_40_holds_185_percent_of_water_at_most()
    {
        var most = WoodDensity.GreatestMoisturePercent(0.40);

        Assert.Equal(185.1, most, 0.1);
        Assert.Equal(1, 0.40 / 1.54 + 0.40 * most / 100, 1e-9);
    }

    [Theory]
    [WorkedOut("what is neither wall, of gravity 1.5, nor bound water: 1 − G·(0.667 + M/100)")]
    [InlineData(0.36, 25, 0.6699)]
    [InlineData(0.40, 20, 0.6532)]
    [InlineData(0.43, 25, 0.6057)]
    [InlineData(0.48, 28, 0.5454)]
    [InlineData(0.35, 18, 0.7036)]
    public void Void_fraction_follows_from_gravity_and_moisture(double gravity, double moisture, double voids) =>
        Assert.Equal(voids, VoidFraction.Of(gravity, moisture), 0.0001);

    [Theory]
    [Published(
        "Trade magazine on timber moisture",
        "moisture that timber comes to indoors, whole per cent; 20 °C taken here"
    )]
    [InlineData(0.30, 6)]
    [InlineData(0.50, 9)]
    [InlineData(0.65, 12)]
    [InlineData(0.80, 16)]
    public void Wood_comes_to_the_moisture_that_the_trade_prints(double humidity, double percent) =>
        Assert.Equal(percent, EquilibriumMoisture.Percent(20, humidity), 0.5);

    [Theory]
    [IndependentProgram("iapws 1.5.3 (IAPWS 2008 viscosity)", "reference/flow_reference.py")]
    [InlineData(10, 1.3059)]
    [InlineData(15, 1.1376)]
    [InlineData(20, 1.0016)]
    [InlineData(30, 0.7972)]
    [InlineData(40, 0.6527)]
    [InlineData(60, 0.4660)]
    public void Viscosity_of_water_is_within_0_7_percent(double celsius, double mPaS) =>
        Assert.Equal(mPaS, TreatingLiquid.Water(celsius).ViscosityMPaS, 0.007 * mPaS);

    [Theory]
    [IndependentProgram("iapws 1.5.3 (IAPWS-97)", "reference/flow_reference.py")]
    [InlineData(20, 998.206)]
    [InlineData(60, 983.211)]
    public void Density_of_water_is_within_0_05_kg_per_m3(double celsius, double kgPerM3) =>
        Assert.Equal(kgPerM3, TreatingLiquid.Water(celsius).DensityKgPerM3, 0.05);
}

[Computed]
public sealed class SharpFrontChecks
{
    [Fact]
    [WorkedOut("x = √(2kΔpt/μφ): k 1e-17 m², 1200 kPa, 7200 s, μ 1.002 mPa·s, φ 0.6")]
    public void A_flat_front_stands_at_16_954_mm_and_goes_root_2_further_in_twice_the_time()
    {
        var once = PlaneFront.DepthMm(1e-17, 1200, 120, 1.002, 0.6);

        Assert.Equal(16.954, once, 0.001);
        Assert.Equal(Math.Sqrt(2) * once, PlaneFront.DepthMm(1e-17, 1200, 240, 1.002, 0.6), 1e-9);
        Assert.Equal(120, PlaneFront.MinutesToDepth(once, 1e-17, 1200, 1.002, 0.6), 1e-9);
    }

    [Theory]
    [WorkedOut("shrinking core: R 50 mm, k 1e-16 m², 1200 kPa, μ 1.002 mPa·s, φ 0.6")]
    [InlineData(60, 4.980, 0.1893)]
    [InlineData(300, 11.415, 0.4045)]
    [InlineData(600, 16.503, 0.5512)]
    [InlineData(1200, 24.267, 0.7351)]
    [InlineData(2400, 37.581, 0.9383)]
    public void A_front_closing_on_the_pith(double seconds, double depthMm, double share)
    {
        var fill = RadialFront.MinutesToFill(50, 1e-16, 1200, 1.002, 0.6);
        var depth = RadialFront.DepthMm(seconds / 60, fill, 50);

        Assert.Equal(3131.25, fill * 60, 0.01);
        Assert.Equal(depthMm, depth, 0.001);
        Assert.Equal(share, RadialFront.TreatedShare(depth, 50), 0.0001);
    }

    [Theory]
    [WorkedOut("ideal gas in a dead end: L 100 mm, k 1e-15 m², 101.3 → 1300 kPa, μ 1.002 mPa·s, φ 0.6")]
    [InlineData(0.25, 135.40)]
    [InlineData(0.50, 555.68)]
    [InlineData(0.75, 1317.3)]
    [InlineData(0.90, 2058.5)]
    [InlineData(0.99, 3128.1)]
    public void Air_shut_in_slows_the_front(double shareOfLimit, double seconds)
    {
        var limit = 100 * PlaneFront.FillLimit(101.3, 1300);
        var minutes = PlaneFront.MinutesToDepthAgainstAir(shareOfLimit * limit, 100, 1e-15, (101.3, 1300), 1.002, 0.6);

        Assert.Equal(92.208, limit, 0.001);
        Assert.Equal(seconds, minutes * 60, 0.005 * seconds);
    }

    [Theory]
    [WorkedOut("1 − p₀/p")]
    [InlineData(101.325, 1380, 0.9266)]
    [InlineData(15, 1380, 0.9891)]
    [InlineData(101.325, 1000, 0.8987)]
    [InlineData(101.325, 800, 0.8733)]
    public void Air_left_behind_limits_how_far_the_voids_fill(double airKPa, double liquidKPa, double share) =>
        Assert.Equal(share, PlaneFront.FillLimit(airKPa, liquidKPa), 0.0001);
}

[Computed]
public sealed class DryingTimeChecks
{
    [Fact]
    [WorkedOut(
        "half-time of the series of a sheet with two open faces: Σ 8/((2n + 1)²π²)·exp(−(2n + 1)²π²·Dt/l²) = 0.5"
    )]
    public void Half_the_water_above_equilibrium_leaves_a_sheet_in_the_half_time_of_sorption()
    {
        const double halfTime = 0.04919;
        var left = Enumerable
            .Range(0, 50)
            .Select(n => Math.PI * Math.PI * (2 * n + 1) * (2 * n + 1))
            .Sum(square => 8 / square * Math.Exp(-square * halfTime));
        Assert.Equal(0.5, left, 1e-4);

        // 50 mm thick, 3e-10 m²/s.
        const double days = halfTime * 0.0025 / 3e-10 / 86400;

        Assert.Equal(days, DryingTime.Days(50, 40, 28, 16, 3e-10), 0.002 * days);
    }
}

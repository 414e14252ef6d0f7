using Alburnum.Flow.Pieces;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Heating;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Workflows.Tests.Impregnation;

/// <summary>What is read from single ways and what the flow solver finds on a whole section are one answer: every schedule shipped, eight decades of permeability, dry and wet.</summary>
public sealed class OnePhysicsTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));

    public static TheoryData<string> Schedules =>
        [.. Facts.Impregnation.Schedules.Select(schedule => schedule.Value.Name)];

    private static PermeabilityLaw Even(double lateralM2) =>
        Facts.Impregnation.Of(Facts.Species.Get("Scots pine"), isHeartwood: false) with
        {
            LateralMedianM2 = lateralM2,
            Directions = new("test", 1, 6000, new(Standing.FromMemory, "test", "", "", "")),
            BatchLnSpread = 0,
            PieceLnSpread = 0,
            WithinLnSpread = 0,
        };

    private static PredictionQuestion Square(string schedule, double lateralM2, double waterShare) =>
        new()
        {
            Section = new RectangularSection(40, 40),
            Log = LogGeometry.AllSapwood,
            Sapwood = Even(lateralM2),
            Heartwood = Even(lateralM2),
            VoidFraction = 0.6,
            WaterShare = waterShare,
            Liquid = TreatingLiquid.Water(),
            Schedule = Facts.Impregnation.Schedules.Single(row => row.Value.Name == schedule).Value,
            Incising = null,
            Rule = new NoDepth(),
            ZoneDepthMm = null,
        };

    private static SolverGap Gap(string schedule, double lateralM2, double waterShare) =>
        Gap(Square(schedule, lateralM2, waterShare), schedule);

    private static SolverGap Gap(PredictionQuestion question, string schedule)
    {
        var quick = QuickPrediction.Draw(question, WayRun.Table(question), seed: 1, pieces: 100);
        // A brush leaves about a millimetre: less than the cells that do for the rest can tell.
        var solved = SectionRun.WithCoarser(
            question,
            schedule.StartsWith("brushing", StringComparison.Ordinal) ? 96 : 48
        );
        Assert.IsType<Completed>(solved.Run.Ending);
        return SolverGap.Of(quick, solved);
    }

    [Theory]
    [MemberData(nameof(Schedules))]
    public void In_dry_wood_single_ways_and_the_whole_section_agree_within_a_tenth_and_the_error_of_the_grid(
        string schedule
    ) =>
        Parallel.For(
            -20,
            -12,
            new ParallelOptions { CancellationToken = TestContext.Current.CancellationToken },
            decade =>
            {
                var gap = Gap(schedule, Math.Pow(10, decade), 0);
                Assert.False(gap.IsLarge, $"{schedule}, 1e{decade} m²: {gap}");
            }
        );

    [Theory]
    [InlineData(0.44, 0)]
    [InlineData(4.5, 0)]
    [InlineData(0.44, 60)]
    [InlineData(4.5, 60)]
    public void So_they_do_where_the_rays_let_more_or_less_through_than_the_rings(
        double tangentialToRadial,
        double pithBelowMm
    ) =>
        Parallel.For(
            -19,
            -16,
            new ParallelOptions { CancellationToken = TestContext.Current.CancellationToken },
            decade =>
            {
                var law = Even(Math.Pow(10, decade)) with
                {
                    Directions = new("test", tangentialToRadial, 6000, new(Standing.FromMemory, "test", "", "", "")),
                };
                var question = Square("full cell", law.LateralMedianM2, 0) with
                {
                    Sapwood = law,
                    Heartwood = law,
                    Log = new(0, -pithBelowMm, 0, 1000),
                };
                var gap = Gap(question, "full cell");
                Assert.False(gap.IsLarge, $"1e{decade} m²: {gap}");
            }
        );

    [Theory]
    [InlineData(10, 65)]
    [InlineData(40, 5)]
    public void So_they_do_where_the_solution_warms_or_cools_the_wood(double woodCelsius, double solutionCelsius) =>
        Parallel.For(
            -19,
            -15,
            new ParallelOptions { CancellationToken = TestContext.Current.CancellationToken },
            decade =>
            {
                var question = Square("full cell", Math.Pow(10, decade), 0) with
                {
                    Liquid = TreatingLiquid.Water(solutionCelsius),
                    Warming = new(new WoodHeat(480, 20), woodCelsius, solutionCelsius),
                };
                var gap = Gap(question, "full cell");
                Assert.False(gap.IsLarge, $"1e{decade} m²: {gap}");
            }
        );

    // Past the middles of the faces of a square more flows in than past its corners, and the wood's own water is pushed deeper there.
    [Theory]
    [MemberData(nameof(Schedules))]
    public void In_wet_wood_depths_agree_within_a_sixth_and_uptakes_within_a_tenth(string schedule) =>
        Parallel.For(
            0,
            3,
            new ParallelOptions { CancellationToken = TestContext.Current.CancellationToken },
            step =>
            {
                var gap = Gap(schedule, Math.Pow(10, 2 * step - 18), 0.3);
                Assert.Equal(
                    gap.DepthMm.Solved,
                    gap.DepthMm.Expected,
                    gap.DepthMm.Solved / 6 + gap.DepthMm.SolverError + 0.1
                );
                Assert.Equal(
                    gap.UptakeLPerM3.Solved,
                    gap.UptakeLPerM3.Expected,
                    gap.UptakeLPerM3.Solved / 10 + gap.UptakeLPerM3.SolverError + 2
                );
            }
        );
}

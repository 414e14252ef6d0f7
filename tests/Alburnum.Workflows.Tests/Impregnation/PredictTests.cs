using Alburnum.Acceptance;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using CsCheck;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class PredictTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private static readonly PredictionRequest Spruce = new()
    {
        Treating = new()
        {
            Species = Facts.Species.Get("Norway spruce"),
            Section = new RectangularSection(100, 100),
            IsWholeSapwood = true,
        },
        Pieces = 500,
        Seed = 1,
    };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static TreatingPrediction Of(PredictionRequest request, IProgress<WorkDone>? progress = null) =>
        Predict.Run(request, Facts, progress, Stop);

    private static PredictionRequest With(Func<TreatingRequest, TreatingRequest> change) =>
        Spruce with
        {
            Treating = change(Spruce.Treating),
        };

    private static TreatingRequest To(TreatingRequest treating, double depthMm) =>
        treating with
        {
            IsWholeSapwood = false,
            DepthMm = depthMm,
        };

    [Fact]
    public void A_greater_depth_is_met_by_no_more_cores_and_takes_longer() =>
        Gen.Select(Gen.Double[0.5, 4], Gen.Double[0.1, 2])
            .Sample(
                (depth, more) =>
                {
                    var shallow = Of(With(treating => To(treating, depth)));
                    var deep = Of(With(treating => To(treating, depth + more)));

                    return deep.Quick.CoreShare.Value <= shallow.Quick.CoreShare.Value
                        && (deep.MinutesToDepth?.Middle ?? double.MaxValue) >= shallow.MinutesToDepth!.Value.Middle;
                },
                iter: 3
            );

    [Fact]
    public void Retention_rises_with_the_strength_in_proportion_and_is_absent_without_it() =>
        Gen.Select(Gen.Double[0.5, 10], Gen.Double[1.1, 5])
            .Sample(
                (strength, factor) =>
                {
                    var weak = Of(With(treating => treating with { StrengthPercent = strength }));
                    var strong = Of(With(treating => treating with { StrengthPercent = factor * strength }));

                    Assert.Equal(
                        factor,
                        strong.RetentionKgPerM3!.Value.Middle / weak.RetentionKgPerM3!.Value.Middle,
                        1e-9
                    );
                    Assert.Null(Of(Spruce).RetentionKgPerM3);
                },
                iter: 10
            );

    [Fact]
    public void A_plan_that_bears_more_failures_passes_no_less_often()
    {
        double Chance(int failures) =>
            Of(
                With(treating => To(treating, 1.5) with { Plan = new SingleSamplingPlan(20, failures) })
            ).ChanceToPass!.Value;

        var chances = new[] { 0, 3, 10 }.Select(Chance).ToList();

        Assert.Equal(chances.Order(), chances);
        Assert.Null(Of(Spruce).ChanceToPass);
    }

    [Fact]
    public void The_flow_solver_runs_only_where_cells_are_given_and_tells_how_far_it_is()
    {
        var shares = new Shares();
        var solved = Of(Spruce with { Cells = 12 }, shares).Solved;

        Assert.NotNull(solved);
        Assert.InRange(solved.Section.ReachedShare, 0, 1);
        Assert.Equal(shares.All.Order(), shares.All);
        Assert.All(shares.All, share => Assert.InRange(share, 0, 1));
        Assert.Null(Of(Spruce).Solved);
    }

    [Fact]
    public void Depths_of_the_plant_narrow_the_law_that_they_speak_of_and_no_other()
    {
        var plant = Plant(i => Depth(i, 2.6 + 0.3 * (i % 5)));
        var (before, after) = (Of(Spruce), Of(Spruce with { Plant = plant }));
        var wood = Assert.Single(after.Plant);
        var fit = wood.Calibration.Fit;

        Assert.False(wood.IsHeartwood);
        Assert.True(fit.After.PieceToPieceLnSpread < fit.Before.PieceToPieceLnSpread);
        Assert.Equal((6, 60), (fit.After.FittedCharges, fit.Depths));
        Assert.Equal(fit.After, after.Asked.Prediction.Sapwood);
        Assert.Equal(before.Asked.Prediction.Heartwood, after.Asked.Prediction.Heartwood);
        Assert.Equal(5, wood.Calibration.DepthsMm!.Charges.Count);
        Assert.Null(after.UptakeFactor);
    }

    [Fact]
    public void Moisture_below_fibre_saturation_leaves_depth_as_it_is()
    {
        var (dry, damp) = (Fit(18), Fit(24));

        // Permeability and the room for solution change alike.
        Assert.Equal(dry.LnMedian.Value, damp.LnMedian.Value, 1e-6);

        static PermeabilityFit Fit(double moisture) =>
            Of(Spruce with { Plant = Plant(i => Depth(i, 3) with { MoisturePercent = moisture }) })
                .Plant[0]
                .Calibration.Fit;
    }

    [Fact]
    public void A_longer_pressure_period_explains_the_same_depth_by_less_permeable_wood()
    {
        var (longer, shorter) = (Median(240), Median(60));

        Assert.InRange(shorter - longer, Math.Log(2), Math.Log(5));

        static double Median(double minutes) =>
            Of(Spruce with { Plant = Plant(i => Depth(i, 3) with { PressureMinutes = minutes }) })
                .Plant[0]
                .Calibration.Fit.LnMedian.Value;
    }

    [Fact]
    public void Uptakes_alone_calibrate_permeability_and_uptake()
    {
        var expected = Of(Spruce).Quick.UptakeLPerM3.Middle;
        var after = Of(
            Spruce with
            {
                Plant = Plant(i =>
                    new()
                    {
                        Charge = $"c{i}",
                        UptakeLPerM3 = 1.5 * expected,
                        Line = i + 2,
                    }
                ),
            }
        );
        var calibration = Assert.Single(after.Plant).Calibration;

        Assert.Equal((0, 60), (calibration.Fit.Depths, calibration.Fit.Read(PlantEvidenceKind.Uptakes)));
        Assert.True(calibration.Fit.After.LateralMedianM2 > 1.3 * calibration.Fit.Before.LateralMedianM2);
        Assert.InRange(after.Quick.UptakeLPerM3.Middle / expected, 1.35, 1.65);
        Assert.Equal(59, calibration.UptakesLPerM3!.Charges.Count);
    }

    [Fact]
    public void What_no_charge_can_have_been_is_refused_with_its_line()
    {
        var deep = Refused(i => Depth(i, i == 3 ? 51 : 2));
        var unknown = Refused(i => Depth(i, 2) with { Schedule = i == 3 ? "no such" : "" });
        var soaked = Refused(i => Depth(i, 2) with { MoisturePercent = i == 3 ? 240 : 20 });

        Assert.Equal(("own.csv", 5, "depth_mm"), (deep.File, deep.Line, deep.Field));
        Assert.Equal(("own.csv", 5, "schedule"), (unknown.File, unknown.Line, unknown.Field));
        Assert.Equal(("own.csv", 5, "moisture_percent"), (soaked.File, soaked.Line, soaked.Field));

        static InputProblem Refused(Func<int, PlantRow> row) =>
            Assert.Single(Assert.Throws<InputRefusedException>(() => Of(Spruce with { Plant = Plant(row) })).Problems);
    }

    [Fact]
    public void Incised_wood_has_its_penalty_and_its_standing_is_no_stronger()
    {
        var incised = Of(With(treating => treating with { Incising = Facts.Impregnation.Patterns[0].Name }));

        Assert.Equal(Facts.Impregnation.Penalty, incised.Penalty);
        Assert.True(incised.Standing >= Of(Spruce).Standing);
        Assert.Null(Of(Spruce).Penalty);
    }

    [Fact]
    public void A_stop_ends_the_work() =>
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Predict.Run(Spruce, Facts, null, new CancellationToken(canceled: true))
        );

    private static PlantRecord Plant(Func<int, PlantRow> row) =>
        new("own.csv", [.. Enumerable.Range(0, 60).Select(row)]);

    private static PlantRow Depth(int i, double depthMm) =>
        new()
        {
            Charge = $"c{i / 10}",
            Piece = $"p{i / 2}",
            DepthMm = depthMm,
            Line = i + 2,
        };

    private sealed class Shares : IProgress<WorkDone>
    {
        public List<double> All { get; } = [];

        public void Report(WorkDone value) => All.Add(value.Share);
    }
}

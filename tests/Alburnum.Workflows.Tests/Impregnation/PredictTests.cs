using Alburnum.Acceptance;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sorbing;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
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
    public void Neighbouring_places_of_one_section_are_not_so_many_pieces()
    {
        var plant = Plant(i =>
            Depth(0, 3 + Math.Sin(i / 6.0)) with
            {
                Place = (1 + i / 15, 5 * (i % 15)),
                Line = i + 2,
            }
        );
        var wood = Assert.Single(Of(Spruce with { Plant = plant }).Plant);
        var section = Assert.Single(wood.Sections);

        Assert.Equal(60, section.Places);
        Assert.InRange(section.Counted, 4, 12);
        Assert.Equal((section.Counted, 1), (wood.Calibration.Fit.Depths, wood.Calibration.Fit.Pieces));
    }

    [Fact]
    public void The_tank_s_readings_tell_what_the_solver_s_uptake_would_be()
    {
        // Wood 2.5 times as permeable as the median takes up 1.58 times as much at every moment, as long as the fronts have not met.
        var curve = Of(Spruce with { Cells = 20 }).Solved!.Section.Run.Moments;
        double By(double minutes) => curve.First(moment => moment.Minutes >= minutes).GainedM3;
        var (end, net) = (By(180), Of(Spruce).Quick.UptakeLPerM3.Middle);
        double[] minutes = [60, 70, 90, 120, 180];
        var (slow, fast) = (Fit(1), Fit(Math.Sqrt(2.5)));

        Assert.Equal(12, fast.Read(PlantEvidenceKind.Tank));
        Assert.InRange(slow.LnMedian.Value - Math.Log(slow.Before.LateralMedianM2), -0.35, 0.35);
        Assert.InRange(fast.LnMedian.Value - slow.LnMedian.Value, 0.5, 1.3);
        Assert.True(slow.LnMedian.StandardUncertainty < 0.75 * slow.Before.BatchLnSpread);

        PermeabilityFit Fit(double factor) =>
            Of(
                Spruce with
                {
                    Plant = Plant(i =>
                        new()
                        {
                            Charge = $"c{i / 5}",
                            Tank = new(minutes[i % 5], 9000 - 6 * factor * net * By(minutes[i % 5]) / end, 10, 6),
                            Line = i + 2,
                        }
                    ),
                }
            )
                .Plant[0]
                .Calibration.Fit;
    }

    [Fact]
    public void Zone_assays_speak_of_wood_and_walls_and_say_that_these_are_not_known()
    {
        var asked = Spruce with { Treating = Spruce.Treating with { StrengthPercent = 3 } };
        var bands = Of(asked).Product[0].Bands;
        var plant = Plant(i =>
            new()
            {
                Charge = $"c{i / 2}",
                Zone = new(bands[i % 2].FromMm, bands[i % 2].ToMm, 0.03 * bands[i % 2].InBand.Middle, 0.1, null),
                Line = i + 2,
            }
        );
        var unknown = Assert.Single(Of(asked with { Plant = plant }).Plant);
        var known = Assert.Single(
            Of(asked with { Plant = plant, Treating = asked.Treating with { Sorption = new(null, 0.01) } }).Plant
        );

        Assert.Equal(unknown.WallsMostGPerKg.Count, unknown.Calibration.Fit.WallShares.Count);
        Assert.Equal(1, unknown.Calibration.Fit.WallShares.Sum(), 1e-9);
        Assert.Empty(known.WallsMostGPerKg);
        Assert.True(
            known.Calibration.Fit.LnMedian.StandardUncertainty < unknown.Calibration.Fit.LnMedian.StandardUncertainty
        );
    }

    [Fact]
    public void Readings_of_charges_that_cannot_be_are_refused_with_their_line()
    {
        var dry = Refused(i => Row(i) with { Tank = new(i, 9000 - i, 10, 6) });
        var rising = Refused(i => Row(i) with { Tank = new(80 + i, 9000 + 100 * i, 10, 6) });
        var weak = Refused(i => Row(i) with { Zone = new(0, 5, 3, 0, null) });
        var deep = Refused(i => Row(i) with { Zone = new(0, 51, 3, 0, 2) });
        var overlapping = Refused(i => Row(i) with { Zone = new(i % 2, 5 + i % 2, 3, 0, 2) });
        var impossible = Refused(i => Row(i) with { Zone = new(0, 3, 900, 20, 2.5) });

        Assert.Equal(("own.csv", 2, "at_minutes"), (dry.File, dry.Line, dry.Field));
        Assert.StartsWith("45 to 200 min after the schedule", dry.Expected, StringComparison.Ordinal);
        Assert.Equal(("own.csv", 3, "tank_l"), (rising.File, rising.Line, rising.Field));
        Assert.Equal(("own.csv", 2, "strength_percent"), (weak.File, weak.Line, weak.Field));
        Assert.Equal(("own.csv", 2, "to_mm"), (deep.File, deep.Line, deep.Field));
        Assert.Equal(("own.csv", 3, "from_mm"), (overlapping.File, overlapping.Line, overlapping.Field));
        Assert.Equal(("own.csv", 2, "retention_kg_per_m3"), (impossible.File, impossible.Line, impossible.Field));

        static PlantRow Row(int i) => new() { Charge = "c", Line = i + 2 };

        static InputProblem Refused(Func<int, PlantRow> row) =>
            Assert.Single(Assert.Throws<InputRefusedException>(() => Of(Spruce with { Plant = Plant(row) })).Problems);
    }

    [Theory]
    [InlineData(300, 25)]
    [InlineData(100, 50)]
    [InlineData(100, 100)]
    public void Faces_count_by_their_length_in_a_piece_that_is_filled(double widthMm, double heightMm)
    {
        var quick = Of(Pine(WoodThroughout.Sapwood, new RectangularSection(widthMm, heightMm))).Quick;

        // The way in from a face ends in the middle of the piece.
        Assert.Equal(widthMm * heightMm / (widthMm + heightMm), quick.MeanMm.Middle, 0.02 * quick.MeanMm.Middle);
    }

    [Theory]
    [InlineData(100, 100, 20)]
    [InlineData(100, 100, 5)]
    [InlineData(150, 50, 10)]
    [InlineData(75, 75, 20)]
    public void A_zone_never_holds_more_than_the_whole_piece(double widthMm, double heightMm, double zoneMm)
    {
        var share = 1 - (widthMm - 2 * zoneMm) * (heightMm - 2 * zoneMm) / (widthMm * heightMm);
        var asked = Pine(null, new RectangularSection(widthMm, heightMm));
        var product = Of(
            asked with
            {
                Treating = asked.Treating with { ZoneDepthMm = zoneMm, StrengthPercent = 2 },
            }
        ).Product;

        Assert.NotEmpty(product);
        Assert.All(
            product,
            each => Assert.InRange(each.Quick.ZoneLPerM3.Middle * share, 0, (1 + 1e-9) * each.Quick.KeptLPerM3.Middle)
        );
    }

    [Fact]
    public void Faces_over_a_round_heartwood_are_as_deep_in_their_middle_as_the_solver_has_them()
    {
        var pine = Of(Pine(null, new RectangularSection(100, 100)) with { Cells = 60 });

        Assert.InRange(pine.Quick.FaceMiddleMm() / pine.Solved!.Section.MeanDepthMm(), 0.9, 1.1);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(99)]
    public void No_wood_holds_more_product_than_its_cavities_and_walls_do(double strengthPercent)
    {
        foreach (var sorption in new[] { null, new Sorption(1000, null) })
        {
            var pine = Pine(null, new RectangularSection(100, 100));
            var answer = Of(
                pine with
                {
                    Treating = pine.Treating with { StrengthPercent = strengthPercent, Sorption = sorption },
                }
            );
            // 300 g in a kilogram of dry wood, the most that may be said of walls.
            var most =
                answer.Asked.Prediction.VoidFraction * 1000 * answer.KgPerL!.Value + 0.3 * answer.Asked.DryKgPerM3;

            Assert.All(
                answer.Product,
                product =>
                {
                    Assert.InRange(product.Quick.ZoneLPerM3.High * answer.KgPerL!.Value, 0, most * 1.0001);
                    Assert.All(
                        product.Bands,
                        band => Assert.InRange(band.ToFace.High * answer.KgPerL!.Value, 0, most * 1.0001)
                    );
                }
            );
        }
    }

    [Fact]
    public void A_core_from_a_narrow_face_ends_where_the_broad_faces_are_not_filled()
    {
        var pine = Pine(null, new RectangularSection(300, 25));
        var solved = Of(pine with { Cells = 60, Treating = pine.Treating with { HeartwoodRadiusMm = 140 } });

        var onSection = solved.Solved!.Section.MeanDepthMm();
        Assert.InRange(solved.Quick.FaceMiddleMm(), 0.5 * onSection, 2 * onSection);
        Assert.True(solved.Quick.MeanMm.Middle < 12.5, $"mean depth {solved.Quick.MeanMm} in a board 25 mm thick");
    }

    [Fact]
    public void A_half_round_that_both_fill_is_not_said_to_differ()
    {
        var beech = With(treating =>
            treating with
            {
                Species = Facts.Species.Get("European beech"),
                Section = new HalfRoundSection(120),
            }
        );
        var solved = Of(beech with { Cells = 60 });

        Assert.Equal(1, solved.Solved!.Section.ReachedShare, 0.03);
        Assert.False(SolverGap.Of(solved.Quick, solved.Solved.Section).IsLarge);
    }

    [Fact]
    public void Sapwood_throughout_is_as_treatable_as_sapwood() =>
        Assert.Equal(
            ReachVerdict.Likely,
            Of(Pine(WoodThroughout.Sapwood, new RectangularSection(100, 100))).Usual!.Verdict
        );

    private static PredictionRequest Pine(WoodThroughout? all, Section section) =>
        With(treating =>
            treating with
            {
                Species = Facts.Species.Get("Scots pine"),
                Section = section,
                All = all,
                IsWholeSapwood = false,
                DepthMm = 5,
            }
        );

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

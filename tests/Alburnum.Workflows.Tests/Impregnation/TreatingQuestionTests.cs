using Alburnum.Impregnation;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using CsCheck;

namespace Alburnum.Workflows.Tests.Impregnation;

public sealed class TreatingQuestionTests
{
    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private static readonly TreatingRequest Pine = new()
    {
        Species = Facts.Species.Get("Scots pine"),
        Section = new RectangularSection(100, 100),
    };

    private static double Air(PredictionQuestion question) => question.VoidFraction * (1 - question.WaterShare);

    private static InputProblem Problem(TreatingRequest request) =>
        Assert.Single(Assert.Throws<InputRefusedException>(() => TreatingQuestion.Of(request, Facts)).Problems);

    [Theory]
    [InlineData(1390)]
    [InlineData(1400)]
    public void Wood_without_cavities_is_refused(double kgPerM3)
    {
        var refused = Problem(Pine with { DensityKgPerM3 = kgPerM3 });

        Assert.Contains("cavities", refused.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("immersion for a day")]
    [InlineData("brushing, two coats")]
    public void A_pressure_is_refused_for_a_schedule_that_works_without(string schedule)
    {
        var refused = Problem(Pine with { Schedule = schedule, PeakKPa = 1300 });

        Assert.Contains(schedule, refused.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nobody_said_is_assumed_and_named()
    {
        Assert.Equal(
            [typeof(SapwoodAsUsual), typeof(PithInTheMiddle), typeof(SmallestLog)],
            TreatingQuestion.Of(Pine, Facts).Assumptions.Select(assumption => assumption.GetType())
        );
        Assert.IsType<SapwoodNotDistinct>(
            Assert.Single(
                TreatingQuestion.Of(Pine with { Species = Facts.Species.Get("Norway spruce") }, Facts).Assumptions
            )
        );
    }

    [Theory]
    [InlineData("European oak", null, typeof(PithAtACorner), -50)]
    [InlineData("European oak", 250.0, typeof(PithInTheMiddle), 0)]
    [InlineData("Scots pine", 400.0, typeof(PithInTheMiddle), 0)]
    public void Hardwood_is_taken_to_be_sawn_round_the_pith_where_the_log_allows_it(
        string species,
        double? logDiameterMm,
        Type assumed,
        double pithXMm
    )
    {
        var request = Pine with { Species = Facts.Species.Get(species), LogDiameterMm = logDiameterMm };
        var question = TreatingQuestion.Of(request, Facts);

        Assert.Contains(question.Assumptions, each => each.GetType() == assumed);
        Assert.Equal(pithXMm, question.Prediction.Log.PithXMm, 1e-9);
    }

    [Fact]
    public void What_is_said_is_not_assumed() =>
        Gen.Select(Gen.Double[0, 150], Gen.Double[300, 600])
            .Sample(
                (sapwood, log) =>
                    TreatingQuestion
                        .Of(
                            Pine with
                            {
                                SapwoodMm = sapwood,
                                Position = SawingPosition.Quartered,
                                LogDiameterMm = log,
                            },
                            Facts
                        )
                        .Assumptions.Count == 0
            );

    [Fact]
    public void The_usual_sapwood_given_as_measured_asks_the_same()
    {
        var usual = Assert.IsType<SapwoodAsUsual>(TreatingQuestion.Of(Pine, Facts).Assumptions[0]).Width;

        Assert.InRange(usual.Mm, usual.NarrowestMm, usual.WidestMm);
        Assert.Equal(
            TreatingQuestion.Of(Pine, Facts).Prediction.Log,
            TreatingQuestion.Of(Pine with { SapwoodMm = usual.Mm }, Facts).Prediction.Log
        );
    }

    [Fact]
    public void The_schedule_keeps_its_source_and_takes_the_pressure_and_minutes_asked_for() =>
        Gen.Select(Gen.Double[800, 2000], Gen.Double[1, 600])
            .Sample(
                (kPa, minutes) =>
                {
                    var plain = TreatingQuestion.Of(Pine, Facts).Schedule;
                    var asked = TreatingQuestion
                        .Of(Pine with { PeakKPa = kPa, PressureMinutes = minutes }, Facts)
                        .Schedule;

                    return asked.Provenance == plain.Provenance
                        && asked.Value.PeakKPa == kPa
                        && asked.Value.Stages.Any(stage => stage.Minutes == minutes);
                }
            );

    [Fact]
    public void A_depth_is_a_rule_in_its_zone_and_the_zone_of_analysis_where_none_is_given()
    {
        var asked = TreatingQuestion.Of(Pine with { DepthMm = 6, Zone = WoodZone.Sapwood }, Facts);

        Assert.Equal(new LeastDepth(WoodZone.Sapwood, 6), asked.Prediction.Rule);
        Assert.Equal((6, 6), (asked.DepthMm, asked.Prediction.ZoneDepthMm));
        Assert.IsType<NoDepth>(TreatingQuestion.Of(Pine, Facts).Prediction.Rule);
        Assert.Equal(
            new ShareOfZone(WoodZone.Sapwood, 1),
            TreatingQuestion.Of(Pine with { IsWholeSapwood = true }, Facts).Prediction.Rule
        );
    }

    [Fact]
    public void Wetter_timber_weighs_more_and_holds_less_air() =>
        Gen.Select(Gen.Double[5, 80], Gen.Double[1, 20])
            .Sample(
                (moisture, more) =>
                {
                    var (dry, wet) = (
                        TreatingQuestion.Of(Pine with { MoisturePercent = moisture }, Facts),
                        TreatingQuestion.Of(Pine with { MoisturePercent = moisture + more }, Facts)
                    );

                    return wet.KgPerM3 > dry.KgPerM3 && Air(wet.Prediction) < Air(dry.Prediction);
                }
            );

    public static TheoryData<string, string> Wrong =>
        new()
        {
            { "--moisture", "moisture" },
            { "--sapwood", "sapwoodMm" },
            { "--schedule", "schedule" },
            { "--incising", "incising" },
            { "--depth", "depthMm" },
            { "--zone-depth", "zoneDepthMm" },
        };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_refusal_names_the_option_or_the_field_of_the_charge_file(string option, string key)
    {
        var request = option switch
        {
            "--moisture" => Pine with { MoisturePercent = 190 },
            "--sapwood" => Pine with { SapwoodMm = -1 },
            "--schedule" => Pine with { Schedule = "no such" },
            "--incising" => Pine with { Incising = "no such" },
            "--depth" => Pine with { DepthMm = 51 },
            _ => Pine with { ZoneDepthMm = double.NaN },
        };

        var (typed, written) = (Problem(request), Problem(request with { File = "posts.yaml" }));

        Assert.Equal((option, ""), (typed.File, typed.Field));
        Assert.Equal(("posts.yaml", key), (written.File, written.Field));
    }

    [Fact]
    public void A_quartered_round_a_pith_without_heartwood_and_a_depth_beside_all_the_sapwood_are_refused()
    {
        Assert.Equal("SECTION", Problem(Pine with { Section = new QuarteredSection(100) }).File);
        Assert.Equal("--pith", Problem(Pine with { Pith = new(0, 0) }).File);
        Assert.Equal("--whole-sapwood", Problem(Pine with { DepthMm = 6, IsWholeSapwood = true }).File);
    }
}

using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Acceptance;
using CsCheck;

namespace Alburnum.Workflows.Tests.Acceptance;

public sealed class JudgeBatchTests
{
    private static readonly CountingRequest ThreeQuarters = new() { Rule = new ShareMustPass(0.75), Lot = 60 };

    private static MeasuredPieces Depths(double uMm, params double[] depthsMm) =>
        new(
            new RectangularSection(100, 100),
            [.. depthsMm.Select((depth, i) => new RulerPiece($"T{i + 1}", [new HandReading(1, 50, depth, uMm, 30)]))]
        );

    private static CountedBatch Judged(MeasuredPieces pieces) =>
        JudgeBatch.ByDepths(pieces, new LeastDepth(WoodZone.Sapwood, 6, 1), DepthReading.Minimum, ThreeQuarters);

    [Fact]
    public void Two_counts_say_what_a_table_of_as_many_verdicts_says() =>
        Gen.Int[1, 40]
            .SelectMany(cut => Gen.Select(Gen.Const(cut), Gen.Int[0, cut]))
            .Sample(
                (cut, failures) =>
                {
                    var table = new JudgedPieces([
                        .. Enumerable
                            .Range(1, cut)
                            .Select(i => ($"P{i}", i <= cut - failures ? Verdict.Conforms : Verdict.DoesNotConform)),
                    ]);
                    var counted = JudgeBatch.ByVerdicts(JudgeBatch.Counted(cut, failures), ThreeQuarters).Batch;
                    var listed = JudgeBatch.ByVerdicts(table, ThreeQuarters).Batch;

                    return counted.Overall.Verdict == listed.Overall.Verdict
                        && counted.Counts == listed.Counts
                        && counted.Lot == listed.Lot;
                },
                iter: 200
            );

    [Theory]
    [InlineData(9.0, Verdict.Conforms)]
    [InlineData(3.0, Verdict.DoesNotConform)]
    [InlineData(6.1, Verdict.Undecided)]
    public void Depths_decide_as_far_as_they_were_read(double depthMm, Verdict verdict) =>
        Assert.Equal(verdict, Judged(Depths(0.5, [.. Enumerable.Repeat(depthMm, 8)])).Batch.Penetration.Verdict);

    [Fact]
    public void A_verdict_that_stands_asks_for_no_more_wood()
    {
        var judged = Judged(Depths(0.3, [.. Enumerable.Repeat(9.0, 8)]));

        Assert.Empty(judged.SecondReadings);
        Assert.Null(judged.MorePieces);
    }

    [Fact]
    public void An_open_verdict_says_what_a_better_reading_and_more_pieces_would_do()
    {
        var judged = Judged(Depths(0.4, 5.9, 6.2, 6.5, 6.8, 7.1, 7.4, 7.7, 8.0));

        Assert.Equal(Verdict.Undecided, judged.Batch.Penetration.Verdict);
        Assert.All(judged.SecondReadings, reading => Assert.True(reading.BetterDecides > reading.Decides));
        Assert.NotEmpty(judged.SecondReadings);
        var enough = Assert.IsType<EnoughPieces>(judged.MorePieces);
        var (cut, conforming) = (judged.Batch.Counts.Cut, judged.Batch.Counts.Conforming);
        Assert.True(LotShare.LowerBound(conforming + enough.Pieces, cut + enough.Pieces, 60, 0.95) >= 0.75);
        Assert.True(LotShare.LowerBound(conforming + enough.Pieces - 1, cut + enough.Pieces - 1, 60, 0.95) < 0.75);
    }

    [Fact]
    public void Risks_are_put_in_figures_only_where_four_pieces_turn_on_one_depth()
    {
        Assert.Null(Judged(Depths(0.4, 6, 7, 8)).Risks!.Now);
        var risks = Judged(Depths(0.4, 6, 7, 8, 9)).Risks!;
        Assert.True(risks.WithHalfTheUncertainty!.LeftOpen < risks.Now!.LeftOpen);
        Assert.Null(JudgeBatch.ByVerdicts(JudgeBatch.Counted(8, 1), ThreeQuarters).Risks);
    }

    [Fact]
    public void The_other_reading_of_the_same_figure_is_judged_beside()
    {
        // A lot of 30 at AQL 25: 8 are cut, 5 may fail.
        var tables = new FactLibrary(Repository.At("data")).Sampling.Tables;
        var judged = JudgeBatch.ByVerdicts(
            JudgeBatch.Counted(8, 3),
            new()
            {
                Rule = new IndexedSampling(tables.Find(30, InspectionLevel.II, 25)),
                OtherRule = new ShareMustPass(0.75),
                Lot = 30,
            }
        );

        Assert.Equal(Verdict.Conforms, judged.Batch.Penetration.Verdict);
        Assert.Equal((2, Verdict.DoesNotConform), (judged.Other!.MayFail, judged.Other.Penetration));
    }

    [Fact]
    public void Values_far_above_the_limit_conform_by_variables()
    {
        var valued = new ValuedPieces(
            new(MeasureKind.Retention, "retention", "kg/m³"),
            [.. new[] { 13.1, 14.6, 12.4, 15.8, 13.9, 14.2, 12.9, 13.6 }.Select((v, i) => ($"T{i}", Exact(v)))]
        );

        Assert.Equal(Verdict.Conforms, JudgeBatch.ByVariables(valued, Required(11)).Judgement.Verdict);
        Assert.Equal(Verdict.DoesNotConform, JudgeBatch.ByVariables(valued, Required(15)).Judgement.Verdict);
    }

    [Theory]
    [InlineData(MeasureKind.Retention, Population.LogNormal)]
    [InlineData(MeasureKind.Depth, Population.Normal)]
    public void Where_no_shape_is_stated_the_kind_of_measure_decides(MeasureKind kind, Population shape)
    {
        var valued = new ValuedPieces(new(kind, "value", "unit"), [("T1", Exact(13)), ("T2", Exact(14))]);
        var request = kind == MeasureKind.Retention ? Required(11) : Required(null) with { LeastDepthMm = 11 };

        Assert.Equal(shape, JudgeBatch.ByVariables(valued, request).Demand.Population);
    }

    [Fact]
    public void A_required_depth_does_not_go_with_retentions()
    {
        var valued = new ValuedPieces(new(MeasureKind.Retention, "retention", "kg/m³"), [("T1", Exact(13))]);

        var refused = Assert.Throws<InputRefusedException>(() =>
            JudgeBatch.ByVariables(valued, Required(11) with { LeastDepthMm = 6 })
        );

        Assert.Equal(
            "--depth: found a value, expected no such option for retention, which takes --retention.",
            refused.Message
        );
    }

    private static ValuesRequest Required(double? kgPerM3) =>
        new()
        {
            Lot = 60,
            RequiredKgPerM3 = kgPerM3,
            Share = 0.75,
        };

    private static CensoredReading Exact(double value) => new(value, Censoring.Exact);
}

using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Penetration;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public class BatchConformityTests
{
    private static readonly AcceptanceRule Share75 = new ShareMustPass(0.75);
    private static readonly AcceptanceRule Plan = new IndexedSampling(
        new(
            new(8, 5),
            500,
            InspectionLevel.S4,
            25,
            Severity.Normal,
            'D',
            'D',
            IsEveryPieceInspected: false,
            new(Standing.FromMemory, "test", "", "", "")
        )
    );
    private static readonly Assay Good = new MeasuredAssay(new(14, 0.4), "composite 1");

    private static PieceJudgement[] Pieces(params double?[] probabilities) =>
        [
            .. probabilities.Select(
                (p, i) =>
                    new PieceJudgement(
                        $"T{i + 1}",
                        p is { } known
                            ? new(DecisionRule.Usual.Decide(known), ProbabilityRange.Exactly(known), [])
                            : new(Verdict.Undecided, null, [])
                    )
            ),
        ];

    private static double?[] Of(int passing, int failing) =>
        [.. Enumerable.Repeat<double?>(1, passing), .. Enumerable.Repeat<double?>(0, failing)];

    private static BatchJudgement Judge(
        PieceJudgement[] pieces,
        AcceptanceRule? rule = null,
        IReadOnlyList<Assay>? assays = null,
        double? required = 12
    ) =>
        BatchConformity.Judge(
            new(pieces, 500, rule ?? Share75)
            {
                Retentions = required is { } kgPerM3 ? [new(kgPerM3, assays ?? [Good])] : [],
            },
            DecisionRule.Usual
        );

    [Fact]
    public void The_two_readings_of_a_quarter_differ_on_eight_pieces()
    {
        Assert.Equal(2, Share75.MayFail(8));
        Assert.Equal(5, Plan.MayFail(8));
        Assert.Equal(Verdict.DoesNotConform, Judge(Pieces(Of(5, 3))).Penetration.Verdict);
        Assert.Equal(Verdict.Conforms, Judge(Pieces(Of(5, 3)), Plan).Penetration.Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Pieces(Of(2, 6)), Plan).Penetration.Verdict);
    }

    [Fact]
    public void The_rule_used_is_named()
    {
        var judged = Judge(Pieces(Of(8, 0)));

        Assert.Equal(
            [new RuleUsed(Share75), new PiecesCounted(new(8, 8, 0, 0), 2), new AcceptanceProbability(1, 1)],
            judged.Penetration.Reasons
        );
        Assert.Equal((500, 0), (judged.Lot.LotSize, judged.Lot.Undecided));
    }

    [Fact]
    public void The_range_spans_independent_and_common_errors_and_shows_the_independent_one()
    {
        // Two of eight may fail: at 0.9 each 0.96191 by the binomial, and 0.9 if all were misread alike.
        var judged = Judge(Pieces([.. Enumerable.Repeat<double?>(0.9, 8)])).Penetration;

        Assert.Equal(0.9, judged.Probability!.Value.Low, 1e-9);
        Assert.Equal(0.96191, judged.Probability!.Value.High, 1e-5);
        Assert.Equal(0.96191, judged.Probability!.Value.Middle, 1e-5);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(50)]
    public void A_batch_at_the_limit_of_measuring_is_undecided(int pieces)
    {
        var judged = Judge(Pieces([.. Enumerable.Repeat<double?>(0.5, pieces)]));

        Assert.Equal(Verdict.Undecided, judged.Penetration.Verdict);
        Assert.Equal(Verdict.Undecided, judged.Overall.Verdict);
    }

    [Fact]
    public void A_missing_assay_is_said_and_leaves_the_whole_undecided()
    {
        var judged = Judge(Pieces(Of(8, 0)), assays: []);

        Assert.Equal(Verdict.Undecided, judged.Overall.Verdict);
        Assert.Equal([new AssayMissing(12)], judged.Retention!.Reasons);
        // As far as it was judged: as where no figure is known.
        Assert.Equal(judged.Penetration.Probability, judged.Overall.Probability);
        Assert.Equal(new BatchParts(Verdict.Undecided, judged.Penetration, judged.Retention), judged.Parts);
    }

    [Fact]
    public void A_missing_assay_does_not_save_a_batch_that_fails_on_penetration()
    {
        var judged = Judge(Pieces(Of(4, 4)), assays: []);

        Assert.Equal(Verdict.DoesNotConform, judged.Overall.Verdict);
        Assert.Equal(ProbabilityRange.Exactly(0), judged.Overall.Probability);
    }

    [Fact]
    public void A_low_assay_fails_a_batch_whose_penetration_conforms()
    {
        var judged = Judge(Pieces(Of(8, 0)), assays: [new MeasuredAssay(new(9, 0.5))]);

        Assert.Equal(Verdict.DoesNotConform, judged.Overall.Verdict);
        Assert.Equal(Verdict.DoesNotConform, judged.Parts.Retention!.Verdict);
        var mean = Assert.IsType<RetentionMean>(Assert.Single(judged.Retention!.Reasons));
        Assert.Equal((1, new Estimate(9, 0.5), 12.0), (mean.Assays, mean.MeanKgPerM3, mean.RequiredKgPerM3));
    }

    [Fact]
    public void An_assay_below_a_detection_limit_under_the_demand_fails_and_over_it_decides_nothing()
    {
        Assert.Equal(
            Verdict.DoesNotConform,
            Judge(Pieces(Of(8, 0)), assays: [new BelowDetection(0.5)]).Retention!.Verdict
        );
        var open = Judge(Pieces(Of(8, 0)), assays: [new BelowDetection(15)]).Retention!;
        Assert.Equal(Verdict.Undecided, open.Verdict);
        // Nowhere is the limit told as a mean that was measured.
        Assert.Equal([new BelowDetectionLimit(1, 1, new(0, 0), new(15, 0), 12, new(0, 1))], open.Reasons);
    }

    [Fact]
    public void Without_a_retention_demand_penetration_alone_is_judged()
    {
        var judged = Judge(Pieces(Of(8, 0)), assays: [], required: null);

        Assert.Null(judged.Retention);
        Assert.Equal([new NoRetentionRequired(), new DrawingNotRecorded()], judged.NotJudged);
        Assert.Equal(Verdict.Conforms, judged.Overall.Verdict);
    }

    [Fact]
    public void Pieces_not_yet_cut_may_be_either()
    {
        var early = Judge(Pieces(Of(2, 1)), Plan).Penetration;
        Assert.Equal(Verdict.Undecided, early.Verdict);
        Assert.Contains(new PiecesStillToCut(8, 5), early.Reasons);
        Assert.Contains(new AcceptanceLeftOpen(new(0, 1), 5), early.Reasons);
        Assert.Equal(Verdict.Conforms, Judge(Pieces(Of(3, 1)), Plan).Penetration.Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Pieces(Of(0, 6)), Plan).Penetration.Verdict);
    }

    [Fact]
    public void A_piece_not_determined_counts_neither_way()
    {
        Assert.Equal(Verdict.Conforms, Judge(Pieces([.. Of(6, 1), null])).Penetration.Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Pieces([.. Of(5, 2), null])).Penetration.Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Pieces([.. Of(4, 3), null])).Penetration.Verdict);
    }

    [Fact]
    public void The_conforming_share_of_the_lot_is_bounded_exactly()
    {
        // 10 of 10 from 500 at 95 %: the least share s with s^10-like hypergeometric weight above 5 %, a little above 0.05^(1/10).
        var bound = Judge(Pieces(Of(10, 0))).Lot.Bound.LowerBound;

        Assert.InRange(bound, 0.7411, 0.7450);
    }

    [Fact]
    public void The_verdict_never_improves_when_a_piece_is_read_worse()
    {
        var probabilities = Gen.Double[0, 1].Select(p => (double?)p).Array[1, 8];
        Gen.Select(probabilities, Gen.Int[0, 7], Gen.Double[0, 1], Gen.Bool)
            .Sample(
                (before, which, factor, isPlan) =>
                {
                    double?[] after = [.. before];
                    after[which % after.Length] *= factor;
                    var rule = isPlan ? Plan : Share75;

                    Assert.True(Rank(Judge(Pieces(after), rule)) <= Rank(Judge(Pieces(before), rule)));
                },
                iter: 3000
            );
    }

    [Fact]
    public void A_lot_smaller_than_its_sample_and_a_number_given_twice_are_refused()
    {
        var pieces = Pieces(Of(8, 0));

        Assert.Throws<ArgumentException>(() => BatchConformity.Judge(new(pieces, 5, Share75), DecisionRule.Usual));
        Assert.Throws<ArgumentException>(() => Judge([pieces[0], pieces[0]]));
        Assert.Throws<ArgumentException>(() => Judge(Pieces(Of(9, 0)), Plan));
    }

    private static int Rank(BatchJudgement judged) =>
        judged.Penetration.Verdict switch
        {
            Verdict.DoesNotConform => 0,
            Verdict.Undecided => 1,
            _ => 2,
        };
}

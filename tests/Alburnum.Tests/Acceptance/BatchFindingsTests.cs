using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Penetration;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public sealed class BatchFindingsTests
{
    private static readonly Assay Good = new MeasuredAssay(new(14, 0.4));

    [Fact]
    public void A_rule_that_two_failures_of_eight_meet_shows_nothing_of_the_lot()
    {
        var found = Judge(6, 2, lot: 400).Findings;

        Assert.Equal(Verdict.Conforms, found.Rule.Penetration!.Verdict);
        Assert.False(found.Lot!.IsShown);
        Assert.Equal(Verdict.Undecided, found.Weakest);
    }

    [Fact]
    public void Three_posts_of_four_hundred_never_make_a_whole_that_conforms() =>
        Assert.Equal(Verdict.Undecided, Judge(3, 0, lot: 400).Findings.Weakest);

    [Fact]
    public void A_retention_that_nobody_assayed_leaves_the_whole_undecided_and_one_that_nobody_requires_does_not()
    {
        Assert.Equal(Verdict.Conforms, Judge(40, 0, lot: 50, required: null).Findings.Weakest);
        Assert.Equal(Verdict.Undecided, Judge(40, 0, lot: 50, assays: []).Findings.Weakest);
    }

    [Fact]
    public void Rules_met_a_lot_shown_and_nothing_left_unjudged_conform() =>
        Assert.Equal(
            Verdict.Conforms,
            Judge(40, 0, lot: 50, assays: [Good, new MeasuredAssay(new(14.2, 0.4))]).Findings.Weakest
        );

    [Fact]
    public void A_single_sample_leaves_the_whole_undecided_since_it_shows_no_scatter()
    {
        var found = Judge(40, 0, lot: 50, assays: [Good]).Findings;

        Assert.Equal(Verdict.Conforms, found.Rule.Retention!.Verdict);
        Assert.Contains(new SamplesScatterNotKnown(), found.NotJudged);
        Assert.Equal(Verdict.Undecided, found.Weakest);
    }

    [Fact]
    public void The_wanted_share_is_the_rule_s_unless_another_is_asked()
    {
        Assert.Equal(new WantedShare(0.75, WantedBy.MustPass), Judge(8, 0).Lot.Wanted);
        var asked = new WantedShare(0.9, WantedBy.Asked);
        Assert.Equal(asked, Judge(8, 0, wanted: asked).Lot.Wanted);
        Assert.Equal(new WantedShare(0.9, WantedBy.Aql), Indexed(10).Wanted);
    }

    [Fact]
    public void An_AQL_that_counts_defects_wants_no_share_of_pieces() => Assert.Null(Indexed(25).Wanted);

    [Fact]
    public void The_chance_of_the_lot_is_the_beta_binomial_s_and_of_the_supply_the_beta_s()
    {
        var belief = new BetaBinomial(2, 8);

        Assert.Equal(belief.LotConforms(0.75, 400), Judge(6, 2, lot: 400).Lot.Chance!.Value, 1e-12);
        Assert.Equal(belief.SupplyConforms(0.75), Judge(6, 2, lot: null).Lot.Chance!.Value, 1e-12);
        // A lot so large is the supply.
        Assert.Equal(belief.SupplyConforms(0.75), belief.LotConforms(0.75, 200_000), 1e-3);
    }

    [Fact]
    public void Undecided_pieces_count_both_ways_in_the_chance_of_the_lot()
    {
        PieceJudgement Piece(int number, double probability) =>
            new($"{number}", new(Verdict.Undecided, ProbabilityRange.Exactly(probability), []));
        var open = BatchConformity
            .Judge(
                new([.. Enumerable.Range(1, 8).Select(i => Piece(i, 0.6))], 50, new ShareMustPass(0.75)),
                DecisionRule.Usual
            )
            .Lot;

        Assert.Equal(new BetaBinomial(8, 8).LotConforms(0.75, 50), open.Chance!.Value, 1e-12);
        Assert.Equal(new BetaBinomial(0, 8).LotConforms(0.75, 50), open.ChanceIfUndecidedPass!.Value, 1e-12);
        var decided = Judge(6, 2, lot: 400).Lot;
        Assert.Equal(decided.Chance, decided.ChanceIfUndecidedPass);
    }

    [Fact]
    public void Pieces_that_came_judged_have_no_reading_risk_to_tell()
    {
        var elsewhere = new PieceJudgement(
            "1",
            new(Verdict.Conforms, ProbabilityRange.Exactly(1), [new JudgedElsewhere(Verdict.Conforms)])
        );
        var judged = BatchConformity.Judge(new([elsewhere], 50, new ShareMustPass(0.75)), DecisionRule.Usual);

        Assert.Equal(Verdict.Conforms, judged.Penetration.Verdict);
        Assert.Null(judged.Penetration.Probability);
        Assert.Contains(new ReadingRiskNotKnown(), judged.Penetration.Reasons);
    }

    [Fact]
    public void Pieces_not_determined_and_not_yet_cut_are_named_as_not_judged()
    {
        PieceJudgement[] pieces = [Piece("P1", 1), new("P2", new(Verdict.Undecided, null, []))];
        var judged = BatchConformity.Judge(new(pieces, 500, Indexed(10)), DecisionRule.Usual);

        var open = Assert.Single(judged.NotJudged.OfType<PiecesNotDetermined>());
        Assert.Equal(["P2"], open.Pieces);
        Assert.Contains(new PiecesStillToCut(8, 6), judged.NotJudged);
    }

    [Fact]
    public void Pieces_read_on_some_faces_alone_are_counted_as_not_judged_there()
    {
        PieceJudgement Read(string name, params Reason[] reasons) =>
            new(name, new(Verdict.Conforms, ProbabilityRange.Exactly(1), reasons));
        PieceJudgement[] pieces = [Read("P1", new FacesWithoutReading([2, 3, 4])), Read("P2")];

        var judged = BatchConformity.Judge(new(pieces, 500, new ShareMustPass(0.75)), DecisionRule.Usual);
        Assert.Contains(new PiecesReadInPart(1, 2), judged.NotJudged);
        Assert.DoesNotContain(
            BatchConformity.Judge(new([pieces[1]], 500, new ShareMustPass(0.75)), DecisionRule.Usual).NotJudged,
            reason => reason is PiecesReadInPart
        );
    }

    [Fact]
    public void The_whole_is_never_stronger_than_the_rule_or_the_lot() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, 8], Gen.Int[0, 200], Gen.Bool, Gen.Double[5, 20])
            .Sample(
                (conforming, failing, uncut, isAssayed, kgPerM3) =>
                {
                    var found = Judge(
                        conforming,
                        failing,
                        conforming + failing + uncut,
                        assays: isAssayed ? [new MeasuredAssay(new(kgPerM3, 0.4))] : []
                    ).Findings;

                    Assert.True(
                        found.Weakest != Verdict.Conforms
                            || found.Rule.Whole.Verdict == Verdict.Conforms
                                && found.Lot!.Bound.LowerBound >= 0.75
                                && isAssayed
                    );
                    Assert.Equal(
                        found.Rule.Whole.Verdict == Verdict.DoesNotConform,
                        found.Weakest == Verdict.DoesNotConform
                    );
                },
                iter: 500
            );

    private static BatchJudgement Judge(
        int conforming,
        int failing,
        int? lot = 400,
        double? required = 12,
        IReadOnlyList<Assay>? assays = null,
        WantedShare? wanted = null
    ) =>
        BatchConformity.Judge(
            new(
                [.. Enumerable.Range(1, conforming + failing).Select(i => Piece($"P{i}", i <= conforming ? 1 : 0))],
                lot,
                new ShareMustPass(0.75)
            )
            {
                Retentions = required is { } kgPerM3 ? [new(kgPerM3, assays ?? [Good])] : [],
                Wanted = wanted,
            },
            DecisionRule.Usual
        );

    private static PieceJudgement Piece(string name, double probability) =>
        new(name, new(DecisionRule.Usual.Decide(probability), ProbabilityRange.Exactly(probability), []));

    private static IndexedSampling Indexed(double aqlPercent) =>
        new(
            new(
                new(8, 2),
                500,
                InspectionLevel.II,
                aqlPercent,
                Severity.Normal,
                'D',
                'D',
                IsEveryPieceInspected: false,
                new(Standing.FromMemory, "test", "", "", "")
            )
        );
}

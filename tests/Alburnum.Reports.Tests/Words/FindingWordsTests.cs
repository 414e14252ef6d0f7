using Alburnum.Acceptance;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Requirements;

namespace Alburnum.Reports.Tests.Words;

public sealed class FindingWordsTests
{
    private static readonly Trace Nothing = new("invented", "Invented code", new Enquiry(), [], []);

    private static readonly Assay Good = new MeasuredAssay(new(14, 0.4));

    [Fact]
    public void Two_failures_of_eight_meet_the_rule_and_show_nothing_of_the_lot()
    {
        var found = Judge(6, 2, lot: 400, assays: []);

        Assert.Equal(
            "Penetration rule met; retention not judged; the batch itself not shown to conform: at least 40.5 % of it does",
            FindingWords.Current.Headline(found)
        );
        Assert.Equal(
            "With 95 % confidence, at least 40.5 % of the 400 pieces in the lot conform. Wanted: 75 %, the share that must pass of the "
                + "pieces cut. Chance that 75 % or more conform: 47.5 % (beta-binomial, Jeffreys' prior).",
            FindingWords.Current.Lot(found.Lot!)
        );
    }

    [Theory]
    [InlineData(3, 0, 400)]
    [InlineData(8, 0, 120)]
    [InlineData(6, 2, 400)]
    public void A_headline_over_a_lot_that_is_not_shown_never_says_that_it_conforms(int passed, int failed, int lot)
    {
        var headline = FindingWords.Current.Headline(Judge(passed, failed, lot));

        Assert.Contains("not shown to conform", headline, StringComparison.Ordinal);
        Assert.DoesNotContain("99.9 %", headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lot_that_is_shown_is_said_with_its_bound() =>
        Assert.Equal(
            "Penetration rule met; retention met; at least 98 % of the batch shown to conform",
            FindingWords.Current.Headline(Judge(40, 0, lot: 50))
        );

    [Fact]
    public void A_rule_not_met_says_nothing_of_the_lot_in_the_headline() =>
        Assert.Equal("Penetration rule not met; retention met", FindingWords.Current.Headline(Judge(4, 4, lot: 50)));

    [Fact]
    public void A_headline_over_what_is_only_recommended_says_so()
    {
        var found = Judge(40, 0, lot: 50);
        var whole = found.Rule.Whole with
        {
            Reasons =
            [
                new CodeOnlyRecommends(
                    new(new("NP1", new NoDepth(), null, null, null, []) { IsRecommended = true }, Nothing)
                ),
            ],
        };

        Assert.StartsWith(
            "What the code recommends and does not require: penetration rule met; retention met",
            FindingWords.Current.Headline(found with { Rule = found.Rule with { Whole = whole } }),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_headline_without_a_depth_says_which_retention_was_judged_and_why_no_depth_was()
    {
        var found = Judge(8, 0, lot: 50);
        string Over(NotCoveredReason reason) =>
            FindingWords.Current.Headline(
                found with
                {
                    Rule = new(
                        new(Verdict.Undecided, null, [new RulebookSilent(new(reason, Nothing))]),
                        null,
                        found.Rule.Retention
                    ),
                    Lot = null,
                    NotJudged = [new DepthNotJudged()],
                }
            );

        Assert.Equal("Undecided: the rulebook has no answer; retention met", Over(new CellNotRead("Not read.")));
        Assert.Equal(
            "Undecided: which demand of the code holds is open; retention met",
            Over(new DependsOn([Field.ExposedHeartwood]))
        );
    }

    [Fact]
    public void The_line_of_the_rule_names_rule_count_and_what_its_probability_is_of() =>
        Assert.Equal(
            "Penetration rule met (75 % of the pieces cut must pass; 8 of 8 conform); retention met. "
                + "Chance that the rule, as far as it was judged, would be met if what was measured were known exactly: over 99.9 %.",
            FindingWords.Current.Rule(Judge(8, 0, lot: 50).Rule)
        );

    [Fact]
    public void A_rule_whose_retention_was_not_assayed_has_a_chance_as_far_as_it_was_judged() =>
        Assert.Equal(
            "Penetration rule met (75 % of the pieces cut must pass; 8 of 8 conform); retention not judged. "
                + "Chance that the rule, as far as it was judged, would be met if what was measured were known exactly: over 99.9 %.",
            FindingWords.Current.Rule(Judge(8, 0, lot: 50, assays: []).Rule)
        );

    [Fact]
    public void The_chance_of_a_rule_is_said_with_both_of_its_bounds() =>
        Assert.EndsWith(
            "would be met if what was measured were known exactly: 94.3 % to 99.2 %, as far as the evidence tells.",
            FindingWords.Current.Chance(0.943, 0.992),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_batch_of_one_is_said_with_its_verdict() =>
        Assert.Contains(
            "the one piece of the batch was cut and conforms",
            FindingWords.Current.Headline(Judge(passed: 1, failed: 0, lot: 1)),
            StringComparison.Ordinal
        );

    [Fact]
    public void What_was_not_judged_is_said_one_sentence_each()
    {
        var said = FindingWords.Current.NotJudged(Judge(8, 0, lot: 50, assays: []));

        Assert.Equal("Retention: no assay was given, 12 kg/m³ is required.", said[0]);
        Assert.StartsWith("How the pieces were drawn is not recorded", said[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_share_wanted_by_an_AQL_names_its_number() =>
        Assert.Contains(
            "Wanted: 90 %, that is, all but the AQL of 10 %.",
            FindingWords.Current.Lot(Judge(8, 0, lot: null, wanted: new(0.9, WantedBy.Aql)).Lot!),
            StringComparison.Ordinal
        );

    [Fact]
    public void Where_retention_is_judged_beside_the_lot_is_said_to_be_of_penetration()
    {
        var lot = Judge(8, 0, lot: 50).Lot!;

        Assert.EndsWith(
            "That is of penetration; retention is judged of the batch as a whole.",
            FindingWords.Current.Lot(lot, isRetentionJudged: true),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("of penetration", FindingWords.Current.Lot(lot), StringComparison.Ordinal);
    }

    [Fact]
    public void A_share_that_was_asked_for_is_echoed_as_typed_and_a_supply_is_called_one()
    {
        var lot = Judge(8, 0, lot: null, wanted: new(0.9999, WantedBy.Asked)).Lot!;

        var said = FindingWords.Current.Lot(lot);
        Assert.Contains("of the supply conform. Wanted: 99.99 %, as asked.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chance_above_the_confidence_beside_a_bound_below_the_wanted_share_is_explained()
    {
        const string Explained = "The bound rests on no prior and is the stricter of the two";
        string Said(int passed) => FindingWords.Current.Lot(Judge(passed, 0, lot: 400).Lot!);

        // Eight of eight: at least 69.5 % with 95 % confidence, and a chance of 97.6 % that 75 % or more conform.
        Assert.Contains(Explained, Said(8), StringComparison.Ordinal);
        Assert.DoesNotContain(Explained, Said(3), StringComparison.Ordinal);
        Assert.DoesNotContain(Explained, Said(20), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 8, null, "With 95 % confidence, no share of the supply is shown to conform.")]
    [InlineData(6, 2, 8, "Every piece of the lot was cut: 6 of 8 conform.")]
    [InlineData(1, 0, 1, "The one piece of the lot was cut: it conforms.")]
    [InlineData(0, 1, 1, "The one piece of the lot was cut: it is not shown to conform.")]
    public void None_one_and_all_pieces_are_said_as_people_say_them(int passed, int failed, int? lot, string said)
    {
        var found = Judge(passed, failed, lot);

        Assert.StartsWith(said, FindingWords.Current.Lot(found.Lot!), StringComparison.Ordinal);
        Assert.DoesNotContain("100 %", FindingWords.Current.Headline(found), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_lot_cut_to_the_last_piece_nothing_is_said_of_a_random_sample()
    {
        Assert.DoesNotContain(Judge(6, 2, lot: 8).NotJudged, reason => reason is DrawingNotRecorded);
        Assert.Contains(Judge(6, 2, lot: 9).NotJudged, reason => reason is DrawingNotRecorded);
        Assert.Equal(
            "Penetration rule met; retention met; every piece of the batch cut, 75 % of them conform",
            FindingWords.Current.Headline(Judge(6, 2, lot: 8))
        );
    }

    [Fact]
    public void A_rule_that_asks_less_than_the_code_is_said_with_the_rule()
    {
        Fact<double> aql = new(10, new(Standing.Published, "Invented code", "", "", ""));
        string Said(double share) =>
            FindingWords.Current.Rule(
                BatchConformity
                    .Judge(
                        new(
                            [new("P1", new(Verdict.Conforms, ProbabilityRange.Exactly(1), []))],
                            50,
                            new ShareMustPass(share) { CodesAqlPercent = aql }
                        ),
                        DecisionRule.Usual
                    )
                    .Findings.Rule
            );

        const string Less = "asks for less than the code's AQL of 10 %, which asks for 90 % (published: Invented code)";
        Assert.Contains(Less, Said(0.75), StringComparison.Ordinal);
        Assert.DoesNotContain(Less, Said(0.9), StringComparison.Ordinal);
        Assert.DoesNotContain(Less, Said(0.95), StringComparison.Ordinal);
    }

    private static BatchFindings Judge(
        int passed,
        int failed,
        int? lot,
        IReadOnlyList<Assay>? assays = null,
        WantedShare? wanted = null
    ) =>
        BatchConformity
            .Judge(
                new(
                    [
                        .. Enumerable
                            .Range(1, passed + failed)
                            .Select(i => new PieceJudgement(
                                $"P{i}",
                                i <= passed
                                    ? new(Verdict.Conforms, ProbabilityRange.Exactly(1), [])
                                    : new(Verdict.DoesNotConform, ProbabilityRange.Exactly(0), [])
                            )),
                    ],
                    lot,
                    new ShareMustPass(0.75)
                )
                {
                    Retentions = [new(12, assays ?? [Good])],
                    Wanted = wanted,
                },
                DecisionRule.Usual
            )
            .Findings;
}

using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Tests.Words;

public sealed class FindingWordsTests
{
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
    public void The_line_of_the_rule_names_rule_count_and_what_its_probability_is_of() =>
        Assert.Equal(
            "Penetration rule met (75 % of the pieces cut must pass; 8 of 8 conform); retention met. "
                + "Chance that the rule, as far as it was judged, would be met if what was measured were known exactly: over 99.9 %.",
            FindingWords.Current.Rule(Judge(8, 0, lot: 50).Rule)
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
                    Assays = assays ?? [Good],
                    RequiredKgPerM3 = 12,
                    Wanted = wanted,
                },
                DecisionRule.Usual
            )
            .Findings;
}

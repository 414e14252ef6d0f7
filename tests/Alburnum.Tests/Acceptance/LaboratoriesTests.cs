using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Penetration;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public sealed class LaboratoriesTests
{
    private static readonly DecisionRule Decision = new(0.95, 0.05);

    [Fact]
    public void Laboratories_that_agree_over_a_sample_are_weighed_by_their_uncertainties()
    {
        var judged = Judge(12, Of("A", 14, 0.4, "S1"), Of("B", 15, 0.8, "S1"));

        var mean = Assert.IsType<RetentionMean>(Assert.Single(judged.Reasons));
        Assert.Equal((1, 2), (mean.Samples, mean.Assays));
        Assert.Equal(14.2, mean.MeanKgPerM3.Value, 9);
        Assert.Equal(0.4 * 0.8 / Math.Sqrt(0.8), mean.MeanKgPerM3.StandardUncertainty, 9);
        Assert.Equal(Verdict.Conforms, judged.Verdict);
    }

    [Fact]
    public void Samples_count_alike_whichever_laboratory_analysed_them()
    {
        // Two poor samples at one laboratory, a good one at another: their scatter is that of the batch, and no laboratory outweighs it.
        var apart = Judge(8, Of("A", 5.9, 0.16, "S1"), Of("A", 0.5, 0.03, "S2"), Of("B", 8.9, 0.16, "S3"));
        var together = Judge(8, Of("A", 5.9, 0.16, "S1"), Of("A", 0.5, 0.03, "S2"), Of("A", 8.9, 0.16, "S3"));

        var mean = Assert.IsType<RetentionMean>(Assert.Single(apart.Reasons));
        Assert.Equal((3, 3), (mean.Samples, mean.Assays));
        Assert.Equal(5.1, mean.MeanKgPerM3.Value, 9);
        Assert.Equal(2, mean.DegreesOfFreedom, 0.1);
        Assert.Equal((Verdict.Undecided, Verdict.Undecided), (apart.Verdict, together.Verdict));
        Assert.Equal(together.Probability!.Value.High, apart.Probability!.Value.High, 0.001);
    }

    [Fact]
    public void A_sample_that_both_analysed_counts_once_among_the_others()
    {
        var mean = Assert.IsType<RetentionMean>(
            Assert.Single(Judge(8, Of("A", 10, 0.3, "S1"), Of("B", 10.4, 0.3, "S1"), Of("A", 13.2, 0.3, "S2")).Reasons)
        );

        Assert.Equal((2, 3), (mean.Samples, mean.Assays));
        // (10.2 + 13.2) / 2; s/√2 = 1.5; A stands for three quarters of the mean, B for one.
        Assert.Equal(11.7, mean.MeanKgPerM3.Value, 9);
        Assert.Equal(Math.Sqrt(1.5 * 1.5 + 0.09 * (9 + 1) / 16), mean.MeanKgPerM3.StandardUncertainty, 9);
    }

    [Fact]
    public void A_single_sample_that_differs_from_those_of_another_laboratory_is_no_difference_of_laboratories()
    {
        var judged = Judge(8, Of("A", 9, 0.1, "S1"), Of("A", 9.1, 0.1, "S2"), Of("B", 15, 0.1, "S3"));

        Assert.Equal(11.03, Assert.IsType<RetentionMean>(Assert.Single(judged.Reasons)).MeanKgPerM3.Value, 0.01);
    }

    [Fact]
    public void A_sample_in_which_nothing_was_found_pulls_the_mean_down_and_spreads_it()
    {
        var judged = Judge(
            8,
            Of("A", 5.9, 0.16, "S1"),
            Of("B", 10, 0.16, "S2"),
            new BelowDetection(0.03, "S3") { Laboratory = "A" }
        );

        var below = Assert.IsType<BelowDetectionLimit>(Assert.Single(judged.Reasons));
        Assert.Equal((1, 3), (below.Undetected, below.Assays));
        Assert.Equal(15.9 / 3, below.LowestMeanKgPerM3.Value, 9);
        Assert.Equal(15.93 / 3, below.HighestMeanKgPerM3.Value, 9);
        Assert.True(below.LowestMeanKgPerM3.StandardUncertainty > 2.9);
        Assert.Equal((Verdict.Undecided, (ProbabilityRange?)null), (judged.Verdict, judged.Probability));
    }

    [Fact]
    public void Laboratories_that_differ_by_more_than_their_uncertainties_are_never_averaged()
    {
        var judged = Judge(12, Of("A", 9, 0.4, "S1"), Of("B", 15, 0.4, "S1"));

        var differ = Assert.IsType<LaboratoriesDiffer>(Assert.Single(judged.Reasons));
        Assert.Equal(6 / (0.4 * Math.Sqrt(2)), differ.Scatter!.Ratio, 9);
        Assert.Equal(1.96, differ.Scatter.MostByChance, 2);
        Assert.Equal("S1", differ.Sample);
        Assert.Equal(["A", "B"], differ.Laboratories.Select(each => each.Laboratory));
        Assert.Equal((Verdict.Undecided, (ProbabilityRange?)null), (judged.Verdict, judged.Probability));
    }

    [Fact]
    public void Laboratories_that_differ_but_both_meet_the_demand_still_decide()
    {
        var judged = Judge(5, Of("A", 9, 0.4, "S1"), Of("B", 15, 0.4, "S1"));

        Assert.Equal(Verdict.Conforms, judged.Verdict);
        Assert.NotNull(judged.Probability);
    }

    [Fact]
    public void A_density_that_both_share_neither_hides_a_difference_nor_averages_out()
    {
        Assay[] assays = [Shared("A", 10, 0.3, 2), Shared("B", 12, 0.3, 2)];
        Assert.IsType<LaboratoriesDiffer>(Judge(8, assays).Reasons[0]);

        var agreed = Judge(8, Shared("A", 11, 0.3, 2), Shared("B", 11, 0.3, 2));
        var mean = Assert.IsType<RetentionMean>(Assert.Single(agreed.Reasons)).MeanKgPerM3;
        Assert.Equal(Math.Sqrt(4 + 0.3 * 0.3 / 2), mean.StandardUncertainty, 9);
    }

    [Fact]
    public void Nothing_found_by_one_laboratory_agrees_with_a_little_found_by_another_and_not_with_much()
    {
        var below = new BelowDetection(0.5, "S1") { Laboratory = "B" };

        Assert.DoesNotContain(
            Judge(12, Of("A", 0.4, 0.05, "S1"), below).Reasons,
            reason => reason is LaboratoriesDiffer
        );
        Assert.Contains(Judge(12, Of("A", 14, 0.4, "S1"), below).Reasons, reason => reason is LaboratoriesDiffer);
    }

    [Fact]
    public void A_limit_is_contradicted_only_by_a_result_whose_uncertainty_lies_above_it()
    {
        var below = new BelowDetection(0.5, "S1") { Laboratory = "B" };

        Assert.DoesNotContain(
            Judge(12, Of("A", 0.6, 0.1, "S1"), below).Reasons,
            reason => reason is LaboratoriesDiffer
        );
        var differ = Judge(12, Of("A", 0.7, 0.1, "S1"), below).Reasons.OfType<LaboratoriesDiffer>().Single();
        Assert.True(differ.ContradictsLimit);
        Assert.Null(differ.Scatter);
        Assert.Equal([new ContentFound("A", new(0.7, 0.1)), new NothingFound("B", 0.5)], differ.Laboratories);
    }

    [Fact]
    public void The_scatter_of_two_samples_is_little_known()
    {
        var judged = Judge(12, Of("A", 13, 0.1), Of("A", 13.2, 0.1));

        var mean = Assert.IsType<RetentionMean>(Assert.Single(judged.Reasons));
        // Both parts are 0.1: (u² + u²)² over u⁴ is 4.
        Assert.Equal(4, mean.DegreesOfFreedom, 9);
        Assert.Equal(
            MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 4, 1.1 / 0.1 / Math.Sqrt(2)),
            mean.Probability,
            9
        );
        Assert.Equal(2, mean.Samples);
    }

    [Fact]
    public void One_sample_says_nothing_of_how_far_samples_differ()
    {
        var one = Assert.IsType<RetentionMean>(Assert.Single(Judge(12, Of("A", 13, 0.4)).Reasons));

        Assert.Equal((1, true), (one.Samples, double.IsInfinity(one.DegreesOfFreedom)));
        Assert.Equal(new(13, 0.4), one.MeanKgPerM3);
        Assert.Equal(1, RetentionConformity.Samples([Of("A", 13, 0.4, "S1"), Of("B", 13.2, 0.4, "S1")]));
        Assert.Equal(2, RetentionConformity.Samples([Of("A", 13, 0.4), Of("A", 13.2, 0.4)]));
    }

    [Fact]
    public void Two_sub_samples_alone_are_as_little_known_as_two_samples()
    {
        var assay = Of("A", 13, 0.4) with { DegreesOfFreedom = 1 };

        var mean = Assert.IsType<RetentionMean>(Assert.Single(Judge(12, assay).Reasons));
        Assert.Equal(1, mean.DegreesOfFreedom, 9);
        Assert.Equal(0.5 + Math.Atan(1 / 0.4) / Math.PI, mean.Probability, 9);
    }

    [Fact]
    public void Laboratories_with_two_samples_each_differ_only_beyond_what_so_few_can_show()
    {
        Assay[] few = [Of("A", 10, 1e-6), Of("A", 10.4, 1e-6), Of("B", 11, 1e-6), Of("B", 11.4, 1e-6)];

        // 3.5 times the uncertainty of the difference: beyond chance if the scatter were known, not with two degrees of freedom (4.3).
        Assert.DoesNotContain(Judge(8, few).Reasons, reason => reason is LaboratoriesDiffer);
    }

    [Fact]
    public void An_assay_below_detection_is_no_mean_with_an_uncertainty_of_nothing()
    {
        var judged = Judge(12, new BelowDetection(0.5));

        Assert.Equal(
            new BelowDetectionLimit(1, 1, new(0, 0), new(0.5, 0), 12, new(0, 0)),
            Assert.Single(judged.Reasons)
        );
    }

    [Fact]
    public void The_order_of_laboratories_changes_nothing() =>
        Gen.Select(Gen.Double[1, 20], Gen.Double[0.1, 2], Gen.Double[1, 20], Gen.Double[0.1, 2])
            .Sample(
                (a, ua, b, ub) =>
                {
                    var (one, other) = (
                        Judge(12, Of("A", a, ua, "S1"), Of("B", b, ub, "S1"), Of("A", b, ua, "S2")),
                        Judge(12, Of("A", b, ua, "S2"), Of("B", b, ub, "S1"), Of("A", a, ua, "S1"))
                    );
                    Assert.Equal(one.Verdict, other.Verdict);
                    Assert.Equal(one.Probability?.Low ?? -1, other.Probability?.Low ?? -1, 1e-9);
                }
            );

    [Fact]
    public void One_laboratory_in_two_rows_is_judged_as_before()
    {
        var named = Judge(12, Of("A", 13, 0.4), Of("A", 15, 0.4));
        var unnamed = Judge(12, Of("", 13, 0.4), Of("", 15, 0.4));

        var mean = Assert.IsType<RetentionMean>(Assert.Single(named.Reasons)).MeanKgPerM3;
        Assert.Equal(new(14, Math.Sqrt(0.4 * 0.4 + 1)), mean);
        Assert.Equal(unnamed.Probability, named.Probability);
    }

    [Fact]
    public void Enough_of_what_is_hardly_the_product_is_not_said_to_be_enough()
    {
        var known = new Fact<double>(1, new(Standing.CommonPractice, "common practice", "", "", ""));
        var copper = new Substances(
            new Dictionary<string, Fact<double>>(StringComparer.Ordinal) { ["Cu"] = known, ["O"] = known },
            [],
            [],
            []
        ).Find("CuO")!;
        Assay Off(double kgPerM3, double share) =>
            Of("A", kgPerM3, 0.2, "S1") with
            {
                PartsOffFormula = [new PartOffFormula(copper, new(share, 0.01), 0.185)],
            };

        Assert.Equal(Verdict.Conforms, Judge(8, Off(10, 0.22), Of("A", 10.1, 0.2, "S2")).Verdict);
        var hardly = Judge(8, Off(10, 0.95), Of("A", 10.1, 0.2, "S2"));
        Assert.Equal(Verdict.Undecided, hardly.Verdict);
        Assert.Null(hardly.Probability);
        Assert.Equal(["S1"], Assert.Single(hardly.Reasons.OfType<HardlyThatProduct>()).Samples);
        // Too little is too little, of whatever it is.
        Assert.Equal(Verdict.DoesNotConform, Judge(8, Off(5, 0.95), Of("A", 5.1, 0.2, "S2")).Verdict);
    }

    [Fact]
    public void Enough_by_parts_that_were_not_analysed_is_not_said_to_be_enough()
    {
        var known = new Fact<double>(1, new(Standing.CommonPractice, "common practice", "", "", ""));
        var oxide = new Substances(
            new Dictionary<string, Fact<double>>(StringComparer.Ordinal) { ["Cu"] = known, ["O"] = known },
            [],
            [],
            []
        ).Find("CuO")!;
        Assay Partial(double kgPerM3) => Of("A", kgPerM3, 0.2, "S1") with { PartsNotAnalysed = [oxide] };

        var partial = Judge(8, Partial(10), Of("A", 10.1, 0.2, "S2"));
        Assert.Equal((Verdict.Undecided, null), (partial.Verdict, partial.Probability));
        var missing = Assert.Single(partial.Reasons.OfType<PartsNotAnalysed>());
        Assert.Equal(["S1"], missing.Samples);
        Assert.Equal(["CuO"], missing.Parts);
        Assert.Equal(Verdict.DoesNotConform, Judge(8, Partial(5), Of("A", 5.1, 0.2, "S2")).Verdict);
    }

    private static MeasuredAssay Of(string laboratory, double value, double u, string sample = "") =>
        new(new(value, u), sample) { Laboratory = laboratory };

    private static MeasuredAssay Shared(string laboratory, double value, double own, double shared) =>
        new(new(value, Math.Sqrt(own * own + shared * shared)), "S1")
        {
            Laboratory = laboratory,
            SharedKgPerM3 = shared,
        };

    private static Judgement Judge(double required, params Assay[] assays) =>
        RetentionConformity.Judge(assays, required, Decision);
}

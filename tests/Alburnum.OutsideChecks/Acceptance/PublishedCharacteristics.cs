using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;

namespace Alburnum.OutsideChecks.Acceptance;

[Computed]
public class PublishedCharacteristics
{
    [Theory]
    [InlineData(4, 20, 0.95, 0.071354, 0.401029)]
    [Published(
        "NIST/SEMATECH e-Handbook of Statistical Methods, 2003 ff.",
        "section 7.2.4.1, 4 failures in 20, 90 % two-sided"
    )]
    public void Exact_limits_of_4_in_20_are_the_handbook_s(
        int count,
        int n,
        double confidence,
        double lower,
        double upper
    )
    {
        Assert.Equal(lower, ClopperPearson.Lower(count, n, confidence), 1e-6);
        Assert.Equal(upper, 1 - ClopperPearson.Lower(n - count, n, confidence), 1e-6);
    }

    [Fact]
    [WorkedOut("1 − 0.025^(1/125): no failure in 125 pieces at 95 % two-sided")]
    public void No_failure_in_125_leaves_up_to_2_9_per_cent()
    {
        Assert.Equal(1 - Math.Pow(0.025, 1 / 125.0), 1 - ClopperPearson.Lower(125, 125, 0.975), 1e-12);
        Assert.Equal(0.029080, 1 - ClopperPearson.Lower(125, 125, 0.975), 1e-6);
    }

    [Fact]
    [Published(
        "NIST/SEMATECH e-Handbook of Statistical Methods, 2003 ff.",
        "section 7.2.6.3, one-sided tolerance limit, n = 43"
    )]
    public void The_tolerance_factor_of_43_measurements_is_the_handbook_s() =>
        Assert.Equal(1.8740, ToleranceLimit.Factor(43, 0.90, 0.99), 1e-4);

    [Fact]
    [Published(
        "NIST/SEMATECH e-Handbook of Statistical Methods, 2003 ff.",
        "section 6.2.6: at n = 24 accept on 0, reject on 3"
    )]
    [WorkedOut(
        "Wald's lines at the risks 0.01, 0.05, 0.10, 0.10: ln((1 − α)/β)/k, ln((1 − β)/α)/k and ln((1 − p₁)/(1 − p₂))/k, "
            + "where k = ln(p₂(1 − p₁)/(p₁(1 − p₂)))"
    )]
    public void The_handbook_s_sequential_plan_has_its_lines_and_numbers()
    {
        var plan = SequentialPlan.For(new(0.01, 0.05, 0.10, 0.10), 200);

        Assert.Equal(0.0397, plan.Slope, 6e-5);
        Assert.Equal(0.939, plan.AcceptIntercept, 6e-4);
        Assert.Equal(1.205, plan.RejectIntercept, 6e-4);
        Assert.Null(plan.AcceptanceNumber(23));
        Assert.Equal(0, plan.AcceptanceNumber(24));
        Assert.Equal(3, plan.RejectionNumber(24));
        Assert.Equal(2, plan.RejectionNumber(2));
        Assert.Null(plan.RejectionNumber(1));
    }

    [Fact]
    [WorkedOut("Wald's bounds: the two risks of an endless sequential plan never exceed α/(1 − β) and β/(1 − α)")]
    public void A_sequential_plan_keeps_within_Wald_s_bounds()
    {
        var plan = SequentialPlan.For(new(0.05, 0.05, 0.25, 0.10), 400);
        var process = new SteadyProcess();

        Assert.True(1 - plan.Acceptance(0.05, process) <= 0.05 / 0.90 + 1e-9);
        Assert.True(plan.Acceptance(0.25, process) <= 0.10 / 0.95 + 1e-9);
        Assert.True(plan.MeanPiecesCut(0.05, process) < PlanDesign.Single(new(0.05, 0.05, 0.25, 0.10)).SampleSize);
    }

    [Theory]
    [InlineData(50, 5, 10, 0, 0.31056)]
    [InlineData(50, 5, 10, 1, 0.74190)]
    [InlineData(50, 5, 5, 1, 0.928248)]
    [InlineData(200, 20, 20, 2, 0.67868)]
    [WorkedOut("ratios of binomial coefficients")]
    public void A_lot_s_exact_characteristic_is_a_ratio_of_counts(
        int lot,
        int failing,
        int n,
        int c,
        double accepted
    ) =>
        Assert.Equal(
            accepted,
            new SingleSamplingPlan(n, c).Acceptance((double)failing / lot, new FiniteLot(lot)),
            6e-6
        );

    [Fact]
    [WorkedOut("P(d ≤ c) of 8 pieces at 25 % failing: 0.6785 against 0.9958")]
    [CommonPractice("the two readings of \"AQL 25 %\"")]
    public void The_two_readings_of_AQL_25_have_very_different_characteristics()
    {
        var process = new SteadyProcess();

        Assert.Equal(0.67854, new SingleSamplingPlan(8, 2).Acceptance(0.25, process), 1e-5);
        Assert.Equal(0.99577, new SingleSamplingPlan(8, 5).Acceptance(0.25, process), 1e-5);
    }

    [Theory]
    [InlineData(80, 2, 0.01, 0.9534)]
    [InlineData(80, 2, 0.05, 0.2306)]
    [InlineData(52, 3, 0.06, 0.6196)]
    [WorkedOut("binomial sums computed once by another hand")]
    public void Binomial_characteristics_have_their_tabulated_values(int n, int c, double failing, double accepted) =>
        Assert.Equal(accepted, new SingleSamplingPlan(n, c).Acceptance(failing, new SteadyProcess()), 6e-5);

    [Fact]
    [IndependentProgram(
        SciPyReference.Program,
        "greatest of stats.binom.cdf(3, 52, p)·p·(10 000 − 52)/10 000: 0.03719 at 0.0559"
    )]
    public void The_handbook_s_plan_has_its_outgoing_limit()
    {
        var limit = OperatingCharacteristic.OutgoingLimit(new(52, 3), 10_000);

        Assert.Equal(0.0372, limit.Limit, 3e-4);
        Assert.InRange(limit.AtShare, 0.055, 0.07);
    }
}

using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Risk;
using Alburnum.Acceptance.Variables;

namespace Alburnum.OutsideChecks.Acceptance;

[IndependentProgram(SciPyReference.Program, SciPyReference.Script)]
[Computed]
public class SecondImplementation
{
    /// <summary>Relative agreement asked for where both sides compute to full precision.</summary>
    private const double Digits = 1e-11;

    private static void Agree(string what, double relative, Func<double[], double> ours)
    {
        foreach (var (a, value) in SciPyReference.Rows(what))
        {
            var got = ours(a);
            Assert.True(
                Math.Abs(got - value) <= relative * Math.Max(Math.Abs(value), 1e-3),
                $"{what}({string.Join(", ", a)}): {got} where the reference has {value}"
            );
        }
    }

    [Fact]
    public void Hypergeometric_sums_agree() =>
        Agree("hypergeometric", 1e-9, a => Hypergeometric.AtMost((int)a[3], (int)a[0], (int)a[1], (int)a[2]));

    [Fact]
    public void Binomial_sums_agree() => Agree("binomial", Digits, a => Binomial.AtMost((int)a[2], (int)a[0], a[1]));

    [Fact]
    public void Poisson_sums_agree() => Agree("poisson", Digits, a => Poisson.AtMost((int)a[0], a[1]));

    [Fact]
    public void Exact_bounds_on_a_share_agree()
    {
        Agree("clopper-lower", 1e-9, a => ClopperPearson.Lower((int)a[0], (int)a[1], a[2]));
        Agree("clopper-upper", 1e-9, a => 1 - ClopperPearson.Lower((int)(a[1] - a[0]), (int)a[1], a[2]));
    }

    [Fact]
    public void Exact_bounds_on_a_lot_agree_with_trying_every_lot() =>
        Agree("lot-lower", Digits, a => LotShare.LowerBound((int)a[0], (int)a[1], (int)a[2], a[3]));

    [Fact]
    public void The_non_central_t_distribution_agrees() =>
        Agree("nct", 1e-9, a => NonCentralT.AtMost(a[2], a[0], a[1]));

    [Fact]
    public void Tolerance_factors_agree() =>
        Agree("tolerance-factor", 1e-8, a => ToleranceLimit.Factor((int)a[0], a[1], a[2]));

    [Fact]
    public void The_smallest_plan_agrees_with_trying_every_plan()
    {
        SingleSamplingPlan Plan(double[] a) =>
            PlanDesign.Single(new(a[0], a[1], a[2], a[3]), a[4] > 0 ? (int)a[4] : null);
        Agree("smallest-plan-n", 0, a => Plan(a).SampleSize);
        Agree("smallest-plan-c", 0, a => Plan(a).AcceptanceNumber);
    }

    [Fact]
    public void The_Bayesian_reading_of_a_lot_agrees() =>
        Agree("betabinomial", 1e-9, a => new BetaBinomial((int)a[0], (int)a[1]).LotConforms(a[3], (int)a[2]));

    [Fact]
    public void Global_risks_of_a_guard_band_agree()
    {
        Agree("consumer-risk", 1e-8, a => ConformityRisk.Global(new(a[0], a[1]), a[2], a[3], a[4]).ConsumerRisk);
        Agree("producer-risk", 1e-8, a => ConformityRisk.Global(new(a[0], a[1]), a[2], a[3], a[4]).ProducerRisk);
    }

    [Fact]
    public void A_fit_to_cut_off_readings_agrees_with_direct_maximisation()
    {
        CensoredReading[] readings =
        [
            new(4.1, Censoring.Exact),
            new(5.6, Censoring.Exact),
            new(7.2, Censoring.Exact),
            new(6.3, Censoring.Exact),
            new(8.4, Censoring.Exact),
            new(5.0, Censoring.Exact),
            new(2.0, Censoring.AtMost),
            new(2.0, Censoring.AtMost),
            new(10.0, Censoring.AtLeast),
            new(10.0, Censoring.AtLeast),
        ];
        var fit = CensoredSample.Fit(readings, Population.Normal);

        Agree("censored-mean", 1e-6, _ => fit.Mean.Value);
        Agree("censored-sd", 1e-6, _ => fit.StandardDeviation.Value);
        // Both sides take the curvature by differences.
        Agree("censored-mean-u", 1e-4, _ => fit.Mean.StandardUncertainty);
        Agree("censored-sd-u", 1e-4, _ => fit.StandardDeviation.StandardUncertainty);
    }

    [Fact]
    public void Run_lengths_agree_with_a_Markov_chain()
    {
        // The chain is extrapolated in its cell width; about six digits remain.
        Agree("ewma-arl", 1e-5, a => AverageRunLength.Of(new EwmaChart(a[0], a[1]), a[2]));
        Agree("cusum-arl", 1e-5, a => AverageRunLength.OneSided(new CusumChart(a[0], a[1]), a[2]));
    }
}

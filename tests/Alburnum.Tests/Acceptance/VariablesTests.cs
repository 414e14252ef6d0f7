using Alburnum.Acceptance.Risk;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using CsCheck;
using MathNet.Numerics.Distributions;

namespace Alburnum.Tests.Acceptance;

public class VariablesTests
{
    [Fact]
    public void Without_a_shift_the_non_central_t_is_Student_s() =>
        // The library rounds t below about 1e-4 to 0; ours does not, as the next test shows.
        Gen.Select(Gen.Double[0.001, 8], Gen.Int[1, 200], Gen.Bool)
            .Sample(
                (size, freedom, isBelow) =>
                {
                    var t = isBelow ? -size : size;
                    Assert.Equal(StudentT.CDF(0, 1, freedom, t), NonCentralT.AtMost(t, freedom, 0), 1e-8);
                },
                iter: 200
            );

    [Fact]
    public void Near_0_the_non_central_t_rises_by_its_density()
    {
        const double t = 1e-6;

        Assert.Equal(0.5 + t * StudentT.PDF(0, 1, 130, 0), NonCentralT.AtMost(t, 130, 0), 1e-10);
    }

    [Fact]
    public void Quantile_and_distribution_undo_each_other() =>
        Gen.Select(Gen.Double[0.01, 0.99], Gen.Int[1, 300], Gen.Double[-5, 30])
            .Sample(
                (p, freedom, shift) =>
                    Assert.Equal(p, NonCentralT.AtMost(NonCentralT.Quantile(p, freedom, shift), freedom, shift), 1e-8),
                iter: 60
            );

    [Fact]
    public void Without_cut_off_readings_the_fit_is_mean_and_spread()
    {
        double[] values = [3.2, 4.1, 5.0, 6.2, 4.4];
        var fit = CensoredSample.Fit(
            [.. values.Select(v => new CensoredReading(v, Censoring.Exact))],
            Population.Normal
        );
        var mean = values.Average();
        var sd = Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));

        Assert.Equal(mean, fit.Mean.Value, 1e-9);
        Assert.Equal(sd, fit.StandardDeviation.Value, 1e-9);
        Assert.Equal(sd / Math.Sqrt(5), fit.Mean.StandardUncertainty, 1e-4);
    }

    [Fact]
    public void Readings_below_detection_pull_the_mean_down_and_full_penetration_pulls_it_up()
    {
        CensoredReading[] exact = [new(5, Censoring.Exact), new(6, Censoring.Exact), new(7, Censoring.Exact)];
        double Mean(params CensoredReading[] more) =>
            CensoredSample.Fit([.. exact, .. more], Population.Normal).Mean.Value;

        Assert.True(Mean(new CensoredReading(4, Censoring.AtMost)) < Mean());
        Assert.True(Mean(new CensoredReading(8, Censoring.AtLeast)) > Mean());
        Assert.True(Mean(new CensoredReading(8, Censoring.AtLeast)) > Mean(new CensoredReading(8, Censoring.Exact)));
    }

    [Fact]
    public void Readings_that_are_all_cut_off_are_refused() =>
        Assert.Throws<ArgumentException>(() =>
            CensoredSample.Fit([new(2, Censoring.AtMost), new(2, Censoring.AtMost)], Population.Normal)
        );

    [Fact]
    public void A_wider_guard_band_moves_risk_from_the_consumer_to_the_producer()
    {
        var process = new Estimate(8, 1.5);
        var narrow = ConformityRisk.Global(process, 0.5, 6, 0);
        var wide = ConformityRisk.Global(process, 0.5, 6, 0.8);

        Assert.True(wide.ConsumerRisk < narrow.ConsumerRisk);
        Assert.True(wide.ProducerRisk > narrow.ProducerRisk);
    }

    [Fact]
    public void A_better_photograph_helps_more_than_a_poorer_one()
    {
        var reading = new Estimate(6.3, 0.5);
        double Decides(double u) => NextEvidence.SecondReadingDecides(reading, 6, u, DecisionRule.Usual);

        Assert.True(Decides(0.1) > Decides(0.3));
        Assert.True(Decides(0.3) > Decides(1.0));
        Assert.InRange(Decides(0.1), 0.5, 1);
        Assert.InRange(Decides(10), 0, 1e-3);
    }

    [Fact]
    public void The_chance_that_a_second_reading_decides_agrees_with_drawing_it()
    {
        // Draw the truth about the reading, then the second reading about the truth, and count.
        var random = new Random(7);
        double Gauss() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int draws = 200_000;
        var decided = 0;
        for (var i = 0; i < draws; i++)
        {
            var truth = 6.3 + 0.5 * Gauss();
            var together = ConformityRisk.Combine(new(6.3, 0.5), new(truth + 0.3 * Gauss(), 0.3));
            var conforms = Normal.CDF(0, 1, (together.Value - 6) / together.StandardUncertainty);
            if (DecisionRule.Usual.Decide(conforms) != Verdict.Undecided)
                decided++;
        }

        Assert.Equal(
            (double)decided / draws,
            NextEvidence.SecondReadingDecides(new(6.3, 0.5), 6, 0.3, DecisionRule.Usual),
            0.005
        );
    }

    [Fact]
    public void More_pieces_show_a_share_more_surely_where_few_have_failed()
    {
        var clean = NextEvidence.MorePiecesShow(0, 5, 10, 500, 0.75, 0.95);

        Assert.InRange(clean, 0.5, 1);
        Assert.True(clean > NextEvidence.MorePiecesShow(1, 5, 10, 500, 0.75, 0.95));
        Assert.True(NextEvidence.MorePiecesShow(0, 5, 20, 500, 0.75, 0.95) > clean);
    }
}

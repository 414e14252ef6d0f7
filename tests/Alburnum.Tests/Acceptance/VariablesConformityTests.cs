using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using CsCheck;
using MathNet.Numerics.Statistics;

namespace Alburnum.Tests.Acceptance;

public class VariablesConformityTests
{
    private static readonly double[] Retentions = [13.1, 14.6, 12.4, 15.8, 13.9, 14.2, 12.9, 13.6];

    private static VariablesDemand Demand(
        double limit,
        double share = 0.75,
        Population population = Population.LogNormal
    ) => new(limit, "kg/m³", share, 0.95, population);

    private static CensoredReading[] Exact(params double[] values) =>
        [.. values.Select(value => new CensoredReading(value, Censoring.Exact))];

    private static VariablesJudgement Judge(CensoredReading[] readings, VariablesDemand demand) =>
        VariablesConformity.Judge(readings, demand, 500);

    [Fact]
    public void Values_well_above_the_limit_conform_and_well_below_it_do_not()
    {
        Assert.Equal(Verdict.Conforms, Judge(Exact(Retentions), Demand(11)).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Exact(Retentions), Demand(13)).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Exact(Retentions), Demand(15)).Verdict);
    }

    [Fact]
    public void The_verdict_turns_exactly_at_the_tolerance_limits()
    {
        var judged = Judge(Exact(Retentions), Demand(13));
        double[] logs = [.. Retentions.Select(value => Math.Log(value))];

        Assert.Equal(
            Math.Exp(logs.Mean() - ToleranceLimit.Factor(logs.Length, 0.75, 0.95) * logs.StandardDeviation()),
            judged.LowerLimit!.Value,
            1e-9
        );
        Assert.Equal(Verdict.Conforms, Judge(Exact(Retentions), Demand(judged.LowerLimit.Value - 1e-6)).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Exact(Retentions), Demand(judged.LowerLimit.Value + 1e-6)).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Exact(Retentions), Demand(judged.UpperLimit!.Value - 1e-6)).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Judge(Exact(Retentions), Demand(judged.UpperLimit.Value + 1e-6)).Verdict);
    }

    [Fact]
    public void Limit_and_share_say_the_same()
    {
        var demand = Demand(13);
        var judged = Judge(Exact(Retentions), demand);
        var atLower = Judge(Exact(Retentions), Demand(judged.LowerLimit!.Value));

        Assert.Equal(demand.Share, atLower.ShareLowerBound!.Value, 1e-7);
        Assert.InRange(demand.Share, judged.ShareLowerBound!.Value, judged.ShareUpperBound!.Value);
    }

    [Fact]
    public void A_wrong_verdict_comes_as_often_as_stated()
    {
        // A supply of which exactly 75 % reach the limit: each limit must be wrong in 5 % of samples.
        double lower = ToleranceLimit.Factor(6, 0.75, 0.95),
            upper = ToleranceLimit.Factor(6, 0.75, 0.05);
        var random = new Random(3);
        const int samples = 20_000;
        var (conforms, fails) = (0, 0);
        for (var i = 0; i < samples; i++)
        {
            var values = Enumerable.Range(0, 6).Select(_ => Math.Log(Draw(random))).ToArray();
            var mean = values.Average();
            var sd = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / 5);
            conforms += mean - lower * sd >= Math.Log(Quarter) ? 1 : 0;
            fails += mean - upper * sd < Math.Log(Quarter) ? 1 : 0;
        }

        // Standard deviation of a count of 1000 is about 31.
        Assert.InRange(conforms, 900, 1100);
        Assert.InRange(fails, 900, 1100);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    public void With_a_fifth_of_the_readings_cut_off_a_wrong_conforms_stays_rare(int pieces)
    {
        // About a fifth lies below this detection limit.
        var detection = Math.Exp(Math.Log(14) - 0.8416 * Spread);
        var random = new Random(4);
        const int samples = 1500;
        // The factor is the costly part and depends on the exact readings alone.
        Dictionary<int, double> factors = [];
        var wrong = 0;
        for (var i = 0; i < samples; i++)
        {
            CensoredReading[] readings =
            [
                .. Enumerable
                    .Range(0, pieces)
                    .Select(_ => Draw(random))
                    .Select(value =>
                        value < detection
                            ? new CensoredReading(detection, Censoring.AtMost)
                            : new CensoredReading(value, Censoring.Exact)
                    ),
            ];
            var n = readings.Count(reading => reading.Censoring == Censoring.Exact);
            if (!factors.TryGetValue(n, out var factor))
                factors[n] = factor = ToleranceLimit.Factor(n, 0.75, 0.95);
            var limit = LimitByHand(CensoredSample.Fit(readings, Population.LogNormal), n, factor);
            wrong += limit >= Quarter ? 1 : 0;
            if (i == 0)
                Assert.Equal(limit, Judge(readings, Demand(Quarter)).LowerLimit!.Value, 1e-9);
        }

        // Stated 5 %; the standard deviation of the count over 1500 samples is about 0.6 %.
        Assert.InRange((double)wrong / samples, 0.02, 0.065);
    }

    private static double LimitByHand(CensoredFit fit, int exact, double factor) =>
        Math.Exp(fit.Mean.Value - factor * fit.StandardDeviation.Value * Math.Sqrt(exact / (exact - 1.0)));

    [Fact]
    public void Where_readings_fix_no_spread_the_exact_count_decides()
    {
        CensoredReading[] full = [.. Enumerable.Repeat(new CensoredReading(25, Censoring.AtLeast), 11)];
        var judged = VariablesConformity.Judge(full, new(6, "mm", 0.75, 0.95, Population.Normal), null);

        Assert.Equal(Verdict.Conforms, judged.Verdict);
        Assert.Null(judged.LowerLimit);
        Assert.Contains(new SpreadNotFixed(), judged.Reasons);
        Assert.DoesNotContain(judged.Reasons, reason => reason is PopulationAssumed);
        // 11 of 11 of an endless supply: 0.05^(1/11), 76.2 %.
        Assert.Equal(Math.Pow(0.05, 1 / 11.0), judged.CountedShareLowerBound, 1e-9);
        // One piece fewer shows 74.1 %.
        Assert.Equal(Verdict.Undecided, VariablesConformity.Judge(full[1..], Demand(6), null).Verdict);
    }

    [Theory]
    [InlineData(0.5, Censoring.AtMost)]
    [InlineData(3, Censoring.Exact)]
    public void A_batch_all_of_which_reads_alike_below_the_limit_does_not_conform(double value, Censoring censoring)
    {
        CensoredReading[] alike = [.. Enumerable.Repeat(new CensoredReading(value, censoring), 20)];

        Assert.Equal(Verdict.DoesNotConform, VariablesConformity.Judge(alike, Demand(12), null).Verdict);
        // A higher reading never makes it worse: one of them raised is judged by the values, to the same end.
        alike[0] = new(value + 0.1, Censoring.Exact);
        Assert.Equal(Verdict.DoesNotConform, VariablesConformity.Judge(alike, Demand(12), null).Verdict);
    }

    [Theory]
    [InlineData(6, Verdict.Conforms)]
    [InlineData(5, Verdict.DoesNotConform)]
    public void A_lot_measured_to_the_last_piece_is_counted_not_inferred(int reaching, Verdict verdict)
    {
        double[] values = [.. Enumerable.Range(0, 8).Select(i => i < reaching ? 12 + (0.3 * i) : 11.9 - (0.2 * i))];
        var demand = new VariablesDemand(12, "kg/m³", 0.75, 0.95, Population.LogNormal);
        var judged = VariablesConformity.Judge(Exact(values), demand, 8);

        Assert.Equal(verdict, judged.Verdict);
        Assert.Contains(new LotMeasured(reaching, 8 - reaching, 8), judged.Reasons);
        var findings = judged.Findings(demand, 8);
        Assert.True(findings.Lot!.IsWhole);
        Assert.Equal(reaching / 8.0, findings.Lot.Bound.LowerBound);
        Assert.Equal([new OnlyMeasureJudged()], findings.NotJudged);
    }

    [Fact]
    public void No_sample_shows_all_of_a_supply_to_reach_the_limit_nor_a_depth_below_nothing()
    {
        double[] alike = [.. Enumerable.Repeat(14.0, 19), 13.9];
        Assert.InRange(Judge(Exact(alike), Demand(12)).ShareLowerBound!.Value, 0.999, Math.BitDecrement(1.0));

        CensoredReading[] spread = [new(1, Censoring.Exact), new(9, Censoring.Exact), new(25, Censoring.AtLeast)];
        var judged = VariablesConformity.Judge(spread, new(6, "mm", 0.75, 0.95, Population.Normal), null);
        Assert.Equal(0, judged.LowerLimit);
    }

    [Fact]
    public void A_reading_below_detection_is_never_counted_as_reaching_the_limit()
    {
        var judged = Judge([.. Exact(Retentions), new(20, Censoring.AtMost)], Demand(11));

        Assert.False(judged.IsExact);
        var counted = Assert.Single(judged.Reasons.OfType<CountedAlone>());
        Assert.Equal((8, 9, (int?)500), (counted.Reaching, counted.Pieces, counted.LotSize));
        Assert.Equal(judged.CountedShareLowerBound, counted.ShareLowerBound);
        var read = Assert.Single(judged.Reasons.OfType<ValuesRead>());
        Assert.Equal(9, read.Pieces);
        Assert.Equal([new CutOffReadings(20, 1)], read.BelowDetection);
        Assert.Empty(read.CutOffAbove);
        Assert.Equal((Retentions.Min(), Retentions.Max()), read.Values!.Value);
    }

    [Fact]
    public void The_lot_goes_by_the_values_and_where_some_are_cut_off_by_the_count()
    {
        var exact = Judge(Exact(Retentions), Demand(11));
        var lot = exact.Findings(Demand(11), 500).Lot!;
        Assert.Equal((exact.ShareLowerBound, (int?)null), (lot.Bound.LowerBound, lot.LotSize));

        var cut = Judge([.. Exact(Retentions), new(5, Censoring.AtMost)], Demand(11));
        var counted = cut.Findings(Demand(11), 500);
        Assert.Equal((cut.CountedShareLowerBound, (int?)500), (counted.Lot!.Bound.LowerBound, counted.Lot.LotSize));
        // Nothing but one measure was judged: the whole is never said to conform.
        Assert.NotEqual(Verdict.Conforms, exact.Findings(Demand(11), 500).Weakest);
    }

    [Fact]
    public void Where_values_and_count_point_different_ways_nothing_is_decided()
    {
        // One piece far below drags a log-normal spread so wide that the limits contradict seven good pieces of eight.
        var judged = Judge([.. Exact(Retentions[1..]), new(0.5, Censoring.AtMost)], Demand(11));

        Assert.True(judged.UpperLimit < 11, $"{judged.UpperLimit}");
        Assert.Equal(Verdict.Undecided, judged.Verdict);
        Assert.Equal(new PopulationDoubted(Population.LogNormal), judged.Reasons[^1]);
    }

    [Fact]
    public void Spread_near_nothing_is_no_trouble()
    {
        var judged = Judge(Exact(14, 14, 14, 14.0001), Demand(11));

        Assert.Equal(Verdict.Conforms, judged.Verdict);
        Assert.InRange(judged.ShareLowerBound!.Value, 0.99, 1);
    }

    [Fact]
    public void The_verdict_never_improves_when_all_values_are_lowered_alike() =>
        Gen.Select(Gen.Double[2, 30].Array[2, 12], Gen.Double[0.2, 1], Gen.Double[3, 25], Gen.Bool)
            .Where((values, _, _, _) => values.Distinct().Count() > 1)
            .Sample(
                (values, factor, limit, isNormal) =>
                {
                    var demand = Demand(limit, 0.75, isNormal ? Population.Normal : Population.LogNormal);
                    // A normal measure is lowered by an amount, a log-normal one by a factor: the spread stays as it is.
                    double[] lowered =
                    [
                        .. values.Select(value => isNormal ? value - (1 - factor) * values.Min() : value * factor),
                    ];

                    Assert.True(Rank(Judge(Exact(lowered), demand)) <= Rank(Judge(Exact(values), demand)));
                },
                iter: 60
            );

    [Fact]
    public void More_readings_than_the_lot_has_are_refused() =>
        Assert.Throws<ArgumentException>(() => VariablesConformity.Judge(Exact(Retentions), Demand(11), 7));

    private const double Spread = 0.15;

    /// <summary>What three quarters of the supply exceed.</summary>
    private static readonly double Quarter = Math.Exp(Math.Log(14) - 0.67449 * Spread);

    private static double Draw(Random random) =>
        14
        * Math.Exp(
            Spread * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())
        );

    private static int Rank(VariablesJudgement judged) =>
        judged.Verdict switch
        {
            Verdict.DoesNotConform => 0,
            Verdict.Undecided => 1,
            _ => 2,
        };
}

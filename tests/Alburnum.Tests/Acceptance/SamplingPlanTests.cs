using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;
using CsCheck;

namespace Alburnum.Tests.Acceptance;

public class SamplingPlanTests
{
    private static readonly Supply Process = new SteadyProcess();
    private static readonly RiskPoints Risks = new(0.05, 0.05, 0.25, 0.10);

    [Fact]
    public void A_worse_lot_is_never_likelier_to_be_accepted()
    {
        var plans = Gen.OneOf(
            Gen.Select(Gen.Int[1, 60], Gen.Int[0, 10], (n, c) => (SamplingPlan)new SingleSamplingPlan(n, c)),
            Gen.Select(
                Gen.Int[1, 30],
                Gen.Int[0, 3],
                Gen.Int[1, 4],
                (n, c, more) => (SamplingPlan)new DoubleSamplingPlan(n, c, c + more + 1, n, c + more)
            ),
            Gen.Const((SamplingPlan)SequentialPlan.For(Risks, 90))
        );
        Gen.Select(plans, Gen.Double[0, 1], Gen.Double[0, 1])
            .Sample(
                (plan, p, q) =>
                    Assert.True(
                        plan.Acceptance(Math.Max(p, q), Process) <= plan.Acceptance(Math.Min(p, q), Process) + 1e-12
                    ),
                iter: 1000
            );
    }

    [Fact]
    public void Cutting_more_accepts_less_and_allowing_more_accepts_more() =>
        Gen.Select(Gen.Int[1, 80], Gen.Int[0, 12], Gen.Double[0, 1])
            .Sample(
                (n, c, p) =>
                {
                    var here = new SingleSamplingPlan(n, c).Acceptance(p, Process);

                    Assert.True(new SingleSamplingPlan(n + 1, c).Acceptance(p, Process) <= here + 1e-12);
                    Assert.True(new SingleSamplingPlan(n, c + 1).Acceptance(p, Process) >= here - 1e-12);
                },
                iter: 2000
            );

    [Fact]
    public void A_plan_that_inspects_the_whole_lot_makes_no_mistake()
    {
        var plan = new SingleSamplingPlan(40, 4);

        Assert.Equal(1, plan.Acceptance(0.10, new FiniteLot(40)));
        Assert.Equal(0, plan.Acceptance(0.125, new FiniteLot(40)));
    }

    [Fact]
    public void A_double_plan_whose_first_sample_always_decides_is_a_single_plan()
    {
        // Reject at 2, accept at 0: only a count of 1 goes on, and then nothing more may fail.
        var plan = new DoubleSamplingPlan(10, 0, 2, 10, 1);
        var p = 0.08;
        var expected = Binomial.AtMost(0, 10, p) + Binomial.Probability(1, 10, p) * Binomial.AtMost(0, 10, p);

        Assert.Equal(expected, plan.Acceptance(p, Process), 1e-13);
        Assert.Equal(10 + 10 * Binomial.Probability(1, 10, p), plan.MeanPiecesCut(p, Process), 1e-12);
    }

    [Fact]
    public void The_exact_walk_of_a_sequential_plan_agrees_with_counting_paths_by_hand()
    {
        // Cut off after 2 pieces, the plan accepts at most Slope·2 failures, which is none.
        var plan = SequentialPlan.For(Risks, 2);

        Assert.Equal(0, plan.AcceptanceNumber(2));
        Assert.Equal(0.81, plan.Acceptance(0.1, Process), 1e-12);
        // From a lot of 10 with one failing piece: 9/10 × 8/9.
        Assert.Equal(0.8, plan.Acceptance(0.1, new FiniteLot(10)), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(400)]
    public void Double_and_sequential_plans_cut_less_on_good_lots_for_the_same_risks(int lot)
    {
        int? size = lot > 0 ? lot : null;
        Supply supply = size is { } pieces ? new FiniteLot(pieces) : Process;
        var single = PlanDesign.Single(Risks, size);
        var twice = PlanDesign.Double(Risks, size);
        var sequential = PlanDesign.Sequential(Risks, size);

        Assert.True(twice.Acceptance(Risks.AcceptableShare, supply) >= 0.95);
        Assert.True(twice.Acceptance(Risks.RejectableShare, supply) <= 0.10);
        Assert.True(twice.MeanPiecesCut(0.05, supply) < single.SampleSize);
        Assert.True(sequential.MeanPiecesCut(0.05, supply) < single.SampleSize);
    }

    [Fact]
    public void The_smallest_plan_keeps_both_risks_and_one_piece_less_does_not() =>
        Gen.Select(Gen.Double[0.01, 0.15], Gen.Double[0.1, 0.3], Gen.Int[100, 3000], Gen.Bool)
            .Sample(
                (p1, gap, lot, isLot) =>
                {
                    var risks = new RiskPoints(p1, 0.05, p1 + gap, 0.10);
                    int? size = isLot ? lot : null;
                    var plan = PlanDesign.Single(risks, size);
                    bool Keeps(int n, int c) =>
                        size is { } pieces
                            ? Hypergeometric.AtMost(c, pieces, (int)Math.Floor(p1 * pieces), n) >= 0.95
                                && Hypergeometric.AtMost(c, pieces, (int)Math.Ceiling((p1 + gap) * pieces), n) <= 0.10
                            : Binomial.AtMost(c, n, p1) >= 0.95 && Binomial.AtMost(c, n, p1 + gap) <= 0.10;

                    Assert.True(Keeps(plan.SampleSize, plan.AcceptanceNumber));
                    for (var n = 1; n < plan.SampleSize; n++)
                    for (var c = 0; c < n; c++)
                        Assert.False(Keeps(n, c), $"{n}, {c} is smaller than {plan}");
                },
                iter: 15
            );

    [Fact]
    public void Shares_too_close_for_sampling_call_for_the_whole_lot()
    {
        // No failing piece is to be accepted, one in ten to be rejected: only cutting nearly all of them tells.
        var plan = PlanDesign.Single(new(0.01, 0.05, 0.10, 0.05), 10);

        Assert.Equal((10, 0), (plan.SampleSize, plan.AcceptanceNumber));
    }

    [Fact]
    public void Pieces_to_show_a_share_are_enough_and_one_less_is_not()
    {
        // 1 − 0.75^n ≥ 0.95 first at n = 11.
        Assert.Equal(11, PlanDesign.PiecesToShow(0.75, 0.95, 0, null));
        Assert.True(PlanDesign.PiecesToShow(0.75, 0.95, 0, 20) < 11);
        Assert.Equal(2, PlanDesign.PiecesToShow(0.5, 0.95, 1, 2));
        Assert.Null(PlanDesign.PiecesToShow(0.9, 0.95, 2, 10));
    }

    [Fact]
    public void Landmarks_are_where_the_curve_says()
    {
        var plan = new SingleSamplingPlan(50, 10);
        var landmarks = OperatingCharacteristic.Landmarks(plan, Process);

        Assert.Equal(0.95, plan.Acceptance(landmarks.ProducerShare, Process), 1e-9);
        Assert.Equal(0.50, plan.Acceptance(landmarks.IndifferentShare, Process), 1e-9);
        Assert.Equal(0.10, plan.Acceptance(landmarks.ConsumerShare, Process), 1e-9);
    }

    [Fact]
    public void A_plan_by_variables_keeps_both_risks_with_fewer_pieces()
    {
        var plan = VariablesPlan.For(Risks)!;

        Assert.True(plan.Acceptance(0.05, Process) >= 0.95);
        Assert.Equal(0.10, plan.Acceptance(0.25, Process), 1e-6);
        Assert.True(plan.SampleSize < PlanDesign.Single(Risks).SampleSize);
    }

    [Fact]
    public void The_same_seed_draws_the_same_pieces()
    {
        var drawn = RandomPositions.Draw(500, 50, 20260512);

        Assert.Equal(drawn, RandomPositions.Draw(500, 50, 20260512));
        Assert.NotEqual(drawn, RandomPositions.Draw(500, 50, 20260513));
        Assert.Equal(50, drawn.Distinct().Count());
        Assert.All(drawn, number => Assert.InRange(number, 1, 500));
        Assert.Equal(Enumerable.Range(1, 7), RandomPositions.Draw(7, 7, 1));
    }

    [Fact]
    public void The_generator_gives_the_values_of_its_authors()
    {
        // A recorded seed must give the same pieces for ever. SplitMix64 and Floyd's draw written again in another language gave these.
        Assert.Equal([30, 45, 62, 65, 66], RandomPositions.Draw(100, 5, 1));
    }

    [Fact]
    public void Every_piece_is_drawn_equally_often()
    {
        var counts = new int[21];
        for (ulong seed = 0; seed < 20_000; seed++)
            foreach (var number in RandomPositions.Draw(20, 5, seed))
                counts[number]++;

        // 5000 expected; the standard deviation of a count is about 61.
        Assert.All(counts[1..], count => Assert.InRange(count, 5000 - 300, 5000 + 300));
    }
}

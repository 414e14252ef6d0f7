using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Measures;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Workflows.Tests.Acceptance;

/// <summary>The shipped scheme's characteristic against closed forms, and against lots drawn one by one through the switching rules.</summary>
public sealed class SchemeCharacteristicTests
{
    private static readonly SamplingStandard Standard = new FactLibrary(Repository.At("data")).Sampling;

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.025)]
    [InlineData(0.04)]
    [InlineData(0.08)]
    public void Without_stop_and_reduction_it_is_the_closed_form_of_two_plans(double share)
    {
        var sequence = Sequence(Standard.Switching with { RejectedToStop = null });
        var point = At(sequence, false, share);
        var (p, q) = (Chance(sequence, Severity.Normal, share), Chance(sequence, Severity.Tightened, share));
        // Lots on normal: rejections come every 1/(1 - p) lots; each is the second of a pair with probability 1 - p^4.
        // On tightened: lots until five in a row are accepted.
        var normal = (2 - Math.Pow(p, 4)) / ((1 - p) * (1 - Math.Pow(p, 4)));
        var tightened = (1 - Math.Pow(q, 5)) / ((1 - q) * Math.Pow(q, 5));

        Assert.Equal(normal / (normal + tightened), point.Normal, 1e-9);
        Assert.Equal((p * normal + q * tightened) / (normal + tightened), point.Acceptance, 1e-9);
        Assert.Equal(0, point.Reduced, 1e-12);
        Assert.Null(point.LotsToStop);
    }

    [Theory]
    [InlineData(0.01, true)]
    [InlineData(0.025, true)]
    [InlineData(0.05, true)]
    [InlineData(0.05, false)]
    [InlineData(0.1, false)]
    public void Lots_drawn_one_by_one_come_out_as_it_says(double share, bool isReductionAgreed)
    {
        const int lots = 200_000;
        var sequence = Sequence(Standard.Switching);
        var random = new SeededRandom(7);
        var standing = SwitchingState.Beginning;
        int accepted = 0,
            reduced = 0;
        long cut = 0;
        for (var i = 0; i < lots; i++)
        {
            var plan = sequence.Plan(standing, 500);
            var outcome = plan.Outcome(Failures(random, plan.Plan.SampleSize, share));
            accepted += outcome == LotOutcome.Rejected ? 0 : 1;
            reduced += standing.Severity == Severity.Reduced ? 1 : 0;
            cut += plan.Plan.SampleSize;
            standing = Switching.After(standing, new(outcome, isReductionAgreed), sequence.Rules);
            if (standing.IsStopped)
                standing = Switching.BeginAgain;
        }
        var point = At(sequence, isReductionAgreed, share);

        // Neighbouring lots hang together, so five standard deviations of independent ones.
        Assert.Equal(point.Acceptance, (double)accepted / lots, 5 * 0.5 / Math.Sqrt(lots));
        Assert.Equal(point.MeanPiecesCut, (double)cut / lots, 0.3);
        Assert.Equal(point.Reduced, (double)reduced / lots, 0.02);
    }

    [Fact]
    public void Lots_until_the_first_stop_are_those_of_series_drawn_from_the_beginning()
    {
        const int series = 4000;
        var sequence = Sequence(Standard.Switching);
        var random = new SeededRandom(3);
        long lots = 0;
        for (var n = 0; n < series; n++)
        for (var standing = SwitchingState.Beginning; !standing.IsStopped; lots++)
        {
            var plan = sequence.Plan(standing, 500);
            standing = Switching.After(
                standing,
                new(plan.Outcome(Failures(random, plan.Plan.SampleSize, 0.1))),
                sequence.Rules
            );
        }
        var wait = At(sequence, false, 0.1).LotsToStop!.Value;

        Assert.Equal(wait, (double)lots / series, 5 * wait / Math.Sqrt(series));
    }

    [Fact]
    public void Switching_protects_better_than_the_normal_plan_and_rests_where_nothing_fails()
    {
        var sequence = Sequence(Standard.Switching);
        foreach (var share in new[] { 0.05, 0.08, 0.12 })
            Assert.True(At(sequence, false, share) is var point && point.Acceptance < point.NormalAlone);
        var perfect = At(sequence, true, 0);
        var reduced = sequence.Plan(SwitchingState.Beginning with { Severity = Severity.Reduced }, 500);

        Assert.Equal((1.0, 1.0), (Math.Round(perfect.Acceptance, 9), Math.Round(perfect.Reduced, 9)));
        Assert.Equal(reduced.Plan.SampleSize, perfect.MeanPiecesCut, 1e-6);
        Assert.Null(perfect.LotsToStop);
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(0.6)]
    public void No_share_of_lots_is_less_than_none(double share)
    {
        var point = At(Sequence(Standard.Switching), true, share);

        Assert.All(
            [point.Acceptance, point.Normal, point.Tightened, point.Reduced],
            of => Assert.InRange(of, 0, 1 + 1e-9)
        );
    }

    [Fact]
    public void Nine_of_ten_pieces_leave_one_failing_piece_a_chance_of_one_in_ten() =>
        Assert.Equal(9, PlanDesign.Limiting(0.05, 0.1, 0, 10)!.SampleSize);

    [Theory]
    [InlineData(60, 0.2, 0)]
    [InlineData(500, 0.2, 0)]
    [InlineData(500, 0.2, 3)]
    [InlineData(120, 0.05, 1)]
    [InlineData(9, 0.3, 0)]
    public void A_plan_for_an_isolated_lot_is_the_least_that_protects(int lot, double limiting, int failures)
    {
        var plan = PlanDesign.Limiting(limiting, 0.1, failures, lot)!;
        var failing = (int)Math.Ceiling(limiting * lot - 1e-9);

        Assert.True(ByCounting(failures, lot, failing, plan.SampleSize) <= 0.1 + 1e-9);
        Assert.True(ByCounting(failures, lot, failing, plan.SampleSize - 1) > 0.1);
        Assert.Null(PlanDesign.Limiting(limiting, 0.1, failing, lot));
    }

    // Draws without putting back, one piece after another: a table of chances by failures drawn.
    private static double ByCounting(int most, int lot, int failing, int cut)
    {
        var chance = new double[cut + 1];
        chance[0] = 1;
        for (var drawn = 0; drawn < cut; drawn++)
        for (var found = drawn; found >= 0; found--)
        {
            var fails = Math.Max(0, (double)(failing - found) / (lot - drawn));
            chance[found + 1] += chance[found] * fails;
            chance[found] *= 1 - fails;
        }
        return chance.Take(most + 1).Sum();
    }

    private static LotSequence Sequence(SwitchingRules rules) => new(Standard.Tables, rules, InspectionLevel.II, 2.5);

    private static SchemePoint At(LotSequence sequence, bool isReductionAgreed, double share) =>
        Assert.Single(SchemeCharacteristic.Curve(sequence, 500, isReductionAgreed, [share]));

    private static double Chance(LotSequence sequence, Severity severity, double share) =>
        sequence
            .Plan(SwitchingState.Beginning with { Severity = severity }, 500)
            .Plan.Acceptance(share, new SteadyProcess());

    private static int Failures(SeededRandom random, int pieces, double share)
    {
        var failures = 0;
        for (var i = 0; i < pieces; i++)
            failures += random.NextDouble() < share ? 1 : 0;
        return failures;
    }
}

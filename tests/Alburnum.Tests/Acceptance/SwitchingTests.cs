using Alburnum.Acceptance.Indexed;

namespace Alburnum.Tests.Acceptance;

public class SwitchingTests
{
    private static readonly SwitchingRules Rules = new(
        2,
        5,
        5,
        10,
        10,
        null,
        new(Standing.FromMemory, "test", "", "", "")
    );
    private static readonly InspectedLot Good = new(LotOutcome.Accepted);
    private static readonly InspectedLot Bad = new(LotOutcome.Rejected);
    private static readonly InspectedLot Agreed = new(LotOutcome.Accepted, IsReductionAgreed: true);

    private static SwitchingState After(params InspectedLot[] lots) => After(Rules, lots);

    private static SwitchingState After(SwitchingRules rules, params InspectedLot[] lots) =>
        lots.Aggregate(SwitchingState.Beginning, (state, lot) => Switching.After(state, lot, rules));

    [Fact]
    public void Two_rejections_in_five_lots_tighten()
    {
        Assert.Equal(Severity.Tightened, After(Bad, Good, Good, Good, Bad).Severity);
        Assert.Equal(Severity.Tightened, After(Bad, Bad).Severity);
        Assert.Equal(new RejectedAmongLast(2, 5), After(Bad, Good, Good, Good, Bad).Reason);
        Assert.Equal(Severity.Normal, After(Bad, Good, Good, Good, Good, Bad).Severity);
    }

    [Fact]
    public void Five_acceptances_end_tightened_inspection()
    {
        Assert.Equal(Severity.Tightened, After(Bad, Bad, Good, Good, Good, Good).Severity);
        Assert.Equal(Severity.Normal, After(Bad, Bad, Good, Good, Good, Good, Good).Severity);
        Assert.Equal(new AcceptedInARow(5), After(Bad, Bad, Good, Good, Good, Good, Good).Reason);
        Assert.Equal(Severity.Tightened, After(Bad, Bad, Good, Good, Bad, Good, Good, Good).Severity);
    }

    [Fact]
    public void Ten_acceptances_reduce_only_where_it_is_agreed()
    {
        InspectedLot[] nine = [.. Enumerable.Repeat(Good, 9)];

        Assert.Equal(Severity.Normal, After([.. nine, Good]).Severity);
        Assert.Equal(Severity.Reduced, After([.. nine, Agreed]).Severity);
        Assert.Equal(new ReductionAgreed(10), After([.. nine, Agreed]).Reason);
    }

    [Theory]
    [InlineData(LotOutcome.Rejected, true, typeof(RejectedOnReduced))]
    [InlineData(LotOutcome.AcceptedInGap, true, typeof(CountInGap))]
    [InlineData(LotOutcome.Accepted, false, typeof(ProductionIrregular))]
    public void Reduced_inspection_ends_on_a_rejection_a_gap_or_irregular_production(
        LotOutcome outcome,
        bool isSteady,
        Type reason
    )
    {
        var reduced = After([.. Enumerable.Repeat(Agreed, 10)]);
        var next = Switching.After(reduced, new(outcome, IsSteady: isSteady), Rules);

        Assert.Equal(Severity.Normal, next.Severity);
        Assert.IsType(reason, next.Reason);
    }

    [Fact]
    public void Ten_lots_on_tightened_inspection_stop_acceptance()
    {
        InspectedLot[] mixed = [Bad, Bad, Good, Good, Bad, Good, Good, Bad, Good, Good, Bad, Good];
        var stopped = After(mixed);

        Assert.True(stopped.IsStopped);
        Assert.Equal(new TightenedTooLong(10), stopped.Reason);
        Assert.Throws<InvalidOperationException>(() => Switching.After(stopped, Good, Rules));
        Assert.Equal(Severity.Tightened, Switching.BeginAgain.Severity);
    }

    [Fact]
    public void A_count_of_rejections_can_stop_acceptance_instead()
    {
        var rules = Rules with { TightenedToStop = null, RejectedToStop = 5 };
        var stopped = After(rules, Bad, Bad, Bad, Bad, Bad, Bad, Bad);

        Assert.True(stopped.IsStopped);
        Assert.Equal(new RejectedOnTightened(5), stopped.Reason);
    }

    [Fact]
    public void Rejections_on_tightened_inspection_are_counted_over_the_acceptances_between()
    {
        var rules = Rules with { TightenedToStop = null, RejectedToStop = 5 };
        InspectedLot[] four = [Bad, Bad, Bad, Good, Good, Bad, Good, Good, Good, Bad, Good, Good, Good, Good, Bad];

        Assert.False(After(rules, four).IsStopped);
        Assert.Equal(new RejectedOnTightened(5), After(rules, [.. four, Good, Bad]).Reason);
    }

    [Fact]
    public void An_acceptance_in_the_gap_counts_as_accepted_before_reduced_inspection()
    {
        InspectedLot gap = new(LotOutcome.AcceptedInGap, IsReductionAgreed: true);

        Assert.Equal(Severity.Reduced, After([.. Enumerable.Repeat(gap, 10)]).Severity);
    }
}

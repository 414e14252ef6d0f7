using Alburnum.Imaging.Outcomes;

namespace Alburnum.Imaging.Tests.Outcomes;

public class OutcomeTests
{
    private enum Reason
    {
        First,
        Second,
    }

    [Fact]
    public void The_first_reason_passes_on_and_no_later_step_is_taken()
    {
        var steps = 0;
        Outcome<int, Reason> Step(int value)
        {
            steps++;
            return value < 2 ? value + 1 : Reason.First;
        }

        var outcome = Step(0).Then(Step).Then(Step).Then(Step).Then(_ => (Outcome<string, Reason>)Reason.Second);

        Assert.False(outcome.Has(out _, out var reason));
        Assert.Equal((Reason.First, 3), (reason, steps));
    }

    [Fact]
    public void A_result_goes_through_every_step()
    {
        Outcome<int, Reason> start = 1;

        Assert.Equal("2", start.Then<int>(one => one + 1).Match(two => $"{two}", reason => $"{reason}"));
    }
}

using Alburnum.Acceptance.History;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Tests.Words;

public sealed class SignalWordsTests
{
    private static readonly Measure Depth = new(MeasureKind.Depth, "mean depth", "mm");
    private static readonly WatchRules Rules = WatchRules.Usual with { LowerLimit = 6 };
    private static readonly WatchState State = new()
    {
        Latest = 5.5,
        BaselineMean = 9.125,
        DriftFrom = 7.1,
    };

    [Theory]
    [InlineData(Signals.BelowLimit, "mean depth 5.5 mm is below the limit of 6 mm")]
    [InlineData(Signals.DriftDown, "the last six charges drift down by 1.6 mm in mean depth")]
    [InlineData(Signals.DriftUp, "the last six charges drift up by -1.6 mm in mean depth")]
    [InlineData(Signals.ShiftDown, "mean depth has shifted down from 9.13 mm (cumulative sum)")]
    [InlineData(Signals.ShiftUp, "mean depth has shifted up from 9.13 mm (cumulative sum)")]
    [InlineData(Signals.AverageLow, "the moving average of mean depth has fallen too far below 9.13 mm")]
    [InlineData(Signals.AverageHigh, "the moving average of mean depth has risen too far above 9.13 mm")]
    [InlineData(Signals.FarOut, "mean depth 5.5 mm lies beyond three standard deviations of 9.13 mm")]
    [InlineData(Signals.OneSided, "the last nine charges all lie on one side of the baseline in mean depth, 9.13 mm")]
    public void A_signal_is_said(Signals signal, string expected) =>
        Assert.Equal([expected], SignalWords.Current.Say(signal, Depth, State, Rules));

    [Fact]
    public void The_gravest_signal_is_said_first() =>
        Assert.StartsWith(
            "mean depth 5.5 mm is below",
            SignalWords.Current.Say(Signals.OneSided | Signals.BelowLimit, Depth, State, Rules)[0],
            StringComparison.Ordinal
        );

    [Fact]
    public void Counts_beyond_ten_are_written_in_digits() =>
        Assert.Equal(
            ["the last 14 charges drift down by 1.6 mm in mean depth"],
            SignalWords.Current.Say(Signals.DriftDown, Depth, State, Rules with { DriftLength = 14 })
        );
}

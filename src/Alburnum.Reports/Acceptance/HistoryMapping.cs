using Alburnum.Acceptance.History;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a plant's history down.</summary>
public static class HistoryMapping
{
    /// <summary>The history as a document.</summary>
    public static HistoryDocument Of(PlantHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return new()
        {
            Charges = history.Charges,
            RunLengths = history.Measures.Any(measure => measure.IsCharted)
                ? HistoryWords.Current.Say(history.RunLengths)
                : [],
            Measures = [.. history.Measures.Select(Measure)],
            Signals = [.. history.Signalled.SelectMany(Signals).Take(WatchPlant.SignalsKept)],
        };
    }

    /// <summary>A run chart with so few marks, neighbours taken together.</summary>
    /// <param name="marks">The chart, oldest first.</param>
    /// <param name="most">Most marks wanted, 1 or more.</param>
    public static IReadOnlyList<RunMark> Joined(IReadOnlyList<RunMark> marks, int most)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var perMark = Math.Max(1, (int)Math.Ceiling((double)marks.Count / most));
        return [.. marks.Chunk(perMark).Select(chunk => chunk.Aggregate((one, next) => one.With(next)))];
    }

    private static HistoryMeasure Measure(MeasureHistory watched) =>
        new()
        {
            Name = Wording.Current.Say(watched.Measure),
            Unit = watched.Measure.Unit,
            Charges = watched.State.Count,
            Mean = watched.State.Mean,
            StandardDeviation = watched.State.StandardDeviation,
            Least = watched.State.Least,
            Greatest = watched.State.Greatest,
            BaselineMean = watched.State.BaselineMean,
            BaselineSpread = watched.State.BaselineSpread,
            LowerLimit = watched.Rules.LowerLimit,
            BelowLimit = watched.State.BelowLimit,
            Capability = watched.Capability,
            Signals = watched.Signalled,
            Chart = watched.Chart,
        };

    private static IEnumerable<HistorySignal> Signals(SignalledCharge charge) =>
        SignalWords
            .Current.Say(charge.Signals, charge.Measure, charge.State, charge.Rules)
            .Select(said => new HistorySignal { Charge = charge.Charge, Said = said });
}

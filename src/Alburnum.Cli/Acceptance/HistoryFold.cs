using Alburnum.Acceptance.History;
using Alburnum.Records.Tables;
using Alburnum.Reports.Words;

namespace Alburnum.Cli.Acceptance;

/// <summary>Follows a plant's charges through the watches, keeping only what is shown.</summary>
internal static class HistoryFold
{
    public const int SignalsKept = 200;

    public static HistoryDocument Follow(ChargeTable table, IReadOnlyList<WatchRules> rules, CancellationToken stop)
    {
        var measures = table.Measures;
        var states = new WatchState[measures.Count];
        var signalled = new long[measures.Count];
        RunChart[] charts = [.. measures.Select(_ => new RunChart())];
        Queue<(string Charge, int Measure, Signals Signals, WatchState State)> latest = new();
        long charges = 0;
        foreach (var charge in table.Charges(stop))
        {
            charges++;
            for (var i = 0; i < measures.Count; i++)
            {
                if (charge.Values[i] is not { } value)
                    continue;
                (states[i], var signals) = Watch.Next(states[i], value, rules[i]);
                charts[i].Add(value, signals != Signals.None);
                if (signals == Signals.None)
                    continue;
                signalled[i]++;
                latest.Enqueue((charge.Number, i, signals, states[i]));
                if (latest.Count > SignalsKept)
                    latest.Dequeue();
            }
        }
        return new(
            charges,
            RunLengths(rules[0]),
            [.. measures.Select((measure, i) => Of(measure, states[i], rules[i], signalled[i], charts[i]))],
            [
                .. latest
                    .Reverse()
                    .SelectMany(entry =>
                        SignalWords
                            .English.Say(entry.Signals, measures[entry.Measure], entry.State, rules[entry.Measure])
                            .Select(said => new HistorySignal(entry.Charge, said))
                    )
                    .Take(SignalsKept),
            ]
        );
    }

    private static HistoryMeasure Of(
        Measure measure,
        WatchState state,
        WatchRules rules,
        long signals,
        RunChart chart
    ) =>
        new(
            measure.Name,
            measure.Unit,
            state.Count,
            state.Mean,
            state.StandardDeviation,
            state.Least,
            state.Greatest,
            state.BaselineMean,
            state.BaselineSpread,
            rules.LowerLimit,
            state.BelowLimit,
            rules.LowerLimit is { } limit && state is { Count: > 1, StandardDeviation: > 0 }
                ? Capability.Of(state.Count, state.Mean, state.StandardDeviation, limit)
                : null,
            signals,
            chart.Marks
        );

    private static string[] RunLengths(WatchRules rules) =>
        [
            $"Moving average (EWMA, weight {Options.Digits(rules.Ewma.Lambda)}): a false signal in about "
                + $"{AverageRunLength.Of(rules.Ewma, 0):0} charges; a shift of one standard deviation is found after about "
                + $"{AverageRunLength.Of(rules.Ewma, 1):0}.",
            $"Cumulative sum (CUSUM, allowance {Options.Digits(rules.Cusum.Allowance)}, interval {Options.Digits(rules.Cusum.Interval)}): "
                + $"a false signal in about {AverageRunLength.Of(rules.Cusum, 0):0} charges; such a shift is found after about "
                + $"{AverageRunLength.Of(rules.Cusum, 1):0}.",
        ];
}

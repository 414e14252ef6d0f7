using Alburnum.Acceptance.History;

namespace Alburnum.Reports.Words;

/// <summary>What a charge signals, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class SignalWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static SignalWords Current => new(Wording.Current);

    /// <summary>One clause for each signal of a charge, the gravest first.</summary>
    /// <param name="signals">What was signalled.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="state">Where the watch stands after the charge.</param>
    /// <param name="rules">How it is watched.</param>
    public IReadOnlyList<string> Say(Signals signals, Measure measure, in WatchState state, WatchRules rules)
    {
        List<string> words = [];
        var (latest, baseline) = (Value(state.Latest), Value(state.BaselineMean));
        void Add(Signals signal, string key, params ReadOnlySpan<(string, string)> values)
        {
            if (signals.HasFlag(signal))
                words.Add(wording.Say(key, [("measure", wording.Say(measure)), .. values]));
        }
        Add(Signals.BelowLimit, "signals.below-limit", ("latest", latest), ("limit", Value(rules.LowerLimit ?? 0)));
        Add(
            Signals.DriftDown,
            "signals.drift-down",
            ("charges", wording.Number(rules.DriftLength)),
            ("drift", Value(state.DriftFrom - state.Latest))
        );
        Add(
            Signals.DriftUp,
            "signals.drift-up",
            ("charges", wording.Number(rules.DriftLength)),
            ("drift", Value(state.Latest - state.DriftFrom))
        );
        Add(Signals.ShiftDown, "signals.shift-down", ("baseline", baseline));
        Add(Signals.ShiftUp, "signals.shift-up", ("baseline", baseline));
        Add(Signals.AverageLow, "signals.average-low", ("baseline", baseline));
        Add(Signals.AverageHigh, "signals.average-high", ("baseline", baseline));
        Add(Signals.FarOut, "signals.far-out", ("latest", latest), ("baseline", baseline));
        Add(
            Signals.OneSided,
            "signals.one-sided",
            ("charges", wording.Number(rules.SideLength)),
            ("baseline", baseline)
        );
        return words;

        string Value(double value) => $"{Figures.Digits(value)} {measure.Unit}";
    }
}

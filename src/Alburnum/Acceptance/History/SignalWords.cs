using System.Globalization;

namespace Alburnum.Acceptance.History;

/// <summary>A measure of a charge: how it is called and in which unit it is given.</summary>
/// <param name="Name">Name in words, for instance "mean depth".</param>
/// <param name="Unit">Unit, for instance "mm".</param>
public sealed record Measure(string Name, string Unit);

/// <summary>Signals in words.</summary>
public static class SignalWords
{
    private static readonly string[] Numbers =
    [
        "no",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
    ];

    /// <summary>One sentence for each signal of a charge, the gravest first.</summary>
    /// <param name="signals">What was signalled.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="state">Where the watch stands after the charge.</param>
    /// <param name="rules">How it is watched.</param>
    public static IReadOnlyList<string> InWords(Signals signals, Measure measure, in WatchState state, WatchRules rules)
    {
        List<string> words = [];
        string Say(double value) => $"{value.ToString("0.##", CultureInfo.InvariantCulture)} {measure.Unit}";
        if (signals.HasFlag(Signals.BelowLimit))
            words.Add($"{measure.Name} {Say(state.Latest)} is below the limit of {Say(rules.LowerLimit ?? 0)}");
        if (signals.HasFlag(Signals.DriftDown))
            words.Add(
                $"the last {Count(rules.DriftLength)} charges drift down by {Say(state.DriftFrom - state.Latest)} in {measure.Name}"
            );
        if (signals.HasFlag(Signals.DriftUp))
            words.Add(
                $"the last {Count(rules.DriftLength)} charges drift up by {Say(state.Latest - state.DriftFrom)} in {measure.Name}"
            );
        if (signals.HasFlag(Signals.ShiftDown))
            words.Add($"{measure.Name} has shifted down from {Say(state.BaselineMean)} (cumulative sum)");
        if (signals.HasFlag(Signals.ShiftUp))
            words.Add($"{measure.Name} has shifted up from {Say(state.BaselineMean)} (cumulative sum)");
        if (signals.HasFlag(Signals.AverageLow))
            words.Add($"the moving average of {measure.Name} has fallen too far below {Say(state.BaselineMean)}");
        if (signals.HasFlag(Signals.AverageHigh))
            words.Add($"the moving average of {measure.Name} has risen too far above {Say(state.BaselineMean)}");
        if (signals.HasFlag(Signals.FarOut))
            words.Add(
                $"{measure.Name} {Say(state.Latest)} lies beyond three standard deviations of {Say(state.BaselineMean)}"
            );
        if (signals.HasFlag(Signals.OneSided))
            words.Add(
                $"the last {Count(rules.SideLength)} charges all lie on one side of the baseline in {measure.Name}, {Say(state.BaselineMean)}"
            );
        return words;
    }

    private static string Count(int count) =>
        count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture);
}

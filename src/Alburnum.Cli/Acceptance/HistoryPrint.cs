using Alburnum.Acceptance.History;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Acceptance;

/// <summary>A plant's history on the terminal.</summary>
internal static class HistoryPrint
{
    private const int ChargesShown = 8;
    private const int ChartCells = 60;
    private const string Heights = "▁▂▃▄▅▆▇█";

    public static void Print(IAnsiConsole console, HistoryDocument history)
    {
        console.WriteLine();
        console.WriteLine(HistoryWords.Current.Charges(history.Charges));
        foreach (var measure in history.Measures)
            Print(console, measure);
        console.WriteLine();
        console.WriteLine(HistoryWords.Current.Signals(history.Signals.Count > 0, history.RunLengths.Count > 0));
        var byCharge = history
            .Signals.GroupBy(signal => signal.Charge, signal => signal.Said, StringComparer.Ordinal)
            .ToList();
        foreach (var charge in byCharge.Take(ChargesShown))
            console.WriteLine("  " + HistoryWords.Current.Charge(charge.Key, charge));
        if (byCharge.Count > ChargesShown)
            console.WriteLine("  " + HistoryWords.Current.Earlier(Options.Json));
        console.WriteLine();
        foreach (var length in history.RunLengths)
            console.WriteLine(length);
    }

    private static void Print(IAnsiConsole console, HistoryMeasure measure)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{measure.Name}[/], {measure.Unit}");
        if (measure.Charges == 0)
        {
            console.WriteLine(HistoryWords.Current.NoValues());
            return;
        }
        console.WriteLine(Line(measure.Chart));
        console.WriteLine(
            HistoryWords.Current.Spread(measure.Mean, measure.StandardDeviation, measure.Least, measure.Greatest)
        );
        console.WriteLine(HistoryWords.Current.Baseline(measure.BaselineMean, measure.BaselineSpread, measure.Signals));
        if (measure.LowerLimit is { } limit)
            console.WriteLine(HistoryWords.Current.Limit(limit, measure.BelowLimit, measure.Capability));
    }

    /// <summary>The run chart as one line of blocks, least to greatest mean of neighbouring charges.</summary>
    private static string Line(IReadOnlyList<RunMark> marks)
    {
        var means = HistoryMapping.Joined(marks, ChartCells).Select(mark => mark.Mean).ToList();
        double low = means.Min(),
            high = means.Max();
        return string.Concat(
            means.Select(mean => Heights[high > low ? (int)Math.Min(7, 8 * (mean - low) / (high - low)) : 3])
        );
    }
}

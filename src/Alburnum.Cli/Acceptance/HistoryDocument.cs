using Alburnum.Acceptance.History;

namespace Alburnum.Cli.Acceptance;

/// <summary>A plant's charges at a glance. Fields as in docs/json/history.md.</summary>
/// <param name="Charges">Charges read.</param>
/// <param name="RunLengths">How rarely the charts signal falsely, one sentence each.</param>
/// <param name="Measures">Each measure.</param>
/// <param name="Signals">The latest signals, newest first.</param>
internal sealed record HistoryDocument(
    long Charges,
    IReadOnlyList<string> RunLengths,
    IReadOnlyList<HistoryMeasure> Measures,
    IReadOnlyList<HistorySignal> Signals
);

/// <summary>One measure over all charges.</summary>
internal sealed record HistoryMeasure(
    string Name,
    string Unit,
    long Charges,
    double Mean,
    double StandardDeviation,
    double Least,
    double Greatest,
    double BaselineMean,
    double BaselineSpread,
    double? LowerLimit,
    long BelowLimit,
    Capability? Capability,
    long Signals,
    IReadOnlyList<RunMark> Chart
);

/// <summary>One signal.</summary>
/// <param name="Charge">Charge with which it came.</param>
/// <param name="Said">What it says.</param>
internal sealed record HistorySignal(string Charge, string Said);

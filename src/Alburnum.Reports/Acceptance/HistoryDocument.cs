using Alburnum.Acceptance.History;

namespace Alburnum.Reports.Acceptance;

/// <summary>A plant's charges at a glance. Fields as in docs/json/history.md.</summary>
public sealed record HistoryDocument
{
    /// <summary>Charges read.</summary>
    public required long Charges { get; init; }

    /// <summary>How rarely the charts signal falsely, one sentence each; empty where no chart ran.</summary>
    public required IReadOnlyList<string> RunLengths { get; init; }

    /// <summary>Each measure.</summary>
    public required IReadOnlyList<HistoryMeasure> Measures { get; init; }

    /// <summary>The latest signals, newest first.</summary>
    public required IReadOnlyList<HistorySignal> Signals { get; init; }
}

/// <summary>One measure over all charges, in its unit.</summary>
public sealed record HistoryMeasure
{
    /// <summary>Name in words.</summary>
    public required string Name { get; init; }

    /// <summary>Unit of every value.</summary>
    public required string Unit { get; init; }

    /// <summary>Charges with a value.</summary>
    public required long Charges { get; init; }

    /// <summary>Mean of all charges.</summary>
    public required double Mean { get; init; }

    /// <summary>Their standard deviation.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>Least value.</summary>
    public required double Least { get; init; }

    /// <summary>Greatest value.</summary>
    public required double Greatest { get; init; }

    /// <summary>Mean of the baseline; 0 until it is complete.</summary>
    public required double BaselineMean { get; init; }

    /// <summary>Spread of the baseline; 0 until it is complete.</summary>
    public required double BaselineSpread { get; init; }

    /// <summary>Lower limit; null where none was stated.</summary>
    public double? LowerLimit { get; init; }

    /// <summary>Charges below it.</summary>
    public required long BelowLimit { get; init; }

    /// <summary>How far the mean lies above the limit; null without one.</summary>
    public Capability? Capability { get; init; }

    /// <summary>Charges that signalled.</summary>
    public required long Signals { get; init; }

    /// <summary>The run chart.</summary>
    public required IReadOnlyList<RunMark> Chart { get; init; }
}

/// <summary>One signal.</summary>
public sealed record HistorySignal
{
    /// <summary>Charge with which it came.</summary>
    public required string Charge { get; init; }

    /// <summary>What it says.</summary>
    public required string Said { get; init; }
}

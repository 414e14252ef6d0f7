using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Tables;

namespace Alburnum.Workflows.Acceptance;

/// <summary>How a plant's charges are to be watched.</summary>
/// <param name="BaselineCharges">Charges at the start that fix mean and spread, 5 or more.</param>
/// <param name="LeastDepthMm">Lower limit of mean and minimum depth, mm; null where none is stated.</param>
/// <param name="RequiredKgPerM3">Lower limit of retention, kg/m³; null where none is stated.</param>
public sealed record WatchRequest(int BaselineCharges, double? LeastDepthMm, double? RequiredKgPerM3);

/// <summary>A plant's charges, followed through their charts.</summary>
public sealed record PlantHistory
{
    /// <summary>Charges read.</summary>
    public required long Charges { get; init; }

    /// <summary>Charges until a chart signals, on average.</summary>
    public required RunLengths RunLengths { get; init; }

    /// <summary>Each measure.</summary>
    public required IReadOnlyList<MeasureHistory> Measures { get; init; }

    /// <summary>The latest charges with signals, newest first.</summary>
    public required IReadOnlyList<SignalledCharge> Signalled { get; init; }
}

/// <summary>How rarely the charts signal falsely, and how soon rightly, in charges on average.</summary>
/// <param name="Rules">How the measures are watched.</param>
/// <param name="EwmaFalse">Moving average: charges until a false signal.</param>
/// <param name="EwmaFound">Moving average: charges until a shift of one standard deviation is found.</param>
/// <param name="CusumFalse">Cumulative sum: charges until a false signal.</param>
/// <param name="CusumFound">Cumulative sum: charges until such a shift is found.</param>
public sealed record RunLengths(
    WatchRules Rules,
    double EwmaFalse,
    double EwmaFound,
    double CusumFalse,
    double CusumFound
);

/// <summary>One measure over all charges.</summary>
/// <param name="Measure">The measure.</param>
/// <param name="State">Where its watch stands after the last charge.</param>
/// <param name="Rules">How it is watched.</param>
/// <param name="Signalled">Charges that signalled.</param>
/// <param name="Capability">How far it lies above its limit; null without a limit or a spread.</param>
/// <param name="Chart">Its run chart.</param>
public sealed record MeasureHistory(
    Measure Measure,
    WatchState State,
    WatchRules Rules,
    long Signalled,
    Capability? Capability,
    IReadOnlyList<RunMark> Chart
)
{
    /// <summary>Whether averages, sums and runs are watched: not before a baseline with a spread is complete.</summary>
    public bool IsCharted => State.BaselineSpread > 0;
}

/// <summary>One charge's signals in one measure.</summary>
/// <param name="Charge">Number of the charge.</param>
/// <param name="Measure">The measure.</param>
/// <param name="Signals">What was signalled.</param>
/// <param name="State">Where the watch stood after the charge.</param>
/// <param name="Rules">How the measure is watched.</param>
public sealed record SignalledCharge(
    string Charge,
    Measure Measure,
    Signals Signals,
    WatchState State,
    WatchRules Rules
);

/// <summary>A plant's lots under the switching rules.</summary>
/// <param name="Sequence">By what the lots were sampled.</param>
/// <param name="Steps">Each lot, oldest first; one or more.</param>
public sealed record PlantLots(LotSequence Sequence, IReadOnlyList<LotStep> Steps)
{
    /// <summary>Where the plant stands after the last lot.</summary>
    public SwitchingState Standing => Steps[^1].After;

    /// <summary>Lots accepted.</summary>
    public int Accepted => Steps.Count(step => step.Outcome != LotOutcome.Rejected);
}

/// <summary>Watches a plant over its charges, or follows its lots through the switching rules.</summary>
public static class WatchPlant
{
    /// <summary>Charges with signals that are kept.</summary>
    public const int SignalsKept = 200;

    /// <summary>Follows charges; keeps only what is shown.</summary>
    /// <param name="table">The charges, oldest first.</param>
    /// <param name="request">How to watch them.</param>
    /// <param name="stop">Stops between charges.</param>
    /// <exception cref="InputRefusedException">A row is wrong; carries every problem found.</exception>
    public static PlantHistory Charges(ChargeTable table, WatchRequest request, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(table);
        Followed[] measures = [.. table.Measures.Select(measure => new Followed(measure, Rules(measure, request)))];
        Queue<SignalledCharge> latest = new();
        long charges = 0;
        foreach (var charge in table.Charges(stop))
        {
            charges++;
            for (var i = 0; i < measures.Length; i++)
            {
                if (
                    charge.Values[i] is not { } value
                    || measures[i].Next(value) is not (not Signals.None and var signals)
                )
                    continue;
                var (measure, rules) = (measures[i].Measure, measures[i].Rules);
                latest.Enqueue(new(charge.Number, measure, signals, measures[i].State, rules));
                if (latest.Count > SignalsKept)
                    latest.Dequeue();
            }
        }
        return new()
        {
            Charges = charges,
            RunLengths = LengthsOf(measures[0].Rules),
            Measures = [.. measures.Select(measure => measure.Sum())],
            Signalled = [.. latest.Reverse()],
        };
    }

    /// <summary>Follows lots.</summary>
    /// <param name="table">The lots, oldest first.</param>
    /// <param name="sequence">Tables, switching rules, level and AQL.</param>
    /// <exception cref="InputRefusedException">A row is wrong, or does not fit the plan in force; carries every problem found.</exception>
    public static PlantLots Lots(Table table, LotSequence sequence) => new(sequence, LotTable.Follow(table, sequence));

    private static WatchRules Rules(Measure measure, WatchRequest request) =>
        WatchRules.Usual with
        {
            BaselineCharges = request.BaselineCharges,
            LowerLimit = measure.Kind switch
            {
                MeasureKind.Depth => request.LeastDepthMm,
                MeasureKind.Retention => request.RequiredKgPerM3,
                _ => null,
            },
        };

    private static RunLengths LengthsOf(WatchRules rules) =>
        new(
            rules,
            AverageRunLength.Of(rules.Ewma, 0),
            AverageRunLength.Of(rules.Ewma, 1),
            AverageRunLength.Of(rules.Cusum, 0),
            AverageRunLength.Of(rules.Cusum, 1)
        );

    /// <summary>One measure while its charges come.</summary>
    private sealed class Followed(Measure measure, WatchRules rules)
    {
        private readonly RunChart _chart = new();
        private long _signalled;

        public Measure Measure => measure;

        public WatchRules Rules => rules;

        public WatchState State { get; private set; }

        public Signals Next(double value)
        {
            (State, var signals) = Watch.Next(State, value, rules);
            _chart.Add(value, signals != Signals.None);
            _signalled += signals != Signals.None ? 1 : 0;
            return signals;
        }

        public MeasureHistory Sum() =>
            new(
                measure,
                State,
                rules,
                _signalled,
                rules.LowerLimit is { } limit && State is { Count: > 1, StandardDeviation: > 0 }
                    ? Capability.Of(State.Count, State.Mean, State.StandardDeviation, limit)
                    : null,
                _chart.Marks
            );
    }
}

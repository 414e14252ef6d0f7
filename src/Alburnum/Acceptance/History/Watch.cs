namespace Alburnum.Acceptance.History;

/// <summary>What a new charge gives reason to say.</summary>
[Flags]
public enum Signals
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The charge lies beyond three standard deviations of the mean.</summary>
    FarOut = 1,

    /// <summary>The moving average rose above its limit.</summary>
    AverageHigh = 2,

    /// <summary>The moving average fell below its limit.</summary>
    AverageLow = 256,

    /// <summary>The upward sum passed its interval.</summary>
    ShiftUp = 4,

    /// <summary>The downward sum passed its interval.</summary>
    ShiftDown = 8,

    /// <summary>Each of the last charges lay above the one before.</summary>
    DriftUp = 16,

    /// <summary>Each of the last charges lay below the one before.</summary>
    DriftDown = 32,

    /// <summary>The last charges all lie on one side of the mean.</summary>
    OneSided = 64,

    /// <summary>The charge lies below the lower limit that was stated.</summary>
    BelowLimit = 128,
}

/// <summary>How a measure is watched.</summary>
/// <param name="BaselineCharges">Charges that fix mean and spread before anything is signalled, 5 or more.</param>
/// <param name="Ewma">The moving average.</param>
/// <param name="Cusum">The sums.</param>
/// <param name="DriftLength">Charges in a drift, each beyond the one before, 3 or more.</param>
/// <param name="SideLength">Charges in a run on one side of the mean, 5 or more.</param>
/// <param name="LowerLimit">Least value that conforms; null where none is stated.</param>
public sealed record WatchRules(
    int BaselineCharges,
    EwmaChart Ewma,
    CusumChart Cusum,
    int DriftLength,
    int SideLength,
    double? LowerLimit
)
{
    /// <summary>Twenty-five charges of baseline, the usual charts, drifts of six and runs of nine.</summary>
    public static WatchRules Usual { get; } = new(25, EwmaChart.Usual, CusumChart.Usual, 6, 9, null);
}

/// <summary>Where a watch stands: all that need be kept of any number of charges.</summary>
public readonly record struct WatchState
{
    /// <summary>Charges seen.</summary>
    public long Count { get; init; }

    /// <summary>Mean of all charges.</summary>
    public double Mean { get; init; }

    /// <summary>Sum of squares about the mean.</summary>
    public double SquareSum { get; init; }

    /// <summary>Least value.</summary>
    public double Least { get; init; }

    /// <summary>Greatest value.</summary>
    public double Greatest { get; init; }

    /// <summary>Latest value.</summary>
    public double Latest { get; init; }

    /// <summary>Mean of the baseline; 0 until it is complete.</summary>
    public double BaselineMean { get; init; }

    /// <summary>Spread of the baseline, from the mean step between neighbours; 0 until it is complete.</summary>
    public double BaselineSpread { get; init; }

    /// <summary>Sum of the steps between neighbours during the baseline.</summary>
    public double StepSum { get; init; }

    /// <summary>Moving average of standardised charges.</summary>
    public double Average { get; init; }

    /// <summary>Upward sum.</summary>
    public double Up { get; init; }

    /// <summary>Downward sum.</summary>
    public double Down { get; init; }

    /// <summary>Charges in the present drift, negative where it falls.</summary>
    public int Drift { get; init; }

    /// <summary>Value at which the present drift began.</summary>
    public double DriftFrom { get; init; }

    /// <summary>Charges on one side of the baseline mean, negative below.</summary>
    public int Side { get; init; }

    /// <summary>Charges that lay below the stated limit.</summary>
    public long BelowLimit { get; init; }

    /// <summary>Standard deviation of all charges; 0 with fewer than two.</summary>
    public double StandardDeviation => Count > 1 ? Math.Sqrt(SquareSum / (Count - 1)) : 0;
}

/// <summary>Watches one measure over a plant's charges, one charge at a time.</summary>
public static class Watch
{
    /// <summary>Mean step between neighbours of a normal series over its standard deviation, d₂ for two.</summary>
    private static readonly double StepOverSpread = 2 / Math.Sqrt(Math.PI);

    private const double FarOutFrom = 3;

    /// <summary>Where the watch stands after one more charge, and what that charge gives reason to say.</summary>
    /// <remarks>A chart that signalled starts again at its centre; a drift or run starts again too, so that one cause is said once.</remarks>
    /// <param name="before">Where it stood.</param>
    /// <param name="value">The charge's value, finite, in one unit throughout.</param>
    /// <param name="rules">How the measure is watched.</param>
    public static (WatchState State, Signals Signals) Next(in WatchState before, double value, WatchRules rules)
    {
        Require.InRange(value, -1e12, 1e12, "");
        var state = Counted(before, value, rules);
        var signals = value < rules.LowerLimit ? Signals.BelowLimit : Signals.None;
        (state, signals) = Drifted(before, state, value, rules, signals);
        if (state.Count <= rules.BaselineCharges || state.BaselineSpread <= 0)
            return (state, signals);

        var standardised = (value - state.BaselineMean) / state.BaselineSpread;
        if (Math.Abs(standardised) > FarOutFrom)
            signals |= Signals.FarOut;
        var average = rules.Ewma.Next(state.Average, standardised);
        if (Math.Abs(average) > rules.Ewma.Limit)
            (average, signals) = (0, signals | (average > 0 ? Signals.AverageHigh : Signals.AverageLow));
        var (up, down) = rules.Cusum.Next(state.Up, state.Down, standardised);
        if (up > rules.Cusum.Interval)
            (up, signals) = (0, signals | Signals.ShiftUp);
        if (down > rules.Cusum.Interval)
            (down, signals) = (0, signals | Signals.ShiftDown);
        var side =
            standardised > 0 ? Math.Max(0, state.Side) + 1
            : standardised < 0 ? Math.Min(0, state.Side) - 1
            : 0;
        if (Math.Abs(side) >= rules.SideLength)
            (side, signals) = (0, signals | Signals.OneSided);
        return (state with { Average = average, Up = up, Down = down, Side = side }, signals);
    }

    private static WatchState Counted(in WatchState before, double value, WatchRules rules)
    {
        var count = before.Count + 1;
        var delta = value - before.Mean;
        var mean = before.Mean + delta / count;
        var steps =
            before.StepSum + (before.Count > 0 && count <= rules.BaselineCharges ? Math.Abs(value - before.Latest) : 0);
        var isComplete = count == rules.BaselineCharges;
        return before with
        {
            Count = count,
            Mean = mean,
            SquareSum = before.SquareSum + delta * (value - mean),
            Least = before.Count == 0 ? value : Math.Min(before.Least, value),
            Greatest = before.Count == 0 ? value : Math.Max(before.Greatest, value),
            Latest = value,
            StepSum = steps,
            BaselineMean = isComplete ? mean : before.BaselineMean,
            BaselineSpread = isComplete ? steps / (count - 1) / StepOverSpread : before.BaselineSpread,
            BelowLimit = before.BelowLimit + (value < rules.LowerLimit ? 1 : 0),
        };
    }

    private static (WatchState, Signals) Drifted(
        in WatchState before,
        in WatchState state,
        double value,
        WatchRules rules,
        Signals signals
    )
    {
        // The first charge of a drift is its start, so a drift of n charges has n − 1 steps.
        var direction = before.Count == 0 ? 0 : value.CompareTo(before.Latest);
        var drift =
            direction == 0 ? 0
            : Math.Sign(before.Drift) == direction ? before.Drift + direction
            : 2 * direction;
        var from = Math.Abs(drift) > 2 ? before.DriftFrom : before.Latest;
        if (Math.Abs(drift) == rules.DriftLength)
            signals |= drift > 0 ? Signals.DriftUp : Signals.DriftDown;
        return (state with { Drift = drift, DriftFrom = from }, signals);
    }
}

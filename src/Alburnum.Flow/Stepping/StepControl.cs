namespace Alburnum.Flow.Stepping;

/// <summary>How long the time steps may be and how closely each is solved.</summary>
public sealed record StepControl
{
    // A rise of the air's pressure counts as this share of what the voids take: it is settled more by storage than by the front.
    private const double PressureWeight = 0.1;

    // A front in wood that hardly lets it in moves little of the voids: a step may add this share of what has come in so far, ...
    private const double ShareOfGain = 0.2;

    // ... but the start of a front, where everything is new, would stand still; there the steps grow by this at least.
    private const double SteadyGrowth = 1.4;
    private const double GreatestShrink = 0.3;

    /// <summary>Checks every limit.</summary>
    /// <param name="firstSeconds">First step after the contact changes, s. 1e-9 to 1e6.</param>
    /// <param name="growth">Greatest ratio of one step to the one before, 1 to 3. Smaller is finer.</param>
    /// <param name="greatestSeconds">Longest step, s.</param>
    /// <param name="cellTolerance">Share of a cell's voids by which it may stay out of balance, carried into the next step. 1e-14 to 1e-2.</param>
    /// <param name="greatestSteps">Steps allowed, 1 to 1e6.</param>
    /// <param name="greatestChange">
    /// Share of the voids that a step is meant to fill or empty at most, 1e-4 to 1; 1 leaves the steps to the growth alone.
    /// </param>
    public StepControl(
        double firstSeconds = 1,
        double growth = 1.3,
        double greatestSeconds = 1e9,
        double cellTolerance = 1e-4,
        int greatestSteps = 20_000,
        double greatestChange = 1
    )
    {
        FirstSeconds = Require.InRange(firstSeconds, 1e-9, 1e6, "s");
        Growth = Require.InRange(growth, 1, 3, "(ratio)");
        GreatestSeconds = Require.InRange(greatestSeconds, 1e-9, 1e12, "s");
        CellTolerance = Require.InRange(cellTolerance, 1e-14, 1e-2, "(share)");
        GreatestSteps = Require.InRange(greatestSteps, 1, 1_000_000, "steps");
        GreatestChange = Require.InRange(greatestChange, 1e-4, 1, "(share)");
    }

    /// <summary>What predictions use.</summary>
    public static StepControl Usual { get; } = new(growth: 3, cellTolerance: 1e-3, greatestChange: 0.05);

    /// <summary>First step after the contact changes, s.</summary>
    public double FirstSeconds { get; }

    /// <summary>Greatest ratio of one step to the one before.</summary>
    public double Growth { get; }

    /// <summary>Longest step, s.</summary>
    public double GreatestSeconds { get; }

    /// <summary>Share of a cell's voids by which it may stay out of balance.</summary>
    public double CellTolerance { get; }

    /// <summary>Steps allowed.</summary>
    public int GreatestSteps { get; }

    /// <summary>Share of the voids that a step is meant to fill or empty at most.</summary>
    public double GreatestChange { get; }

    /// <summary>Length of the step after one that was solved, s.</summary>
    /// <param name="seconds">Its length, s.</param>
    /// <param name="moved">What it moved.</param>
    internal double Next(double seconds, StepChange moved)
    {
        if (GreatestChange == 1)
            return seconds * Growth;
        var change = Math.Max(moved.Liquid, PressureWeight * moved.Pressure);
        var byChange = change == 0 ? Growth : Math.Clamp(GreatestChange / change, GreatestShrink, Growth);
        var byGain =
            moved.Liquid == 0
                ? Growth
                : Math.Clamp(ShareOfGain * moved.Gained / moved.Liquid, Math.Min(SteadyGrowth, Growth), Growth);
        return seconds * Math.Min(byChange, byGain);
    }
}

/// <summary>What a step moved, as shares of the voids or, for pressure, of itself; means over the wood.</summary>
/// <param name="Liquid">Saturation, up or down.</param>
/// <param name="Pressure">The air's pressure, up or down.</param>
/// <param name="Gained">Liquid that has come in since the start.</param>
internal readonly record struct StepChange(double Liquid, double Pressure, double Gained);

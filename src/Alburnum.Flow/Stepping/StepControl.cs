namespace Alburnum.Flow.Stepping;

/// <summary>How long the time steps may be and how closely each is solved.</summary>
public sealed record StepControl
{
    // The next step aims at this share of the length that would just do: few are then taken twice.
    private const double Margin = 0.8;
    private const double GreatestShrink = 0.2;

    // The error of steps of one length is taken to grow or shrink on at most so much.
    private const double GreatestTrend = 4;

    // Air is wanted less closely than uptake.
    private const double AirOverUptake = 15;

    /// <summary>Checks every limit.</summary>
    /// <param name="firstSeconds">First step after the contact changes, s. 1e-9 to 1e6.</param>
    /// <param name="growth">Greatest ratio of one step to the one before, 1 to 3. Smaller is finer.</param>
    /// <param name="greatestSeconds">Longest step, s.</param>
    /// <param name="cellTolerance">Share of a cell's voids by which it may stay out of balance, carried into the next step. 1e-14 to 1e-2.</param>
    /// <param name="greatestSteps">Steps allowed, 1 to 1e6.</param>
    /// <param name="uptakeError">
    /// Share of the uptake by which a step and its two halves may differ, 1e-8 to 1; 1 leaves the steps to the growth alone.
    /// What is left after the two are extrapolated is less.
    /// </param>
    public StepControl(
        double firstSeconds = 1,
        double growth = 1.3,
        double greatestSeconds = 1e9,
        double cellTolerance = 1e-4,
        int greatestSteps = 20_000,
        double uptakeError = 1
    )
    {
        FirstSeconds = Require.InRange(firstSeconds, 1e-9, 1e6, "s");
        Growth = Require.InRange(growth, 1, 3, "(ratio)");
        GreatestSeconds = Require.InRange(greatestSeconds, 1e-9, 1e12, "s");
        CellTolerance = Require.InRange(cellTolerance, 1e-14, 1e-2, "(share)");
        GreatestSteps = Require.InRange(greatestSteps, 1, 1_000_000, "steps");
        UptakeError = Require.InRange(uptakeError, 1e-8, 1, "(share)");
    }

    /// <summary>What the prediction of a piece uses: less than 0.1 % of the uptake and of the air in the mean (docs/science/flow.md).</summary>
    public static StepControl Usual { get; } = new(growth: 3, cellTolerance: 1e-3, uptakeError: 4e-4);

    /// <summary>What single ways use, of which thousands of answers are read, and incised cells, where they move no depth by 0.02 mm but where two fronts have just met: about 0.25 % of the uptake. Beside <see cref="Usual"/> it tells of the error of the steps.</summary>
    public static StepControl Rough { get; } = new(growth: 3, cellTolerance: 1e-3, uptakeError: 1.6e-3);

    /// <summary>Steps that only show what fewer would change.</summary>
    internal static StepControl Roughest { get; } = new(growth: 3, cellTolerance: 1e-3, uptakeError: 6.4e-3);

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

    /// <summary>Share of the uptake by which a step and its two halves may differ.</summary>
    public double UptakeError { get; }

    /// <summary>Share of the air held by which a step and its two halves may differ.</summary>
    public double AirError => Math.Min(1, AirOverUptake * UptakeError);

    /// <summary>How many times what is allowed a step is off; nothing where the steps are left to the growth alone.</summary>
    /// <param name="liquidShare">What a step and its halves differ by, as a share of the uptake.</param>
    /// <param name="airShare">The same of the air held.</param>
    internal double Excess(double liquidShare, double airShare) =>
        UptakeError == 1 ? 0 : Math.Max(liquidShare / UptakeError, airShare / AirError);

    /// <summary>How many times as long the next step is to be: the difference of a step and its halves goes as its length squared.</summary>
    /// <param name="excess">How many times what is allowed the last one was off.</param>
    /// <param name="trend">How many times as far off as one before it of its length; it is taken to go on so (Gustafsson, ACM Trans. Math. Softw. 20, 1994).</param>
    internal double Change(double excess, double trend = 1) =>
        Math.Clamp(
            Margin / Math.Sqrt(excess * Math.Clamp(trend, 1 / GreatestTrend, GreatestTrend)),
            GreatestShrink,
            Growth
        );
}

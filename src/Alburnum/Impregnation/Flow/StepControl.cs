namespace Alburnum.Impregnation.Flow;

/// <summary>How long the time steps may be and how closely each is solved.</summary>
public sealed record StepControl
{
    /// <summary>Checks every limit.</summary>
    /// <param name="firstSeconds">First step after the contact changes, s. 1e-9 to 1e6.</param>
    /// <param name="growth">Greatest ratio of one step to the one before, 1 to 3. Smaller is finer: the error in time falls with growth − 1.</param>
    /// <param name="greatestSeconds">Longest step, s.</param>
    /// <param name="cellTolerance">Share of a cell's voids by which it may stay out of balance, carried into the next step. 1e-14 to 1e-2.</param>
    /// <param name="greatestSteps">Steps allowed, 1 to 1e6.</param>
    public StepControl(
        double firstSeconds = 1,
        double growth = 1.3,
        double greatestSeconds = 1e9,
        double cellTolerance = 1e-4,
        int greatestSteps = 20_000
    )
    {
        FirstSeconds = Require.InRange(firstSeconds, 1e-9, 1e6, "s");
        Growth = Require.InRange(growth, 1, 3, "(ratio)");
        GreatestSeconds = Require.InRange(greatestSeconds, 1e-9, 1e12, "s");
        CellTolerance = Require.InRange(cellTolerance, 1e-14, 1e-2, "(share)");
        GreatestSteps = Require.InRange(greatestSteps, 1, 1_000_000, "steps");
    }

    /// <summary>What predictions use.</summary>
    public static StepControl Usual { get; } = new();

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
}

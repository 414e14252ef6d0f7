namespace Alburnum.Acceptance.History;

/// <summary>Exponentially weighted moving average of standardised charges, with fixed limits.</summary>
public sealed record EwmaChart
{
    /// <summary>Checks both numbers.</summary>
    /// <param name="lambda">Weight of the newest charge, 0.01 to 1.</param>
    /// <param name="width">Limits at this many standard deviations of the average, 0.1 to 10.</param>
    public EwmaChart(double lambda, double width)
    {
        Lambda = Require.InRange(lambda, 0.01, 1, "");
        Width = Require.InRange(width, 0.1, 10, "standard deviations");
    }

    /// <summary>Weight 0.2 and limits for one false signal in 500 charges on average (Lucas and Saccucci 1990, from memory; recomputed in the checks).</summary>
    public static EwmaChart Usual { get; } = new(0.2, 2.962);

    /// <summary>Weight of the newest charge.</summary>
    public double Lambda { get; }

    /// <summary>Limits in standard deviations of the average.</summary>
    public double Width { get; }

    /// <summary>Limit on the average of standardised charges.</summary>
    public double Limit => Width * Math.Sqrt(Lambda / (2 - Lambda));

    /// <summary>The average after one more charge.</summary>
    /// <param name="average">The average so far; 0 at the start.</param>
    /// <param name="standardised">The charge, less the mean, in standard deviations.</param>
    public double Next(double average, double standardised) => average + Lambda * (standardised - average);
}

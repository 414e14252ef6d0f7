namespace Alburnum.Acceptance.History;

/// <summary>Cumulative sums of standardised charges, one for each direction (tabular CUSUM, Page 1954).</summary>
public sealed record CusumChart
{
    /// <summary>Checks both numbers.</summary>
    /// <param name="allowance">Half the shift that matters, standard deviations, 0 to 3.</param>
    /// <param name="interval">Decision interval, standard deviations, 0.1 to 100.</param>
    public CusumChart(double allowance, double interval)
    {
        Allowance = Require.InRange(allowance, 0, 3, "standard deviations");
        Interval = Require.InRange(interval, 0.1, 100, "standard deviations");
    }

    /// <summary>Tuned to a shift of one standard deviation, interval 5: about 465 charges between false signals.</summary>
    public static CusumChart Usual { get; } = new(0.5, 5);

    /// <summary>Half the shift that matters.</summary>
    public double Allowance { get; }

    /// <summary>Decision interval.</summary>
    public double Interval { get; }

    /// <summary>The upward and the downward sum after one more charge; both 0 or more, 0 at the start.</summary>
    public (double Up, double Down) Next(double up, double down, double standardised) =>
        (Math.Max(0, up + standardised - Allowance), Math.Max(0, down - standardised - Allowance));
}

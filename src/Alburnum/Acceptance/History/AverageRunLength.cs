using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.RootFinding;

namespace Alburnum.Acceptance.History;

/// <summary>How many charges pass on average before a chart signals: rightly after a shift, falsely without one.</summary>
/// <remarks>
/// The run-length integral equation solved at Gauss–Legendre nodes (Nyström), for independent normal charges and a chart that starts
/// at its centre. Shifts are in standard deviations of one charge.
/// </remarks>
public static class AverageRunLength
{
    private const int Nodes = 80;

    /// <summary>Two-sided EWMA chart with fixed limits (Crowder 1987; Lucas and Saccucci 1990).</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="shift">Shift of the mean, standard deviations.</param>
    public static double Of(EwmaChart chart, double shift)
    {
        Require.InRange(shift, -20, 20, "standard deviations");
        var (lambda, limit) = (chart.Lambda, chart.Limit);
        var rule = new GaussLegendreRule(-limit, limit, Nodes);
        var kernel = Matrix<double>.Build.Dense(
            Nodes,
            Nodes,
            (i, j) =>
                rule.Weights[j]
                / lambda
                * Normal.PDF(0, 1, (rule.Abscissas[j] - (1 - lambda) * rule.Abscissas[i]) / lambda - shift)
        );
        var run = Solve(kernel);
        return 1
            + Enumerable
                .Range(0, Nodes)
                .Sum(j => rule.Weights[j] / lambda * Normal.PDF(0, 1, rule.Abscissas[j] / lambda - shift) * run[j]);
    }

    /// <summary>CUSUM chart for shifts both ways: two one-sided charts run together (Lucas and Crosier 1982).</summary>
    public static double Of(CusumChart chart, double shift) =>
        1 / (1 / OneSided(chart, shift) + 1 / OneSided(chart, -shift));

    /// <summary>CUSUM chart for upward shifts alone; a downward one by the shift's sign.</summary>
    public static double OneSided(CusumChart chart, double shift)
    {
        Require.InRange(shift, -20, 20, "standard deviations");
        var (k, h) = (chart.Allowance, chart.Interval);
        var rule = new GaussLegendreRule(0, h, Nodes);
        // Unknown 0 stands for the chart at rest, the others for the nodes.
        double At(int i) => i == 0 ? 0 : rule.Abscissas[i - 1];
        var kernel = Matrix<double>.Build.Dense(
            Nodes + 1,
            Nodes + 1,
            (i, j) =>
                j == 0
                    ? Normal.CDF(0, 1, k - At(i) - shift)
                    : rule.Weights[j - 1] * Normal.PDF(0, 1, At(j) + k - At(i) - shift)
        );
        return Solve(kernel)[0];
    }

    /// <summary>The EWMA chart that signals falsely once in so many charges on average.</summary>
    /// <param name="lambda">Weight of the newest charge, 0.01 to 1.</param>
    /// <param name="charges">Average charges between false signals, 10 to 100 000.</param>
    public static EwmaChart EwmaFor(double lambda, double charges)
    {
        Require.InRange(charges, 10, 100_000, "charges");
        return new(lambda, Find(width => Of(new EwmaChart(lambda, width), 0), charges));
    }

    /// <summary>The two-sided CUSUM chart that signals falsely once in so many charges on average.</summary>
    /// <param name="allowance">Half the shift that matters, standard deviations, 0.05 to 3.</param>
    /// <param name="charges">Average charges between false signals, 10 to 100 000.</param>
    public static CusumChart CusumFor(double allowance, double charges)
    {
        Require.InRange(charges, 10, 100_000, "charges");
        return new(allowance, Find(interval => Of(new CusumChart(allowance, interval), 0), charges));
    }

    /// <summary>The width at which a run length, which grows with it, reaches a number of charges.</summary>
    private static double Find(Func<double, double> runLength, double charges)
    {
        // Strides out in small steps: far beyond the answer the equation is too ill-conditioned to solve.
        var high = 0.5;
        while (runLength(high) < charges)
            high += 0.5;
        return Brent.FindRoot(
            width => Math.Log(runLength(width) / charges),
            Math.Max(0.1, high - 0.5),
            high,
            1e-9,
            100
        );
    }

    private static Vector<double> Solve(Matrix<double> kernel) =>
        (Matrix<double>.Build.DenseIdentity(kernel.RowCount) - kernel).Solve(
            Vector<double>.Build.Dense(kernel.RowCount, 1)
        );
}

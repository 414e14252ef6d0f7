using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

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

    private static Vector<double> Solve(Matrix<double> kernel) =>
        (Matrix<double>.Build.DenseIdentity(kernel.RowCount) - kernel).Solve(
            Vector<double>.Build.Dense(kernel.RowCount, 1)
        );
}

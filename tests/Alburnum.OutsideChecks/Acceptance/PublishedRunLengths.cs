using Alburnum.Acceptance.History;
using MathNet.Numerics.RootFinding;

namespace Alburnum.OutsideChecks.Acceptance;

/// <summary>Printed run lengths keep three digits; they are held to half a unit of the last one, or a little more where noted.</summary>
[Computed]
public class PublishedRunLengths
{
    [Theory]
    [InlineData(0.00, 168)]
    [InlineData(0.25, 74.2)]
    [InlineData(0.50, 26.6)]
    [InlineData(0.75, 13.3)]
    [InlineData(1.00, 8.38)]
    [InlineData(1.50, 4.75)]
    [InlineData(2.00, 3.34)]
    [InlineData(2.50, 2.62)]
    [InlineData(3.00, 2.19)]
    [InlineData(4.00, 1.71)]
    [InlineData(5.00, 1.31)]
    [Published(
        "Lucas and Crosier 1982, Technometrics 24",
        "table 1, k = 0.5, h = 4, two-sided; at second hand in the documentation of R's spc"
    )]
    public void A_two_sided_CUSUM_has_its_published_run_lengths(double shift, double charges) =>
        Assert.Equal(charges, AverageRunLength.Of(new CusumChart(0.5, 4), shift), 0.005 * charges);

    [Theory]
    [InlineData(-0.25, 2071.51)]
    [InlineData(-0.125, 400.28)]
    [InlineData(0.0, 124.66)]
    [InlineData(0.125, 59.30)]
    [InlineData(0.25, 36.71)]
    [InlineData(0.50, 20.37)]
    [InlineData(0.75, 14.06)]
    [InlineData(1.00, 10.75)]
    [Published(
        "Vance 1986, Journal of Quality Technology 18",
        "table 1, k = 0, h = 10, one-sided; at second hand in the documentation of R's spc"
    )]
    public void A_one_sided_CUSUM_has_its_published_run_lengths(double shift, double charges) =>
        // The quadrature of the day keeps about five digits of the longest run.
        Assert.Equal(
            charges,
            AverageRunLength.OneSided(new CusumChart(0, 10), shift),
            Math.Max(0.0051, 5e-5 * charges)
        );

    [Theory]
    [InlineData(-0.5, 1963, 1)]
    [InlineData(0, 117.4, 0.21)]
    [InlineData(0.5, 17.35, 0.006)]
    [Published(
        "Waldmann 1986, Technometrics 28",
        "tables 1, 3 and 5, k = 0.5, h = 3; at second hand in the documentation of R's spc"
    )]
    public void A_short_CUSUM_has_its_published_run_lengths(double shift, double charges, double within) =>
        Assert.Equal(charges, AverageRunLength.OneSided(new CusumChart(0.5, 3), shift), within);

    [Theory]
    [InlineData(0.00, 26.45, 127.53)]
    [InlineData(0.25, 20.12, 43.94)]
    [InlineData(0.50, 11.89, 18.97)]
    [InlineData(0.75, 7.29, 11.64)]
    [InlineData(1.00, 4.91, 8.38)]
    [InlineData(1.50, 2.80, 5.41)]
    [InlineData(2.00, 1.94, 4.04)]
    [InlineData(3.00, 1.26, 2.76)]
    [InlineData(4.00, 1.05, 2.15)]
    [Published(
        "Crowder 1987, Technometrics 29",
        "table 1, λ = 0.5 and 0.05, limits at 2; at second hand in the documentation of R's spc"
    )]
    public void An_EWMA_has_its_published_run_lengths(double shift, double fast, double slow)
    {
        // One printed digit is cut rather than rounded (1.94 for 1.945).
        Assert.Equal(fast, AverageRunLength.Of(new EwmaChart(0.5, 2), shift), 0.006);
        Assert.Equal(slow, AverageRunLength.Of(new EwmaChart(0.05, 2), shift), 0.006);
    }

    [Theory]
    [InlineData(0.00, 500, 500)]
    [InlineData(0.25, 255, 76.7)]
    [InlineData(0.50, 88.8, 29.3)]
    [InlineData(0.75, 35.9, 17.6)]
    [InlineData(1.00, 17.5, 12.6)]
    [InlineData(1.50, 6.53, 8.07)]
    [InlineData(2.00, 3.63, 5.99)]
    [InlineData(3.00, 1.93, 4.03)]
    [InlineData(4.00, 1.34, 3.11)]
    [Published(
        "Lucas and Saccucci 1990, Technometrics 32",
        "table 3, λ = 0.5 at 3.071 and 0.03 at 2.437; at second hand in the documentation of R's spc"
    )]
    public void An_EWMA_tuned_to_500_charges_has_its_published_run_lengths(double shift, double fast, double slow)
    {
        Assert.Equal(fast, AverageRunLength.Of(new EwmaChart(0.5, 3.071), shift), 0.004 * fast);
        Assert.Equal(slow, AverageRunLength.Of(new EwmaChart(0.03, 2.437), shift), 0.004 * slow);
    }

    [Theory]
    [InlineData(0.05, 2.32)]
    [InlineData(0.10, 2.55)]
    [InlineData(0.15, 2.65)]
    [InlineData(0.20, 2.72)]
    [InlineData(0.25, 2.76)]
    [Published(
        "Crowder 1989, Journal of Quality Technology 21",
        "limits for one false signal in 250; at second hand in the documentation of R's spc"
    )]
    public void The_limits_for_one_false_signal_in_250_charges_are_the_published_ones(double lambda, double width) =>
        Assert.Equal(
            width,
            Brent.FindRoot(limit => AverageRunLength.Of(new EwmaChart(lambda, limit), 0) - 250, 1, 3.5),
            0.0075
        );

    [Fact]
    [WorkedOut("λ = 1 leaves a plain chart: 1/(2·Φ(−3)) = 370.4")]
    public void Without_memory_the_EWMA_is_the_plain_three_sigma_chart() =>
        Assert.Equal(370.398, AverageRunLength.Of(new EwmaChart(1, 3), 0), 0.001);

    [Fact]
    [IndependentProgram(SciPyReference.Program, SciPyReference.Script)]
    public void The_usual_charts_have_the_run_lengths_that_are_stated()
    {
        Assert.Equal(465, AverageRunLength.Of(CusumChart.Usual, 0), 1.0);
        Assert.Equal(500, AverageRunLength.Of(EwmaChart.Usual, 0), 1.0);
    }
}

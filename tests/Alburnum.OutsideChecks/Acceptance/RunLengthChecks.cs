using Alburnum.Acceptance.History;
using MathNet.Numerics.RootFinding;

namespace Alburnum.OutsideChecks.Acceptance;

/// <summary>Average run lengths of the charts, against the same integral equation solved in another way and language.</summary>
[Computed]
public sealed class RunLengthChecks
{
    private const string File = "run-lengths.csv";
    private const string Program = "Python 3.11 (Debian 12), standard library";
    private const string Script = "tests/Alburnum.OutsideChecks/reference/run_lengths.py, output stored beside it";

    public static TheoryData<double[]> OneSided => ReferenceTable.Rows(File, "cusum");

    public static TheoryData<double[]> TwoSided => ReferenceTable.Rows(File, "cusum-both");

    public static TheoryData<double[]> Smoothed => ReferenceTable.Rows(File, "ewma");

    public static TheoryData<double[]> Limits => ReferenceTable.Rows(File, "ewma-limit");

    [Theory]
    [MemberData(nameof(OneSided))]
    [IndependentProgram(Program, Script)]
    public void A_one_sided_CUSUM_has_the_run_lengths_found_by_collocation(double[] row) =>
        Agrees(row[3], AverageRunLength.OneSided(new CusumChart(row[0], row[1]), row[2]));

    [Theory]
    [MemberData(nameof(TwoSided))]
    [IndependentProgram(Program, Script)]
    public void A_two_sided_CUSUM_has_the_run_lengths_found_by_collocation(double[] row) =>
        Agrees(row[3], AverageRunLength.Of(new CusumChart(row[0], row[1]), row[2]));

    [Theory]
    [MemberData(nameof(Smoothed))]
    [IndependentProgram(Program, Script)]
    public void An_EWMA_has_the_run_lengths_found_by_collocation(double[] row) =>
        Agrees(row[3], AverageRunLength.Of(new EwmaChart(row[0], row[1]), row[2]));

    [Theory]
    [MemberData(nameof(Limits))]
    [IndependentProgram(Program, Script)]
    public void The_limit_for_a_wanted_run_length_is_the_one_found_by_collocation(double[] row) =>
        Assert.Equal(
            row[2],
            Brent.FindRoot(limit => AverageRunLength.Of(new EwmaChart(row[0], limit), 0) - row[1], 1, 3.5),
            2e-6 // the script halves its interval down to 1e-6
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

    // Both ways are good to some eight digits; Simpson's rule in the script keeps the fewest.
    private static void Agrees(double expected, double charges) => Assert.Equal(expected, charges, 1e-6 * expected);
}

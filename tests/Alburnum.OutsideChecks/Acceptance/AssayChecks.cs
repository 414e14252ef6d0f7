using Alburnum.Acceptance;
using Alburnum.Measures;
using Alburnum.Penetration;

namespace Alburnum.OutsideChecks.Acceptance;

/// <summary>The uncertainty of a few assays, and laboratories held against each other.</summary>
[Computed]
public sealed class AssayChecks
{
    private const string Program = "SciPy 1.10.1 (Debian 12)";
    private const string Script = "tests/Alburnum.OutsideChecks/reference/assays.py, output stored beside it";

    public static TheoryData<double[]> Means => ReferenceTable.Rows("assays.csv", "mean");

    public static TheoryData<double[]> Samples => ReferenceTable.Rows("assays.csv", "samples");

    public static TheoryData<double[]> TwoLaboratories => ReferenceTable.Rows("assays.csv", "two-laboratories");

    public static TheoryData<double[]> ThreeLaboratories => ReferenceTable.Rows("assays.csv", "three-laboratories");

    // Four components in nm: standard, difference, expansion, temperature. The guide leaves the decimals of the degrees of freedom out.
    [Fact]
    [Published("JCGM 100:2008", "H.1, an end gauge's length, at second hand: 32 nm with 16 degrees of freedom")]
    public void An_end_gauge_has_16_whole_degrees_of_freedom()
    {
        var combined = EvaluatedUncertainty.Combine(new(25, 18), new(9.7, 25.6), new(2.9, 50), new(16.6, 2));

        Assert.Equal(32, combined.U, 0.4);
        Assert.Equal(16, Math.Floor(combined.DegreesOfFreedom));
    }

    [Fact]
    [WorkedOut("Welch–Satterthwaite: (0.25² + 0.57² + 0.82²)² / (0.25⁴/9 + 0.57⁴/4 + 0.82⁴/14) = 18.9987")]
    public void Components_of_9_4_and_14_degrees_of_freedom_have_19_together()
    {
        var combined = EvaluatedUncertainty.Combine(new(0.25, 9), new(0.57, 4), new(0.82, 14));

        Assert.Equal(1.02947, combined.U, 5);
        Assert.Equal(18.9987, combined.DegreesOfFreedom, 4);
    }

    [Theory]
    [IndependentProgram(Program, Script)]
    [MemberData(nameof(Means))]
    public void The_mean_of_a_few_assays_is_judged_by_Students_distribution(double[] row)
    {
        var judged = RetentionConformity.Judge(
            [.. row[2..^2].Select(value => new MeasuredAssay(new(value, row[1])))],
            row[0],
            new DecisionRule(0.95, 0.05)
        );

        var mean = Assert.IsType<RetentionMean>(Assert.Single(judged.Reasons));
        Assert.Equal(row[^2], mean.DegreesOfFreedom, row[^2] * 1e-9);
        Assert.Equal(row[^1], mean.Probability, 1e-9);
    }

    [Theory]
    [IndependentProgram(Program, Script)]
    [MemberData(nameof(Samples))]
    public void Samples_count_alike_and_laboratories_by_their_uncertainties_over_one_sample(double[] row)
    {
        Assay[] assays =
        [
            .. row[1..^2]
                .Chunk(2)
                .Select(
                    (cell, i) => (Content: cell[0], U: cell[1], Sample: $"S{i / 2}", Laboratory: i % 2 == 0 ? "A" : "B")
                )
                .Where(each => !double.IsNaN(each.Content))
                .Select(each => new MeasuredAssay(new(each.Content, each.U), each.Sample)
                {
                    Laboratory = each.Laboratory,
                }),
        ];
        var judged = RetentionConformity.Judge(assays, row[0], new DecisionRule(0.95, 0.05));

        var mean = Assert.IsType<RetentionMean>(Assert.Single(judged.Reasons));
        Assert.Equal(row[^2], mean.DegreesOfFreedom, row[^2] * 1e-9);
        Assert.Equal(row[^1], mean.Probability, 1e-9);
    }

    [Theory]
    [IndependentProgram(Program, Script)]
    [MemberData(nameof(TwoLaboratories))]
    public void Two_laboratories_with_few_samples_differ_where_Welchs_test_says_so(double[] row)
    {
        var differ = Differ(row[..3], row[3..6]);

        Assert.Equal(row[^1] < 0.05, differ is not null);
        if (differ is not null)
            Assert.Equal(row[^2], differ.Scatter!.Ratio, 1e-4 * row[^2]);
    }

    [Theory]
    [IndependentProgram(Program, Script)]
    [MemberData(nameof(ThreeLaboratories))]
    public void Three_laboratories_with_few_samples_differ_where_Welchs_test_says_so(double[] row)
    {
        var differ = Differ(row[..3], row[3..6], row[6..9]);

        Assert.Equal(row[^2] > row[^1], differ is not null);
        if (differ?.Scatter is { } scatter)
        {
            Assert.Equal(row[^2], scatter.Ratio, 1e-4 * row[^2]);
            Assert.Equal(row[^1], scatter.MostByChance, 1e-4 * row[^1]);
        }
    }

    private static LaboratoriesDiffer? Differ(params double[][] laboratories) =>
        RetentionConformity
            .Judge(
                [
                    .. laboratories.SelectMany(
                        (values, i) =>
                            values.Select(value => new MeasuredAssay(new(value, 1e-9)) { Laboratory = $"{i}" })
                    ),
                ],
                8,
                new DecisionRule(0.95, 0.05)
            )
            .Reasons.OfType<LaboratoriesDiffer>()
            .FirstOrDefault();
}

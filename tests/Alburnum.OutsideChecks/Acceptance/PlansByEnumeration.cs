using Alburnum.Acceptance;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Measures;

namespace Alburnum.OutsideChecks.Acceptance;

[IndependentProgram(
    "SciPy 1.10.1 and mpmath 1.2.1 (Debian 12)",
    "tests/Alburnum.OutsideChecks/reference/plans.py, output stored beside it"
)]
[Computed]
public class PlansByEnumeration
{
    public static TheoryData<double[]> Doubles => ReferenceTable.Rows("plans.csv", "double");
    public static TheoryData<double[]> Sequentials => ReferenceTable.Rows("plans.csv", "sequential");
    public static TheoryData<double[]> ByVariables => ReferenceTable.Rows("plans.csv", "variables");
    public static TheoryData<double[]> Capabilities => ReferenceTable.Rows("plans.csv", "capability");
    public static TheoryData<double[]> Doubtful => ReferenceTable.Rows("plans.csv", "doubtful");
    public static TheoryData<double[]> Shares => ReferenceTable.Rows("plans.csv", "quantile");

    [Theory]
    [MemberData(nameof(Doubles))]
    public void A_double_plan_has_its_acceptance_and_mean_sample(double[] row)
    {
        var plan = new DoubleSamplingPlan((int)row[0], (int)row[1], (int)row[2], (int)row[3], (int)row[4]);

        Assert.Equal(row[6], plan.Acceptance(row[5], new SteadyProcess()), 1e-10);
        Assert.Equal(row[7], plan.MeanPiecesCut(row[5], new SteadyProcess()), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Sequentials))]
    public void A_cut_off_sequential_plan_has_its_acceptance_and_mean_sample(double[] row)
    {
        var plan = SequentialPlan.For(new(row[0], row[1], row[2], row[3]), (int)row[4]);

        Assert.Equal(row[6], plan.Acceptance(row[5], new SteadyProcess()), 1e-10);
        Assert.Equal(row[7], plan.MeanPiecesCut(row[5], new SteadyProcess()), 1e-8);
    }

    [Theory]
    [MemberData(nameof(ByVariables))]
    public void The_smallest_plan_by_variables_is_found(double[] row)
    {
        var plan = VariablesPlan.For(new(row[0], row[1], row[2], row[3]))!;

        Assert.Equal((int)row[4], plan.SampleSize);
        Assert.Equal(row[5], plan.Factor, 1e-7);
        Assert.Equal(row[6], plan.Acceptance(row[0], new SteadyProcess()), 1e-7);
        Assert.Equal(row[7], plan.Acceptance(row[2], new SteadyProcess()), 1e-7);
    }

    [Theory]
    [MemberData(nameof(Capabilities))]
    public void A_capability_index_has_its_lower_bound(double[] row)
    {
        var capability = Capability.Of((long)row[0], row[1], row[2], row[3]);

        Assert.Equal(row[4], capability.Index, 1e-12);
        Assert.Equal(row[5], capability.LowerBound, 1e-7);
    }

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void Readings_that_each_may_fail_are_counted_as_by_going_through_every_outcome(double[] row)
    {
        var pieces = (int)row[0];

        Assert.Equal(row[^1], PoissonBinomial.AtMost((int)row[pieces + 1], row[1..(pieces + 1)]), 1e-12);
    }

    [Theory]
    [MemberData(nameof(Shares))]
    public void A_quantile_of_readings_is_that_of_type_7(double[] row)
    {
        var count = (int)row[0];

        Assert.Equal(row[^1], Quantiles.Of([.. row[1..(count + 1)].Order()], row[count + 1]), 1e-12);
    }
}

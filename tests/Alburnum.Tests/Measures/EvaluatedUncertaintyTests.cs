using Alburnum.Measures;
using CsCheck;

namespace Alburnum.Tests.Measures;

public sealed class EvaluatedUncertaintyTests
{
    private static readonly Gen<EvaluatedUncertainty> Any = Gen.Select(Gen.Double[0.01, 10], Gen.Double[1, 50])
        .Select((u, freedom) => new EvaluatedUncertainty(u, freedom));

    [Fact]
    public void Effective_degrees_of_freedom_lie_between_the_least_and_the_sum() =>
        Any.Array[1, 6]
            .Sample(causes =>
            {
                var found = EvaluatedUncertainty.Combine(causes).DegreesOfFreedom;
                Assert.True(found >= causes.Min(cause => cause.DegreesOfFreedom) * (1 - 1e-9));
                Assert.True(found <= causes.Sum(cause => cause.DegreesOfFreedom) * (1 + 1e-9));
            });

    [Fact]
    public void What_is_known_stays_known_and_makes_the_rest_better_known() =>
        Gen.Select(Any, Gen.Double[0.01, 10])
            .Sample(
                (cause, u) =>
                {
                    var known = EvaluatedUncertainty.Known(u);
                    Assert.True(EvaluatedUncertainty.Combine(known, known).IsKnown);
                    Assert.True(EvaluatedUncertainty.Combine(cause, known).DegreesOfFreedom > cause.DegreesOfFreedom);
                }
            );

    [Fact]
    public void Less_known_is_less_certain() =>
        Gen.Select(Any, Gen.Double[0.01, 30])
            .Sample(
                (cause, margin) =>
                {
                    var known = EvaluatedUncertainty.Known(cause.U).ProbabilityAbove(margin);
                    Assert.InRange(cause.ProbabilityAbove(margin), 0.5, known + 1e-12);
                    Assert.Equal(1, cause.ProbabilityAbove(margin) + cause.ProbabilityAbove(-margin), 1e-9);
                }
            );

    [Fact]
    public void The_mean_of_values_scatters_by_the_root_of_their_number()
    {
        Assert.Equal(new(1, 1), EvaluatedUncertainty.OfMean([13, 15]));
        Assert.Equal(EvaluatedUncertainty.Known(0), EvaluatedUncertainty.OfMean([13]));
    }
}

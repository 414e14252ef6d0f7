using Alburnum.Penetration;
using CsCheck;

namespace Alburnum.Tests.Penetration;

public class ProbabilityRangeTests
{
    private static readonly Gen<ProbabilityRange> Ranges = Gen.Select(
        Gen.Double[0, 1],
        Gen.Double[0, 1],
        ProbabilityRange.Between
    );

    [Fact]
    public void The_figure_shown_lies_within_the_range_and_half_way_unless_said() =>
        Ranges.Sample(range =>
        {
            Assert.InRange(range.Middle, range.Low, range.High);
            Assert.Equal((range.Low + range.High) / 2, range.Middle);
        });

    [Fact]
    public void Two_demands_together_are_met_no_more_surely_than_either() =>
        Gen.Select(Ranges, Ranges)
            .Sample(
                (one, other) =>
                {
                    var both = one.And(other);

                    Assert.True(both.Low <= Math.Min(one.Low, other.Low));
                    Assert.True(both.High <= Math.Min(one.High, other.High));
                    Assert.Equal(one.Middle * other.Middle, both.Middle);
                }
            );

    [Fact]
    public void Bounds_out_of_order_or_beyond_certainty_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProbabilityRange(0.6, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProbabilityRange(0, 1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProbabilityRange(double.NaN, 1));
    }
}

using Alburnum.Imaging.Geometry;
using CsCheck;

namespace Alburnum.Imaging.Tests.Geometry;

public class SlopeCostTests
{
    private static readonly Gen<(float[] Best, SlopeCost Cost)> Columns = Gen.Select(
        Gen.Float[-50, 50].Array[1, 130],
        Gen.Select(Gen.Int[0, 6], Gen.Float[0, 12], Gen.OneOf(Gen.Float[0, 60], Gen.Const(float.PositiveInfinity)))
            .Select((free, perRow, jump) => new SlopeCost(free, perRow, jump))
    );

    [Fact]
    public void The_quick_step_and_its_plain_twin_agree() =>
        Columns.Sample(
            (best, cost) =>
            {
                var quick = new float[best.Length];
                var plain = new float[best.Length];
                cost.Ease(best, quick, new float[best.Length]);
                EasePlainly(best, plain, cost);
                for (var d = 0; d < best.Length; d++)
                    Assert.Equal(plain[d], quick[d], 1e-3f);
            }
        );

    [Fact]
    public void A_depth_is_reached_from_where_that_costs_least() =>
        Columns.Sample(
            (best, cost) =>
            {
                var least = new float[best.Length];
                EasePlainly(best, least, cost);
                for (var d = 0; d < best.Length; d++)
                {
                    var from = cost.CameFrom(best, d);
                    Assert.Equal(least[d], best[from] + cost.Of(from - d), 1e-3f);
                }
            }
        );

    // What the easing computes, said simply.
    private static void EasePlainly(ReadOnlySpan<float> best, Span<float> eased, SlopeCost cost)
    {
        for (var d = 0; d < best.Length; d++)
        {
            eased[d] = best[d];
            for (var k = 0; k < best.Length; k++)
                eased[d] = Math.Min(eased[d], best[k] + cost.Of(d - k));
        }
    }
}

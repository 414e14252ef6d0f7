using Alburnum.Imaging.Geometry;
using CsCheck;

namespace Alburnum.Imaging.Tests.Geometry;

public class SlopeCostTests
{
    private static readonly Gen<(float[] Best, int Free, float Cost)> Columns = Gen.Select(
        Gen.Float[-50, 50].Array[1, 130],
        Gen.Int[0, 6],
        Gen.Float[0, 12]
    );

    [Fact]
    public void The_quick_step_and_its_plain_twin_agree() =>
        Columns.Sample(
            (best, free, cost) =>
            {
                var quick = new float[best.Length];
                var plain = new float[best.Length];
                SlopeCost.Ease(best, quick, new float[best.Length], free, cost);
                EasePlainly(best, plain, free, cost);
                for (var d = 0; d < best.Length; d++)
                    Assert.Equal(plain[d], quick[d], 1e-3f);
            }
        );

    [Fact]
    public void A_depth_is_reached_from_where_that_costs_least() =>
        Columns.Sample(
            (best, free, cost) =>
            {
                var least = new float[best.Length];
                EasePlainly(best, least, free, cost);
                for (var d = 0; d < best.Length; d++)
                {
                    var from = SlopeCost.CameFrom(best, d, free, cost);
                    Assert.Equal(least[d], best[from] + (cost * Math.Max(0, Math.Abs(from - d) - free)), 1e-3f);
                }
            }
        );

    // What the easing computes, said simply.
    private static void EasePlainly(ReadOnlySpan<float> best, Span<float> eased, int free, float cost)
    {
        for (var d = 0; d < best.Length; d++)
        {
            eased[d] = best[d];
            for (var k = 0; k < best.Length; k++)
                eased[d] = Math.Min(eased[d], best[k] + (cost * Math.Max(0, Math.Abs(d - k) - free)));
        }
    }
}

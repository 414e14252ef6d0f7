using Alburnum.Measures;
using CsCheck;

namespace Alburnum.Tests.Measures;

public class SeededRandomTests
{
    [Fact]
    public void The_stream_is_the_published_one()
    {
        // First numbers of SplitMix64 from the seed 1234567, as printed with the generator's reference code.
        var random = new SeededRandom(1234567UL);

        Assert.Equal(6457827717110365317UL, random.Below(ulong.MaxValue));
        Assert.Equal(3203168211198807973UL, random.Below(ulong.MaxValue));
    }

    [Fact]
    public void Draws_below_a_bound_are_even() =>
        Gen.Int[1, 50]
            .Sample(
                bound =>
                {
                    var random = new SeededRandom((ulong)bound);
                    var counts = new int[bound];
                    for (var i = 0; i < 2000 * bound; i++)
                        counts[random.Below((ulong)bound)]++;
                    // Five standard deviations of a count of 2000.
                    Assert.All(counts, count => Assert.InRange(count, 2000 - 224, 2000 + 224));
                },
                iter: 20
            );

    [Fact]
    public void Normal_draws_have_mean_0_spread_1_and_the_normal_s_tails()
    {
        var random = new SeededRandom(5);
        double[] draws = [.. Enumerable.Range(0, 100_000).Select(_ => random.NextNormal())];

        Assert.Equal(0, draws.Average(), 0.015);
        Assert.Equal(1, draws.Average(draw => draw * draw), 0.02);
        Assert.Equal(0.025, draws.Count(draw => draw > 1.96) / 1e5, 0.0025);
        Assert.All(draws, draw => Assert.True(double.IsFinite(draw)));
    }

    [Fact]
    public void Even_draws_lie_from_0_to_below_1_and_have_their_mean()
    {
        var random = new SeededRandom(7);
        double[] draws = [.. Enumerable.Range(0, 100_000).Select(_ => random.NextDouble())];

        Assert.All(draws, draw => Assert.InRange(draw, 0, 1 - 1e-16));
        Assert.Equal(0.5, draws.Average(), 0.005);
    }
}

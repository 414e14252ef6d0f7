using Alburnum.Penetration;

namespace Alburnum.Tests.Penetration;

public class SectionDepthTests
{
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(3)]
    public void The_statistics_stand_in_order_however_noisy_the_positions_are(double uMm)
    {
        // Almost even depths: noise alone would carry the corrected least above, and the greatest below, the rest.
        var statistics = SectionDepth.Of([Face(i => 10 + (0.01 * (i % 7)), uMm)], commonMm: 0.05)!;

        Assert.True(statistics.MinimumMm.Value <= statistics.FifthPercentileMm.Value);
        Assert.True(statistics.FifthPercentileMm.Value <= statistics.MedianMm.Value);
        Assert.True(statistics.MedianMm.Value <= statistics.MaximumMm.Value);
        Assert.InRange(statistics.MeanMm.Value, statistics.MinimumMm.Value, statistics.MaximumMm.Value);
    }

    [Fact]
    public void A_least_depth_far_below_the_rest_is_still_corrected_upwards_no_further_than_its_own_doubt()
    {
        var statistics = SectionDepth.Of([Face(i => i < 20 ? 4 + (0.01 * i) : 10, 0.3)], commonMm: 0)!;

        Assert.InRange(statistics.MinimumMm.Value, 4.0, 4.0 + (3 * 0.3));
    }

    private static FaceProfile Face(Func<int, double> depthMm, double uMm) =>
        new(
            1,
            1,
            [.. Enumerable.Range(0, 100).Select(i => (double)i)],
            [.. Enumerable.Range(0, 100).Select(depthMm)],
            [.. Enumerable.Repeat(uMm, 100)],
            [.. Enumerable.Repeat(false, 100)],
            [.. Enumerable.Repeat<double?>(null, 100)]
        );
}

using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Tests.Penetration;

public sealed class DepthQuantileTests
{
    [Fact]
    public void Ten_depths_give_the_same_fifth_percentile_and_median_by_ruler_and_by_photograph()
    {
        double[] depths = [.. Enumerable.Range(1, 10).Select(mm => (double)mm)];
        var byRuler = HandReadings
            .Profile(new RectangularSection(100, 100), [.. depths.Select(mm => new HandReading(1, mm, mm, 0, null))])
            .Statistics;
        var positions = depths.Length;
        var face = new FaceProfile(
            1,
            1,
            [.. depths],
            [.. depths],
            new double[positions],
            new bool[positions],
            new double?[positions]
        );
        var byPhotograph = SectionDepth.Of([face], 0)!;

        // 1 + 0.05·9 and 1 + 0.5·9.
        Assert.Equal((1.45, 5.5), (byRuler.FifthPercentileMm.Value, byRuler.MedianMm.Value));
        Assert.Equal(byPhotograph.FifthPercentileMm.Value, byRuler.FifthPercentileMm.Value, 1e-12);
        Assert.Equal(byPhotograph.MedianMm.Value, byRuler.MedianMm.Value, 1e-12);
    }
}

using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Zones;

public class NearestUntreatedTests
{
    [Fact]
    public void It_equals_the_depth_beside_an_even_front_and_never_exceeds_it()
    {
        var reading = DrawnReading.Of(new PlainSection());

        foreach (
            var (face, nearest) in DrawnReading
                .Profile(reading)
                .Faces.Zip(DrawnReading.Read(reading).NearestUntreatedMm)
        )
        {
            Assert.Equal(9, nearest.Skip(15).SkipLast(15).Order().ElementAt((nearest.Count - 30) / 2)!.Value, 0.15);
            Assert.All(
                Enumerable.Range(0, nearest.Count).Where(i => !face.Excluded[i]),
                i => Assert.True(nearest[i] <= face.DepthMm[i] + 1e-9)
            );
        }
    }

    [Fact]
    public void Beside_a_gap_it_is_the_way_to_the_gap()
    {
        // 16 mm deep but for a gap of 4 mm, 45 to 65 mm along the first face: 3 mm beside it the gap's corner is the nearest.
        var drawn = new PlainSection
        {
            WidthMm = 110,
            HeightMm = 90,
            DepthMm = s => s is > 45 and < 65 ? 4 : 16,
        };
        var reading = DrawnReading.Of(drawn);

        Assert.Equal(16, DrawnReading.Profile(reading).Faces[0].DepthMm[42], 0.5);
        Assert.Equal(double.Hypot(45 - 42.5, 4), DrawnReading.Read(reading).NearestUntreatedMm[0][42]!.Value, 0.8);
    }
}

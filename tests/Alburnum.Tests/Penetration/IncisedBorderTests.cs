using Alburnum.Penetration;
using CsCheck;

namespace Alburnum.Tests.Penetration;

public class IncisedBorderTests
{
    [Fact]
    public void Fingers_are_told_from_the_border_between_them()
    {
        // Border 5 mm, a finger of 9 mm every 20 mm, 3 mm wide.
        var face = Face(i => i % 20 is 9 or 10 or 11 ? 9 : 5);
        var incised = IncisedBorder.Of(face);

        Assert.All(incised.EnvelopeMm, mm => Assert.Equal(5, mm));
        Assert.Equal(5, incised.Fingers.Count);
        Assert.All(incised.Fingers, finger => Assert.Equal((3.0, 9.0), (finger.WidthMm, finger.DepthMm)));
        Assert.Equal([9.5, 29.5, 49.5, 69.5, 89.5], incised.Fingers.Select(finger => finger.PositionMm));
    }

    [Fact]
    public void A_wide_rise_is_no_finger()
    {
        var incised = IncisedBorder.Of(Face(i => i is > 30 and < 60 ? 9 : 5));

        Assert.Empty(incised.Fingers);
        Assert.Equal(9, incised.EnvelopeMm[45]);
    }

    [Fact]
    public void The_border_is_never_deeper_and_keeps_the_least_depth() =>
        Gen.Double[0, 20]
            .Array[20, 120]
            .Sample(depths =>
            {
                var incised = IncisedBorder.Of(Face(i => depths[i], depths.Length));
                Assert.All(incised.EnvelopeMm.Zip(depths), pair => Assert.True(pair.First <= pair.Second));
                Assert.Equal(depths.Min(), incised.EnvelopeMm.Min());
            });

    [Fact]
    public void What_is_left_out_makes_no_finger()
    {
        var face = Face(i => i is 49 or 50 ? 12 : 5);
        bool[] excluded = [.. Enumerable.Range(0, 100).Select(i => i is 49 or 50)];

        Assert.Empty(IncisedBorder.Of(face with { Excluded = excluded }).Fingers);
    }

    private static FaceProfile Face(Func<int, double> depthMm, int count = 100) =>
        new(
            1,
            1,
            [.. Enumerable.Range(0, count).Select(i => i + 0.5)],
            [.. Enumerable.Range(0, count).Select(depthMm)],
            [.. Enumerable.Repeat(0.1, count)],
            new bool[count],
            new double?[count]
        );
}

using Alburnum.Imaging.Geometry;
using CsCheck;

namespace Alburnum.Imaging.Tests.Geometry;

public class RadialLensTests
{
    [Fact]
    public void Drawing_undoes_straightening() =>
        Gen.Select(Gen.Double[-0.15, 0.4], Gen.Double[0, 4000], Gen.Double[0, 3000])
            .Sample(
                (bow, x, y) =>
                {
                    var lens = RadialLens.Of(4000, 3000, bow);
                    var back = lens.Drawn(lens.Straight(new(x, y)));

                    Assert.Equal(x, back.X, 1e-6);
                    Assert.Equal(y, back.Y, 1e-6);
                }
            );

    [Fact]
    public void A_barrel_draws_the_corner_too_near_by_its_bow()
    {
        var lens = RadialLens.Of(4000, 3000, 0.1);
        var straight = lens.Straight(new(4000, 3000));

        Assert.Equal(2500 / 0.9, straight.DistanceTo(new(2000, 1500)), 1e-6);
        Assert.Equal(new PointPx(2000, 1500), lens.Straight(new(2000, 1500)));
    }
}

using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Tests.Geometry;

public sealed class ClosedCurveTests
{
    private const double RadiusMm = 60;

    private static ClosedCurve Curve(Func<double, double> radiusMm) =>
        new([
            .. Enumerable
                .Range(0, 720)
                .Select(i => 2 * Math.PI * i / 720)
                .Select(a => new PointMm(64 + (radiusMm(a) * Math.Cos(a)), 64 + (radiusMm(a) * Math.Sin(a)))),
        ]);

    private static double Wavy(double angle) => RadiusMm + (1.5 * Math.Cos(4 * angle)) + Math.Sin(7 * angle);

    [Fact]
    public void A_circle_is_as_long_as_it_is_and_reaches_to_its_middle()
    {
        var circle = Curve(_ => RadiusMm);

        Assert.Equal(2 * Math.PI * RadiusMm, circle.LengthMm, 0.01);
        Assert.Equal(RadiusMm, circle.ReachMm, 0.1);
        Assert.Equal(RadiusMm - 20, circle.Locate(new(64 + 20, 64)).InwardMm, 0.001);
        Assert.Equal(-3, circle.Locate(new(64, 64 - RadiusMm - 3)).InwardMm, 0.001);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(15)]
    [InlineData(-1.5)]
    public void A_place_is_located_where_it_was_set(double inwardMm)
    {
        var curve = Curve(Wavy);

        for (var s = 0.3; s < curve.LengthMm; s += 1.7)
        {
            var located = curve.Locate(curve.At(s, inwardMm));
            // A hundredth of the depth: the normals are those of chords.
            Assert.Equal(s, located.S, 0.05 + (0.01 * Math.Abs(inwardMm)));
            Assert.Equal(inwardMm, located.InwardMm, 0.005);
        }
    }

    [Fact]
    public void A_face_is_read_as_deep_as_no_other_place_of_the_rim_is_nearer()
    {
        var plan = SectionPlan.Rim(Curve(Wavy));

        Assert.All(Enumerable.Range(0, 36), k => Assert.InRange(plan.ReachAt(plan.Faces[0], 10.0 * k), 20, 66));
    }
}

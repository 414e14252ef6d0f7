using Alburnum.Imaging.Geometry;
using CsCheck;

namespace Alburnum.Imaging.Tests.Geometry;

public class DiscPoseTests
{
    [Fact]
    public void One_of_the_two_poses_is_the_one_from_which_the_disc_was_seen()
    {
        // A disc of 100 mm, tilted and off the axis, seen by a camera of 3000 px focal length: closed form by projection.
        Gen.Select(Gen.Double[0.08, 0.43], Gen.Double[0, 6.28], Gen.Double[-40, 40], Gen.Double[-40, 40])
            .Sample(
                (tilt, about, x0, y0) =>
                {
                    const double Focal = 3000;
                    PointPx axis = new(2000, 1500);
                    var (sa, ca) = Math.SinCos(about);
                    var (st, ct) = Math.SinCos(tilt);
                    PointPx Seen(double x, double y)
                    {
                        // Along the axis of tilt nothing changes; across it the disc leans away.
                        var (u, v) = ((x * ca) + (y * sa), (y * ca) - (x * sa));
                        var (px, py, pz) = (
                            (u * ca) - (v * ct * sa) + x0,
                            (u * sa) + (v * ct * ca) + y0,
                            420 + (v * st)
                        );
                        return new(axis.X + (Focal * px / pz), axis.Y + (Focal * py / pz));
                    }
                    var rim = Enumerable
                        .Range(0, 48)
                        .Select(i => Math.SinCos(2 * Math.PI * i / 48))
                        .Select(a => Seen(50 * a.Cos, 50 * a.Sin))
                        .ToArray();
                    var ellipse = Ellipse
                        .Fit(rim, Enumerable.Repeat(1.0, rim.Length).ToArray())
                        .Match(fitted => fitted, no => throw new InvalidOperationException(no.ToString()));
                    var (first, second) = DiscPose.Both(ellipse, 100, axis, Focal);
                    var centre = Seen(0, 0);
                    double Off(Homography map)
                    {
                        var p = map.Map(50, 50);
                        return double.Hypot(p.X - centre.X, p.Y - centre.Y);
                    }
                    Assert.True(Math.Min(Off(first), Off(second)) < 0.05, $"{Off(first)} and {Off(second)} px");
                    // Both keep the rim.
                    foreach (var map in (Homography[])[first, second])
                    foreach (var p in rim)
                    {
                        var mm = map.Inverse().Map(p);
                        Assert.Equal(50, double.Hypot(mm.X - 50, mm.Y - 50), 0.01);
                    }
                },
                iter: 100
            );
    }

    [Fact]
    public void Four_points_go_where_they_should_and_back()
    {
        PointPx[] from = [new(0, 0), new(100, 0), new(100, 75), new(0, 75)];
        PointPx[] to = [new(120, 80), new(1500, 160), new(1440, 1210), new(90, 1100)];
        var map = Homography.FromFour(from, to);
        foreach (var (a, b) in from.Zip(to))
        {
            var there = map.Map(a);
            var back = map.Inverse().Map(there);
            Assert.Equal(b.X, there.X, 1e-6);
            Assert.Equal(b.Y, there.Y, 1e-6);
            Assert.Equal(a.X, back.X, 1e-6);
            Assert.Equal(a.Y, back.Y, 1e-6);
        }
    }
}

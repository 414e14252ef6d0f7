using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Tests.Geometry;

public sealed class RimCurveTests
{
    private static readonly Ellipse Plain = new(new(400, 300), 250, 240, 0.3);

    private static double Wave(double angle) => (9 * Math.Cos(3 * angle)) - (5 * Math.Sin(7 * angle));

    private static PointPx[] Points(Func<double, double> wave) =>
        [
            .. Enumerable
                .Range(0, 180)
                .Select(i => 2 * Math.PI * i / 180)
                .Select(angle =>
                {
                    var (at, (nx, ny)) = (Plain.At(angle), Plain.Normal(angle));
                    return new PointPx(at.X + (wave(angle) * nx), at.Y + (wave(angle) * ny));
                }),
        ];

    private static RimCurve Fitted(PointPx[] points, double stiffness = 1e-9)
    {
        var one = new double[points.Length];
        Array.Fill(one, 1);
        return RimCurve
            .Fit(points, one, stiffness)
            .Match(rim => rim, none => throw new Xunit.Sdk.XunitException($"{none}"));
    }

    [Fact]
    public void It_runs_through_the_points_of_a_wave()
    {
        var points = Points(Wave);

        var rim = Fitted(points);

        Assert.All(points, p => Assert.Equal(0, rim.DistanceTo(p), 0.05));
        Assert.Equal(Math.Sqrt(((9 * 9) + (5 * 5)) / 2.0) / rim.MeanRadius, rim.WaveShare, 0.002);
    }

    [Fact]
    public void The_points_of_an_ellipse_give_no_wave_and_its_disc_is_the_ellipse()
    {
        var rim = Fitted(Points(_ => 0));

        Assert.True(rim.IsNearlyEllipse);
        Assert.Equal(240.0 / 250, rim.Disc.Ellipse.Minor / rim.Disc.Ellipse.Major, 1e-4);
        Assert.Equal(0, rim.Disc.DepthShare, 1e-3);
    }

    [Fact]
    public void A_rim_with_waves_is_taken_to_have_grown_flat_in_part_and_says_what_that_leaves_unknown()
    {
        var disc = Fitted(Points(Wave)).Disc;

        Assert.InRange(disc.Ellipse.Minor / disc.Ellipse.Major, (240.0 / 250) + 0.02, 1);
        Assert.InRange(disc.DepthShare, 0.005, 0.02);
    }

    [Fact]
    public void A_stiff_rim_bridges_a_gap()
    {
        var points = Points(angle => angle is > 1 and < 1.05 ? -30 : 0);
        var weights = points.Select((_, i) => 2 * Math.PI * i / 180 is > 0.95 and < 1.1 ? 0.0 : 1).ToArray();

        Assert.True(RimCurve.Fit(points, weights, 1e-5).Has(out var rim, out _));

        Assert.Equal(0, rim.DistanceTo(Plain.At(1.02)), 0.1);
    }

    [Fact]
    public void Its_points_run_clockwise_from_the_top()
    {
        var points = Fitted(Points(Wave)).Points(90);

        Assert.True(Polygon.Area(points) > 0);
        Assert.True(points[0].Y < 80 && Math.Abs(points[0].X - 400) < 40, $"{points[0]}");
    }
}

using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Tests.Geometry;

public class EllipseTests
{
    [Fact]
    public void Points_of_an_ellipse_give_it_back()
    {
        var ellipse = new Ellipse(new(300, 200), 120, 80, 0.4);

        Assert.True(Fit([.. ellipse.Stations(12).Select(station => station.At)], out var fitted, out _));
        Assert.Equal(ellipse.Centre.X, fitted.Centre.X, 1e-6);
        Assert.Equal(ellipse.Centre.Y, fitted.Centre.Y, 1e-6);
        Assert.Equal(ellipse.Major, fitted.Major, 1e-6);
        Assert.Equal(ellipse.Minor, fitted.Minor, 1e-6);
        Assert.Equal(ellipse.Angle, fitted.Angle, 1e-6);
    }

    [Fact]
    public void Four_points_are_too_few() =>
        Assert.Equal(NoEllipse.TooFewPoints, Reason([new(0, 0), new(10, 0), new(10, 10), new(0, 10)]));

    [Fact]
    public void Five_points_in_one_place_are_too_few() =>
        Assert.Equal(NoEllipse.TooFewPoints, Reason([.. Enumerable.Repeat(new PointPx(7, 7), 5)]));

    [Fact]
    public void Points_on_a_line_lie_on_more_than_one_conic() =>
        Assert.Equal(NoEllipse.Ambiguous, Reason([.. Enumerable.Range(0, 8).Select(i => new PointPx(100 * i, 0))]));

    [Fact]
    public void Points_of_a_hyperbola_lie_on_an_open_conic() =>
        Assert.Equal(
            NoEllipse.Open,
            Reason([.. new[] { -4, -3, -2, -1, 1, 2, 3, 4 }.Select(x => new PointPx(x * 10, 100.0 / x))])
        );

    private static NoEllipse Reason(PointPx[] points)
    {
        Assert.False(Fit(points, out _, out var reason));
        return reason;
    }

    private static bool Fit(PointPx[] points, out Ellipse ellipse, out NoEllipse reason) =>
        Ellipse.Fit(points, Enumerable.Repeat(1.0, points.Length).ToArray()).Has(out ellipse, out reason);
}

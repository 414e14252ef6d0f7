using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outline;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Tests.Drawn;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Outline;

public class BowedSideTests
{
    [Fact]
    public void A_side_that_shows_no_edge_has_no_bow_and_shows_no_lens()
    {
        using var blank = new SKBitmap(400, 300);
        blank.Erase(SKColors.Gray);
        using var file = PhotographFile.Open("blank.png", blank.Encode(SKEncodedImageFormat.Png, 100).ToArray());
        using var photo = file.Decode(1);
        PointPx[] corners = [new(50, 50), new(350, 50), new(350, 250), new(50, 250)];

        Assert.False(BowedSide.Near(photo, corners[0], corners[1]).Has(out _, out _));
        Assert.False(LensFinder.Find(photo, corners, pxPerMm: 4).Has(out _, out var reason));
        Assert.Equal(NoLens.NoEdge, reason);
    }

    [Fact]
    public void Straight_sides_are_followed_and_their_bow_is_insignificant()
    {
        var drawn = new PlainSection();
        using var file = PhotographFile.Open("drawn.jpg", drawn.Draw());
        using var photo = file.Decode(1);
        PointPx[] corners = [.. drawn.Outline];

        Assert.True(BowedSide.Near(photo, corners[0], corners[1]).Has(out var side, out _));
        Assert.All(side.Points, point => Assert.Equal(0, OffPx(point, corners[0], corners[1]), 1.0));
        Assert.False(LensFinder.Find(photo, corners, pxPerMm: 8).Has(out _, out var reason));
        Assert.Equal(NoLens.Insignificant, reason);
    }

    private static double OffPx(PointPx point, PointPx from, PointPx to) =>
        Math.Abs(((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X))) / from.DistanceTo(to);
}

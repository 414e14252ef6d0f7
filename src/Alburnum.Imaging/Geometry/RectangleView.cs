namespace Alburnum.Imaging.Geometry;

/// <summary>How well four corners could be a rectangle of known sides seen by a usual camera.</summary>
internal static class RectangleView
{
    /// <summary>Focal lengths tried, as shares of the photograph's longer side: from wide to far. Our own choice.</summary>
    private static readonly double[] FocalPerLongSide = [0.6, 0.75, 0.95, 1.3, 2, 4];

    /// <summary>Standard deviation of the ratio of the sides: sawing tolerance and lens. Our own choice.</summary>
    private const double RatioSpread = 0.015;

    /// <summary>Standard deviation of the angle between the sides, radians. Our own choice.</summary>
    private const double AngleSpread = 0.012;

    /// <summary>Half the squared misfit in standard deviations, for the camera that suits best. 0 is perfect.</summary>
    public static double Misfit(
        IReadOnlyList<PointPx> corners,
        double widthMm,
        double heightMm,
        int photoWidthPx,
        int photoHeightPx
    )
    {
        PointPx[] to = [.. corners];
        var h = Homography.FromFour([new(0, 0), new(widthMm, 0), new(widthMm, heightMm), new(0, heightMm)], to);
        var longSide = Math.Max(photoWidthPx, photoHeightPx);
        var (cx, cy) = (photoWidthPx / 2.0, photoHeightPx / 2.0);
        var least = double.MaxValue;
        foreach (var share in FocalPerLongSide)
        {
            var f = share * longSide;
            // The map's first two columns, seen by the camera, are the rectangle's axes.
            var (ax, ay, az) = ((h.A - (cx * h.G)) / f, (h.D - (cy * h.G)) / f, h.G);
            var (bx, by, bz) = ((h.B - (cx * h.H)) / f, (h.E - (cy * h.H)) / f, h.H);
            var (a, b) = (Math.Sqrt((ax * ax) + (ay * ay) + (az * az)), Math.Sqrt((bx * bx) + (by * by) + (bz * bz)));
            var ratio = Math.Log(a / b) / RatioSpread;
            var angle = Math.Asin(Math.Clamp(((ax * bx) + (ay * by) + (az * bz)) / (a * b), -1, 1)) / AngleSpread;
            least = Math.Min(least, ((ratio * ratio) + (angle * angle)) / 2);
        }
        return least;
    }
}

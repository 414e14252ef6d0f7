namespace Alburnum.Imaging.Geometry;

/// <summary>Closed outlines of straight sides.</summary>
internal static class Polygon
{
    /// <summary>Area by the shoelace formula, px²; positive where the corners run clockwise as displayed.</summary>
    public static double Area(IReadOnlyList<PointPx> corners)
    {
        double sum = 0;
        for (var i = 0; i < corners.Count; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Count]);
            sum += (a.X * b.Y) - (b.X * a.Y);
        }
        return sum / 2;
    }

    /// <summary>Whether a convex outline, clockwise as displayed, holds a point.</summary>
    public static bool Holds(IReadOnlyList<PointPx> corners, PointPx point) =>
        Enumerable.Range(0, corners.Count).All(k => Area([corners[k], corners[(k + 1) % corners.Count], point]) > 0);
}

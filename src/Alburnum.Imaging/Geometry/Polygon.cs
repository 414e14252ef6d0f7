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
}

using Alburnum.Records.Marks;

namespace Alburnum.Workflows.Measuring;

/// <summary>Corners as people point them out: in any order, and one of them again where it was meant better.</summary>
public static class MarkedCorners
{
    /// <summary>The same corners in the order in which the reader goes round them: clockwise from the first.</summary>
    public static IReadOnlyList<MarkedPoint> InOrder(IReadOnlyList<MarkedPoint> corners)
    {
        var (x, y) = (corners.Average(corner => corner.X), corners.Average(corner => corner.Y));
        double Turn(MarkedPoint corner) => Math.Atan2(corner.Y - y, corner.X - x);
        var first = Turn(corners[0]);
        return [.. corners.OrderBy(corner => (Turn(corner) - first + (4 * Math.PI)) % (2 * Math.PI))];
    }

    /// <summary>The same corners, the one nearest to a point moved there.</summary>
    public static IEnumerable<MarkedPoint> Moved(IReadOnlyList<MarkedPoint> corners, MarkedPoint at)
    {
        var nearest = corners.MinBy(corner => double.Hypot(corner.X - at.X, corner.Y - at.Y));
        return corners.Select(corner => corner == nearest ? at : corner);
    }
}

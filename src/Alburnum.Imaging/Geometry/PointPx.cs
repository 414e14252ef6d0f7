namespace Alburnum.Imaging.Geometry;

/// <summary>A place in the upright photograph, in pixels from its top left corner; the first pixel's middle is (0.5, 0.5).</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downward.</param>
public readonly record struct PointPx(double X, double Y)
{
    /// <summary>Distance to another point, px.</summary>
    internal double DistanceTo(PointPx other) => double.Hypot(X - other.X, Y - other.Y);
}

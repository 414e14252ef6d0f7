namespace Alburnum.Imaging;

/// <summary>A place in the upright photograph, in pixels from its top left corner; the first pixel's middle is (0.5, 0.5).</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downward.</param>
public readonly record struct PointPx(double X, double Y)
{
    /// <summary>Distance to another point, px.</summary>
    public double DistanceTo(PointPx other) => double.Hypot(X - other.X, Y - other.Y);
}

/// <summary>What the user says of a touched place.</summary>
public enum TouchKind
{
    /// <summary>This is treated wood.</summary>
    Treated,

    /// <summary>This is untreated wood.</summary>
    Untreated,

    /// <summary>Do not read here.</summary>
    LeaveOut,
}

/// <summary>A place touched by the user; it speaks for the colours, or the stretch, within about 2 mm.</summary>
/// <param name="At">Where.</param>
/// <param name="Kind">What is there.</param>
public sealed record Touch(PointPx At, TouchKind Kind);

/// <summary>Two points a known length apart, for the scale.</summary>
/// <param name="From">One end.</param>
/// <param name="To">Other end.</param>
/// <param name="LengthMm">Length between them in the plane of the section, mm. Above 0.</param>
public sealed record ScaleBar(PointPx From, PointPx To, double LengthMm);

using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

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
public sealed record Touch(PointPx At, TouchKind Kind)
{
    /// <summary>How far from the place it holds, mm: about a fingertip's width on a screen. Our own choice.</summary>
    internal const double AboutMm = 2;
}

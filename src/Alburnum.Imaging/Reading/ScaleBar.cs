using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

/// <summary>Two points a known length apart, for the scale.</summary>
/// <param name="From">One end.</param>
/// <param name="To">Other end.</param>
/// <param name="LengthMm">Length between them in the plane of the section, mm. Above 0.</param>
public sealed record ScaleBar(PointPx From, PointPx To, double LengthMm);

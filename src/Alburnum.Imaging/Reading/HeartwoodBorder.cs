using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

/// <summary>Where the heartwood of a section begins, as the user shows it. Points are in upright pixels.</summary>
public abstract record HeartwoodBorder
{
    private protected HeartwoodBorder() { }
}

/// <summary>The heartwood outlined by hand.</summary>
/// <param name="PolygonPx">Three points or more around it; the last is joined to the first. May reach past the section.</param>
public sealed record OutlinedHeartwood(IReadOnlyList<PointPx> PolygonPx) : HeartwoodBorder;

/// <summary>The growth ring at which the heartwood ends: the circle through points on it gives pith and radius, even where the pith lies outside the section.</summary>
/// <param name="PointsPx">Three points or more along the ring, as far apart as the section allows.</param>
public sealed record RingOfHeartwood(IReadOnlyList<PointPx> PointsPx) : HeartwoodBorder;

/// <summary>Heartwood of a known radius about the pith.</summary>
/// <param name="PithPx">The pith; may lie outside the photograph.</param>
/// <param name="RadiusMm">Radius of the heartwood, mm. Above 0.</param>
public sealed record HeartwoodAboutPith(PointPx PithPx, double RadiusMm) : HeartwoodBorder;

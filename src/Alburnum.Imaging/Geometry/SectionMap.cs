namespace Alburnum.Imaging.Geometry;

/// <summary>From millimetres on the section to pixels of the upright photograph, and back.</summary>
/// <param name="Flat">The projective map, to the picture that a lens without distortion would have made.</param>
/// <param name="Lens">What the lens does to that picture; null where nothing is known of it.</param>
internal sealed record SectionMap(Homography Flat, RadialLens? Lens)
{
    private readonly Homography _back = Flat.Inverse();

    public PointPx ToPx(double x, double y) => Lens is null ? Flat.Map(x, y) : Lens.Drawn(Flat.Map(x, y));

    public PointPx ToPx(PointMm p) => ToPx(p.X, p.Y);

    public PointMm ToMm(PointPx p)
    {
        var at = _back.Map(Lens is null ? p : Lens.Straight(p));
        return new(at.X, at.Y);
    }

    /// <summary>Pixels per mm at a place: root of the area ratio, the lens left aside.</summary>
    public double ScaleAt(double x, double y) => Flat.ScaleAt(x, y);
}

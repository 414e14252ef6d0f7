namespace Alburnum.Imaging.Geometry;

/// <summary>A projective map of the plane, row by row, last entry scaled freely.</summary>
internal readonly record struct Homography(
    double A,
    double B,
    double C,
    double D,
    double E,
    double F,
    double G,
    double H,
    double I
)
{
    /// <summary>The map that takes four points to four points, in order. No three may lie on a line.</summary>
    public static Homography FromFour(ReadOnlySpan<PointPx> from, ReadOnlySpan<PointPx> to) =>
        UnitSquareTo(to).After(UnitSquareTo(from).Inverse());

    /// <summary>The affine map that takes three points to three points.</summary>
    public static Homography FromThree(ReadOnlySpan<PointPx> from, ReadOnlySpan<PointPx> to)
    {
        static Homography Basis(ReadOnlySpan<PointPx> p) =>
            new(p[1].X - p[0].X, p[2].X - p[0].X, p[0].X, p[1].Y - p[0].Y, p[2].Y - p[0].Y, p[0].Y, 0, 0, 1);
        return Basis(to).After(Basis(from).Inverse());
    }

    public PointPx Map(double x, double y)
    {
        var w = (G * x) + (H * y) + I;
        return new(((A * x) + (B * y) + C) / w, ((D * x) + (E * y) + F) / w);
    }

    public PointPx Map(PointPx p) => Map(p.X, p.Y);

    /// <summary>This map applied after another.</summary>
    public Homography After(Homography o) =>
        new(
            (A * o.A) + (B * o.D) + (C * o.G),
            (A * o.B) + (B * o.E) + (C * o.H),
            (A * o.C) + (B * o.F) + (C * o.I),
            (D * o.A) + (E * o.D) + (F * o.G),
            (D * o.B) + (E * o.E) + (F * o.H),
            (D * o.C) + (E * o.F) + (F * o.I),
            (G * o.A) + (H * o.D) + (I * o.G),
            (G * o.B) + (H * o.E) + (I * o.H),
            (G * o.C) + (H * o.F) + (I * o.I)
        );

    public Homography Inverse() =>
        new(
            (E * I) - (F * H),
            (C * H) - (B * I),
            (B * F) - (C * E),
            (F * G) - (D * I),
            (A * I) - (C * G),
            (C * D) - (A * F),
            (D * H) - (E * G),
            (B * G) - (A * H),
            (A * E) - (B * D)
        );

    /// <summary>Length in the target of a unit length in the source at a place: root of the area ratio.</summary>
    public double ScaleAt(double x, double y)
    {
        var w = (G * x) + (H * y) + I;
        var determinant = (A * ((E * I) - (F * H))) - (B * ((D * I) - (F * G))) + (C * ((D * H) - (E * G)));
        return Math.Sqrt(Math.Abs(determinant / (w * w * w)));
    }

    // Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), section 2.2.3.
    private static Homography UnitSquareTo(ReadOnlySpan<PointPx> p)
    {
        var (dx1, dx2, sx) = (p[1].X - p[2].X, p[3].X - p[2].X, p[0].X - p[1].X + p[2].X - p[3].X);
        var (dy1, dy2, sy) = (p[1].Y - p[2].Y, p[3].Y - p[2].Y, p[0].Y - p[1].Y + p[2].Y - p[3].Y);
        var d = (dx1 * dy2) - (dx2 * dy1);
        var g = ((sx * dy2) - (dx2 * sy)) / d;
        var h = ((dx1 * sy) - (sx * dy1)) / d;
        return new(
            p[1].X - p[0].X + (g * p[1].X),
            p[3].X - p[0].X + (h * p[3].X),
            p[0].X,
            p[1].Y - p[0].Y + (g * p[1].Y),
            p[3].Y - p[0].Y + (h * p[3].Y),
            p[0].Y,
            g,
            h,
            1
        );
    }
}

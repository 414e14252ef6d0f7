namespace Alburnum.DrawnSections;

/// <summary>Where the camera stands and how it draws: a pinhole with radial distortion.</summary>
/// <param name="WidthPx">Picture width.</param>
/// <param name="HeightPx">Picture height.</param>
/// <param name="FocalPx">Focal length in pixels.</param>
/// <param name="PixelsPerMm">Scale at the middle of the face.</param>
/// <param name="Tilt">Angle between the optical axis and the face's normal, radians.</param>
/// <param name="TiltAzimuth">Direction in the face towards which the camera leans.</param>
/// <param name="Roll">Turn of the camera about its axis.</param>
/// <param name="Distortion">Radial distortion: an image point at radius r (in focal lengths) came from r(1 + k r²).</param>
/// <param name="AimMm">Point of the face at the picture's middle.</param>
public sealed record Lens(
    int WidthPx,
    int HeightPx,
    double FocalPx,
    double PixelsPerMm,
    double Tilt,
    double TiltAzimuth,
    double Roll,
    double Distortion,
    Point AimMm
)
{
    /// <summary>Distance from the lens to the aim point, mm.</summary>
    public double DistanceMm => FocalPx / PixelsPerMm;

    /// <summary>Half the picture's diagonal, pixels.</summary>
    private double HalfDiagonalPx => Math.Sqrt((double)WidthPx * WidthPx + (double)HeightPx * HeightPx) / 2;

    /// <summary>This camera with a lens that draws the picture's corners nearer to its middle by about a share of their distance (a barrel), or farther.</summary>
    public Lens Bowed(double share)
    {
        var corner = HalfDiagonalPx / FocalPx;
        return this with { Distortion = share / (corner * corner) };
    }

    /// <summary>Lens position and the camera's right, down and forward directions, in section coordinates with z away from the camera.</summary>
    public (Space Eye, Space Right, Space Down, Space Forward) Pose()
    {
        var (sinTilt, cosTilt) = Math.SinCos(Tilt);
        var (sinAzimuth, cosAzimuth) = Math.SinCos(TiltAzimuth);
        var (sinRoll, cosRoll) = Math.SinCos(Roll);
        // Lean forward towards the azimuth, then turn about the axis.
        Space forward = new(-sinTilt * cosAzimuth, -sinTilt * sinAzimuth, cosTilt);
        Space leaning = new(cosTilt * cosAzimuth, cosTilt * sinAzimuth, sinTilt);
        Space across = new(-sinAzimuth, cosAzimuth, 0);
        var right = leaning * cosAzimuth + across * -sinAzimuth;
        var down = leaning * sinAzimuth + across * cosAzimuth;
        var eye = new Space(AimMm.X, AimMm.Y, 0) + forward * -DistanceMm;
        return (eye, right * cosRoll + down * sinRoll, down * cosRoll + right * -sinRoll, forward);
    }

    /// <summary>Where a point of the plane z = 0 falls on the picture, pixels.</summary>
    public Point Project(Point mm)
    {
        var (eye, right, down, forward) = Pose();
        var d = new Space(mm.X, mm.Y, 0) - eye;
        var depth = Space.Dot(d, forward);
        var x = Space.Dot(d, right) / depth;
        var y = Space.Dot(d, down) / depth;
        var straight = Math.Sqrt(x * x + y * y);
        var bent = straight;
        for (var k = 0; k < 20; k++)
            bent = straight / (1 + Distortion * bent * bent);
        var factor = straight > 1e-12 ? bent / straight : 1;
        return new(WidthPx / 2.0 + FocalPx * x * factor, HeightPx / 2.0 + FocalPx * y * factor);
    }

    /// <summary>Direction of the ray through a picture point, not normalised.</summary>
    public Space Ray(double px, double py, Space right, Space down, Space forward)
    {
        var x = (px - WidthPx / 2.0) / FocalPx;
        var y = (py - HeightPx / 2.0) / FocalPx;
        var factor = 1 + Distortion * (x * x + y * y);
        return forward + right * (x * factor) + down * (y * factor);
    }
}

/// <summary>A point or direction in space, mm.</summary>
public readonly record struct Space(double X, double Y, double Z)
{
    public static Space operator +(Space a, Space b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Space operator -(Space a, Space b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Space operator *(Space a, double k) => new(a.X * k, a.Y * k, a.Z * k);

    public static double Dot(Space a, Space b) => a.X * b.X + a.Y * b.Y + a.Z * b.Z;
}

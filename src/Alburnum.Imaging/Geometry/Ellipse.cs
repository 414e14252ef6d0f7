using Alburnum.Imaging.Outcomes;

namespace Alburnum.Imaging.Geometry;

/// <summary>Why no ellipse runs through some points.</summary>
internal enum NoEllipse
{
    /// <summary>Fewer than five points, or all of them in one place.</summary>
    TooFewPoints,

    /// <summary>More than one conic fits them: they lie on a line, or in four places.</summary>
    Ambiguous,

    /// <summary>The conic that fits them best is open.</summary>
    Open,
}

/// <summary>An ellipse in the photograph.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="Major">Longer half axis, px.</param>
/// <param name="Minor">Shorter half axis, px.</param>
/// <param name="Angle">Direction of the longer axis, radians.</param>
internal readonly record struct Ellipse(PointPx Centre, double Major, double Minor, double Angle)
{
    /// <summary>Coefficients of a conic, but for its scale.</summary>
    private const int Unknowns = 5;

    /// <summary>A conic whose 4ac − b² is not above this is a parabola or a hyperbola; a, b and c are of the order of 1. Above rounding: our own choice.</summary>
    private const double LeastDiscriminant = 1e-9;

    /// <summary>Point at a parameter, radians from the longer axis.</summary>
    public PointPx At(double parameter)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var (x, y) = (Major * Math.Cos(parameter), Minor * Math.Sin(parameter));
        return new(Centre.X + (x * cos) - (y * sin), Centre.Y + (x * sin) + (y * cos));
    }

    /// <summary>Outward unit normal at a parameter.</summary>
    public (double X, double Y) Normal(double parameter)
    {
        var (sin, cos) = Math.SinCos(Angle);
        var (x, y) = (Minor * Math.Cos(parameter), Major * Math.Sin(parameter));
        var length = double.Hypot(x, y);
        return (((x * cos) - (y * sin)) / length, ((x * sin) + (y * cos)) / length);
    }

    /// <summary>Points at even parameters, with outward unit normals.</summary>
    public (PointPx At, double Nx, double Ny)[] Stations(int count)
    {
        var stations = new (PointPx, double, double)[count];
        for (var i = 0; i < count; i++)
        {
            var a = 2 * Math.PI * i / count;
            var (nx, ny) = Normal(a);
            stations[i] = (At(a), nx, ny);
        }
        return stations;
    }

    /// <summary>
    /// The affine map from a disc in mm (its box's top left at 0, 0) to the ellipse, that turns nothing: directions on the section keep their place in the picture.
    /// </summary>
    public Homography FromDisc(double diameterMm)
    {
        var r = diameterMm / 2;
        var (sin, cos) = Math.SinCos(Angle);
        var (p, q) = (Major / r, Minor / r);
        var (a, b, d) = ((p * cos * cos) + (q * sin * sin), (p - q) * sin * cos, (p * sin * sin) + (q * cos * cos));
        return new(a, b, Centre.X - (a * r) - (b * r), b, d, Centre.Y - (b * r) - (d * r), 0, 0, 1);
    }

    /// <summary>Least squares on weighted points.</summary>
    public static Outcome<Ellipse, NoEllipse> Fit(ReadOnlySpan<PointPx> points, ReadOnlySpan<double> weights)
    {
        if (points.Length < Unknowns)
            return NoEllipse.TooFewPoints;
        double cx = 0,
            cy = 0,
            sw = 0,
            size = 0;
        for (var i = 0; i < points.Length; i++)
            (cx, cy, sw) = (cx + (weights[i] * points[i].X), cy + (weights[i] * points[i].Y), sw + weights[i]);
        (cx, cy) = (cx / sw, cy / sw);
        for (var i = 0; i < points.Length; i++)
            size += weights[i] * double.Hypot(points[i].X - cx, points[i].Y - cy) / sw;
        if (!(size > 0))
            return NoEllipse.TooFewPoints;
        // a·x² + b·xy + c·y² + d·x + e·y = 1 about a point inside.
        var normal = new double[Unknowns, Unknowns];
        var right = new double[Unknowns];
        Span<double> v = stackalloc double[Unknowns];
        for (var i = 0; i < points.Length; i++)
        {
            var (x, y) = ((points[i].X - cx) / size, (points[i].Y - cy) / size);
            (v[0], v[1], v[2], v[3], v[4]) = (x * x, x * y, y * y, x, y);
            for (var j = 0; j < Unknowns; j++)
            {
                right[j] += weights[i] * v[j];
                for (var k = 0; k < Unknowns; k++)
                    normal[j, k] += weights[i] * v[j] * v[k];
            }
        }
        if (!LinearSystem.Solve(normal, right).Has(out var s, out _))
            return NoEllipse.Ambiguous;
        var (a, b, c, dd, e) = (s[0], s[1], s[2], s[3], s[4]);
        var discriminant = (4 * a * c) - (b * b);
        if (!(discriminant > LeastDiscriminant))
            return NoEllipse.Open;
        var x0 = ((b * e) - (2 * c * dd)) / discriminant;
        var y0 = ((b * dd) - (2 * a * e)) / discriminant;
        var level = 1 + (a * x0 * x0) + (b * x0 * y0) + (c * y0 * y0);
        var mean = (a + c) / 2;
        var half = double.Hypot((a - c) / 2, b / 2);
        var (low, high) = (mean - half, mean + half);
        if (!(low > 0 && level > 0))
            return NoEllipse.Open;
        // The longer axis lies along the smaller eigenvalue.
        var angle = 0.5 * Math.Atan2(-b, c - a);
        return new Ellipse(
            new(cx + (x0 * size), cy + (y0 * size)),
            Math.Sqrt(level / low) * size,
            Math.Sqrt(level / high) * size,
            angle
        );
    }
}

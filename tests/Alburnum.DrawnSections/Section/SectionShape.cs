namespace Alburnum.DrawnSections;

/// <summary>The outline of a piece across the grain, mm, centred on the origin, with its small departures from the ideal.</summary>
/// <param name="Name">rectangle, square, round, half-round, quarter or core.</param>
/// <param name="SizesMm">The sizes a person would state: width and height, or diameter.</param>
/// <param name="Faces">Sides, clockwise.</param>
/// <param name="Outline">What a person would click: the corners, or points of the rim.</param>
/// <param name="TreatedFaces">For each face, whether preservative entered there.</param>
public sealed record SectionShape(
    string Name,
    IReadOnlyList<double> SizesMm,
    IReadOnlyList<Face> Faces,
    IReadOnlyList<Point> Outline,
    IReadOnlyList<bool> TreatedFaces
)
{
    /// <summary>Radius to which sharp edges are worn, mm.</summary>
    public double ArrisMm { get; init; } = 0.6;

    /// <summary>How far the sawn or peeled surface strays from the ideal one, mm.</summary>
    public double WavinessMm { get; init; } = 0.08;

    public int Seed { get; init; }

    /// <summary>Checks that gape at the outline, so that the ground shows in them.</summary>
    public IReadOnlyList<Gap> Gaps { get; init; } = [];

    /// <summary>Half of the greater extent, mm.</summary>
    public double ReachMm { get; init; }

    /// <summary>Half the width and half the height of the surrounding rectangle, mm.</summary>
    public Point HalfExtent { get; init; }

    public static SectionShape Rectangle(double widthMm, double heightMm)
    {
        var x = widthMm / 2;
        var y = heightMm / 2;
        Point[] corners = [new(-x, -y), new(x, -y), new(x, y), new(-x, y)];
        return new(
            Math.Abs(widthMm - heightMm) < 1e-9 ? "square" : "rectangle",
            [widthMm, heightMm],
            Sides(corners),
            corners,
            [true, true, true, true]
        )
        {
            ReachMm = Math.Max(x, y),
            HalfExtent = new(x, y),
        };
    }

    public static SectionShape Round(double diameterMm)
    {
        var radius = diameterMm / 2;
        return new(
            "round",
            [diameterMm],
            [new RoundFace(new(0, 0), radius, -Math.PI / 2, 2 * Math.PI)],
            [.. Enumerable.Range(0, 12).Select(k => Point.Towards(-Math.PI / 2 + k * Math.PI / 6) * radius)],
            [true]
        )
        {
            ReachMm = radius,
            HalfExtent = new(radius, radius),
            WavinessMm = 0.25,
        };
    }

    /// <summary>A log that grew as it did: no circle. Its stated diameter is its girth over π.</summary>
    /// <param name="diameterMm">Girth over π.</param>
    /// <param name="waves">Cosine and sine of the harmonics of its radius from the second, as shares of the mean radius.</param>
    /// <param name="flats">Flats.</param>
    /// <param name="gaps">Checks that gape at the rim.</param>
    public static SectionShape Log(
        double diameterMm,
        IReadOnlyList<(double Cos, double Sin)> waves,
        IReadOnlyList<LogFlat> flats,
        IReadOnlyList<Gap> gaps
    )
    {
        var face = new LogFace(diameterMm, waves, flats);
        return Round(diameterMm) with
        {
            Faces = [face],
            Outline = [.. Enumerable.Range(0, 12).Select(k => face.At(k * face.LengthMm / 12))],
            ReachMm = face.ReachMm,
            HalfExtent = new(face.ReachMm, face.ReachMm),
            Gaps = gaps,
        };
    }

    /// <summary>Half of a pole: the flat sawn side on top, the round below.</summary>
    public static SectionShape HalfRound(double diameterMm)
    {
        var radius = diameterMm / 2;
        var top = -radius / 2;
        Point left = new(-radius, top);
        Point right = new(radius, top);
        return new(
            "half-round",
            [diameterMm],
            [new FlatFace(left, right), new RoundFace(new(0, top), radius, 0, Math.PI)],
            [left, right, new(0, top + radius)],
            [true, true]
        )
        {
            ReachMm = radius,
            HalfExtent = new(radius, radius / 2),
        };
    }

    /// <summary>A quarter of a pole: two flat sawn sides meeting at the top left, the round below right.</summary>
    public static SectionShape Quarter(double diameterMm)
    {
        var radius = diameterMm / 2;
        Point heart = new(-radius / 2, -radius / 2);
        Point right = heart + new Point(radius, 0);
        Point low = heart + new Point(0, radius);
        return new(
            "quarter",
            [diameterMm],
            [new FlatFace(heart, right), new RoundFace(heart, radius, 0, Math.PI / 2), new FlatFace(low, heart)],
            [heart, right, low],
            [true, true, true]
        )
        {
            ReachMm = radius / 2,
            HalfExtent = new(radius / 2, radius / 2),
        };
    }

    /// <summary>An increment core lying flat; preservative came in at its left end.</summary>
    public static SectionShape Core(double lengthMm, double thicknessMm)
    {
        var strip = Rectangle(lengthMm, thicknessMm);
        return strip with { Name = "core", TreatedFaces = [false, false, false, true], ArrisMm = 0.3 };
    }

    /// <summary>How far the true surface lies inside the ideal one at a place on a face, mm.</summary>
    public double SurfaceMm(int face, double alongMm)
    {
        if (WavinessMm <= 0)
            return 0;
        var seed = Seed + 31 * face;
        var slow = Faces[face] is { IsClosed: true } round
            ? Noise.Wrapped(alongMm / round.LengthMm * 9, 0, 9, seed)
            : Noise.Along(alongMm / 22, seed);
        return WavinessMm * (0.8 * slow + 0.25 * Noise.Along(alongMm / 0.9, seed + 7));
    }

    /// <summary>Distance inside the true outline, mm; negative outside. Near the outline only it is exact.</summary>
    public double InsideMm(double x, double y)
    {
        var inside = double.MaxValue;
        for (var face = 0; face < Faces.Count; face++)
        {
            var (along, depth) = Faces[face].Locate(x, y);
            if (Math.Abs(depth) < 2)
                depth -= SurfaceMm(face, along);
            inside = face == 0 ? depth : Smooth.Min(inside, depth, 1.7 * ArrisMm);
        }
        return OutsideGapsMm(inside, x, y);
    }

    /// <summary>Distance inside the ideal outline, mm: quick and smooth, for shadows and far looks.</summary>
    public double RoughlyInsideMm(double x, double y)
    {
        // The two usual shapes have a shorter way to the same number.
        if (Faces[0] is LogFace log)
            return OutsideGapsMm(log.WithinMm(x, y), x, y);
        if (Name == "round")
            return ReachMm - Math.Sqrt(x * x + y * y);
        if (Faces.Count == 4)
        {
            var right = Math.Abs(x) - HalfExtent.X;
            var down = Math.Abs(y) - HalfExtent.Y;
            return right > 0 && down > 0 ? -Math.Sqrt(right * right + down * down) : -Math.Max(right, down);
        }
        var inside = double.MaxValue;
        double outside = 0;
        foreach (var face in Faces)
        {
            var depth = face.Locate(x, y).DepthMm;
            inside = Math.Min(inside, depth);
            outside += depth < 0 ? depth * depth : 0;
        }
        return inside < 0 ? -Math.Sqrt(outside) : inside;
    }

    private double OutsideGapsMm(double insideMm, double x, double y)
    {
        foreach (var gap in Gaps)
            insideMm = Math.Min(insideMm, gap.OutsideMm(x, y));
        return insideMm;
    }

    private static Face[] Sides(Point[] corners) =>
        [.. corners.Select((corner, k) => new FlatFace(corner, corners[(k + 1) % corners.Length]))];
}

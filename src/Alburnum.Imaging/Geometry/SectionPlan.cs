using Alburnum.Timber;

namespace Alburnum.Imaging.Geometry;

/// <summary>A place on a section or a card in mm, x to the right and y downward from the top left of its bounding box.</summary>
/// <param name="X">To the right, mm.</param>
/// <param name="Y">Downward, mm.</param>
public readonly record struct PointMm(double X, double Y);

/// <summary>One lateral face, as a curve walked clockwise with the wood on its right.</summary>
internal abstract record PlanFace(int Number, double LengthMm, bool Closed)
{
    /// <summary>The place <paramref name="s"/> mm along the face and <paramref name="t"/> mm inward.</summary>
    public abstract PointMm At(double s, double t);

    /// <summary>How far along and how far inward a place lies.</summary>
    public abstract (double S, double T) Locate(PointMm p);
}

/// <summary>A flat face.</summary>
internal sealed record FlatFace(int Number, PointMm From, PointMm To)
    : PlanFace(Number, double.Hypot(To.X - From.X, To.Y - From.Y), Closed: false)
{
    private double Dx => (To.X - From.X) / LengthMm;

    private double Dy => (To.Y - From.Y) / LengthMm;

    public override PointMm At(double s, double t) => new(From.X + (s * Dx) - (t * Dy), From.Y + (s * Dy) + (t * Dx));

    public override (double S, double T) Locate(PointMm p)
    {
        var (x, y) = (p.X - From.X, p.Y - From.Y);
        return ((x * Dx) + (y * Dy), (y * Dx) - (x * Dy));
    }
}

/// <summary>A round face about a centre; angles clockwise as displayed, from the x axis, radians.</summary>
internal sealed record ArcFace(
    int Number,
    PointMm Centre,
    double RadiusMm,
    double StartAngle,
    double Sweep,
    bool Closed
) : PlanFace(Number, RadiusMm * Sweep, Closed)
{
    public override PointMm At(double s, double t)
    {
        var (sin, cos) = Math.SinCos(StartAngle + (s / RadiusMm));
        return new(Centre.X + ((RadiusMm - t) * cos), Centre.Y + ((RadiusMm - t) * sin));
    }

    public override (double S, double T) Locate(PointMm p)
    {
        var (x, y) = (p.X - Centre.X, p.Y - Centre.Y);
        var turn = Math.Atan2(y, x) - StartAngle;
        turn -= Math.Floor(turn / (2 * Math.PI)) * 2 * Math.PI;
        // Between the arc's ends on the far side: nearest end decides.
        if (turn > Sweep + ((2 * Math.PI) - Sweep) / 2)
            turn -= 2 * Math.PI;
        return (turn * RadiusMm, RadiusMm - double.Hypot(x, y));
    }
}

/// <summary>The one face of a round that is no circle.</summary>
internal sealed record CurveFace(int Number, ClosedCurve Curve) : PlanFace(Number, Curve.LengthMm, Closed: true)
{
    public override PointMm At(double s, double t) => Curve.At(s, t);

    public override (double S, double T) Locate(PointMm p) => Curve.Locate(p);
}

/// <summary>The section drawn in mm: its faces, and how deep each can be read.</summary>
internal sealed class SectionPlan
{
    /// <summary>Halvings in which a reach is found, and the difference within which two faces are as near, mm: far finer than any depth.</summary>
    private const int Halvings = 20;

    private const double SameMm = 1e-6;

    /// <summary>The same of a curve, whose normals are those of chords.</summary>
    private const double SameOnCurveMm = 0.05;

    private readonly double _sameMm = SameMm;

    private readonly Func<PointMm, double> _inward;

    private SectionPlan(double widthMm, double heightMm, IReadOnlyList<PlanFace> faces, Func<PointMm, double> inward)
    {
        (WidthMm, HeightMm, Faces) = (widthMm, heightMm, faces);
        _inward = inward;
        if (faces is [CurveFace])
            _sameMm = SameOnCurveMm;
    }

    public double WidthMm { get; }

    public double HeightMm { get; }

    /// <summary>Faces whose depth is read, clockwise.</summary>
    public IReadOnlyList<PlanFace> Faces { get; }

    /// <summary>Distance from the nearest face that is read, mm; negative outside the wood.</summary>
    public double InwardMm(PointMm p) => _inward(p);

    /// <summary>Greatest depth that can be read from any face, mm: half the thickness, or the length of a core.</summary>
    public required double ReachMm { get; init; }

    /// <summary>The three places by which half a round (the flat's ends and the middle of the arc) or a quarter (around its square corner) is pointed out; empty otherwise.</summary>
    public IReadOnlyList<PointMm> ThreePoints { get; private init; } = [];

    /// <summary>How deep a face can be read at a place before another face is nearer, mm.</summary>
    public double ReachAt(PlanFace face, double s)
    {
        double near = 0;
        double far = ReachMm;
        // A place t inward belongs to this face while no face is nearer; true up to one depth, false beyond.
        for (var i = 0; i < Halvings; i++)
        {
            var t = (near + far) / 2;
            if (InwardMm(face.At(s, t)) >= t - _sameMm)
                near = t;
            else
                far = t;
        }
        return near;
    }

    public static SectionPlan Rectangle(double w, double h)
    {
        PointMm[] c = [new(0, 0), new(w, 0), new(w, h), new(0, h)];
        return new(
            w,
            h,
            [.. Enumerable.Range(0, 4).Select(k => new FlatFace(k + 1, c[k], c[(k + 1) % 4]))],
            p => Math.Min(Math.Min(p.X, w - p.X), Math.Min(p.Y, h - p.Y))
        )
        {
            ReachMm = Math.Min(w, h) / 2,
        };
    }

    /// <summary>A core on its side: only the outer end, its top edge, is a face.</summary>
    public static SectionPlan Core(double diameterMm, double lengthMm) =>
        new(
            diameterMm,
            lengthMm,
            [new FlatFace(1, new(0, 0), new(diameterMm, 0))],
            p =>
                p.X < 0 || p.X > diameterMm
                    ? -Math.Max(-p.X, p.X - diameterMm)
                    : Math.Min(p.Y, p.Y > lengthMm ? lengthMm - p.Y : double.MaxValue)
        )
        {
            ReachMm = lengthMm,
        };

    public static SectionPlan Round(double diameterMm, double startAngle)
    {
        var r = diameterMm / 2;
        var face = new ArcFace(1, new(r, r), r, startAngle, 2 * Math.PI, Closed: true);
        return new(diameterMm, diameterMm, [face], p => r - double.Hypot(p.X - r, p.Y - r)) { ReachMm = r };
    }

    /// <summary>A round that is no circle; its positions start at the curve's first place.</summary>
    public static SectionPlan Rim(ClosedCurve curve) =>
        new(curve.WidthMm, curve.HeightMm, [new CurveFace(1, curve)], p => curve.Locate(p).InwardMm)
        {
            ReachMm = curve.ReachMm,
        };

    /// <summary>Half a round, flat side up: flat face along the top, then the arc below.</summary>
    public static SectionPlan HalfRound(double diameterMm)
    {
        var r = diameterMm / 2;
        return new(
            diameterMm,
            r,
            [new FlatFace(1, new(0, 0), new(diameterMm, 0)), new ArcFace(2, new(r, 0), r, 0, Math.PI, Closed: false)],
            p => Math.Min(p.Y, r - double.Hypot(p.X - r, p.Y))
        )
        {
            ReachMm = r / 2,
            ThreePoints = [new(0, 0), new(diameterMm, 0), new(r, r)],
        };
    }

    /// <summary>A quarter of a round, square corner at the top left: flat up the left side, flat along the top, then the arc.</summary>
    public static SectionPlan Quartered(double diameterMm)
    {
        var r = diameterMm / 2;
        return new(
            r,
            r,
            [
                new FlatFace(1, new(0, r), new(0, 0)),
                new FlatFace(2, new(0, 0), new(r, 0)),
                new ArcFace(3, new(0, 0), r, 0, Math.PI / 2, Closed: false),
            ],
            p => Math.Min(Math.Min(p.X, p.Y), r - double.Hypot(p.X, p.Y))
        )
        {
            ReachMm = r * (Math.Sqrt(2) - 1),
            ThreePoints = [new(0, r), new(0, 0), new(r, 0)],
        };
    }

    /// <summary>The plan for a shape and nominal size.</summary>
    /// <param name="section">Nominal size.</param>
    /// <param name="shape">Outline.</param>
    /// <param name="turned">True where a sawn section's first displayed face is its height.</param>
    /// <param name="startAngle">For a round section, the angle of its first rim point.</param>
    public static SectionPlan For(Section section, SectionShape shape, bool turned, double startAngle)
    {
        switch (shape, section)
        {
            case (SectionShape.Rectangle, RectangularSection r):
                return turned ? Rectangle(r.HeightMm, r.WidthMm) : Rectangle(r.WidthMm, r.HeightMm);
            case (SectionShape.CoreStrip, RectangularSection r):
                return Core(r.WidthMm, r.HeightMm);
            case (SectionShape.Round, RoundSection r):
                return Round(r.DiameterMm, startAngle);
            case (SectionShape.HalfRound, RoundSection or HalfRoundSection):
                return HalfRound(section.SizesMm[0]);
            case (SectionShape.Quartered, RoundSection or QuarteredSection):
                return Quartered(section.SizesMm[0]);
            default:
                throw new ArgumentException(
                    $"A {shape} outline needs another kind of section than {section.Label}.",
                    nameof(section)
                );
        }
    }
}

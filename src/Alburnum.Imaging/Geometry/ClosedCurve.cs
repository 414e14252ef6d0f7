namespace Alburnum.Imaging.Geometry;

/// <summary>A smooth closed curve on the section, walked clockwise with the wood on its right.</summary>
internal sealed class ClosedCurve
{
    /// <summary>Places along it: of a round 120 mm wide, a chord strays from the curve by less than a thousandth of a mm. Our own choice.</summary>
    private const int Places = 720;

    /// <summary>Cells of the lattice in which the nearest place is kept, across its box. Our own choice.</summary>
    private const int Cells = 64;

    /// <summary>The lattice reaches so far past the box, as a share of it. Our own choice.</summary>
    private const double PastShare = 0.1;

    /// <summary>Its farthest place inward is found to within this, mm: far finer than any depth.</summary>
    private const double FinestMm = 0.02;

    private readonly PointMm[] _at = new PointMm[Places];
    private readonly (double X, double Y)[] _inward = new (double, double)[Places];
    private readonly short[] _nearest = new short[Cells * Cells];
    private readonly double _stepMm;

    /// <summary>The curve through points that lie close together around it.</summary>
    public ClosedCurve(IReadOnlyList<PointMm> points)
    {
        LengthMm = Length(points);
        _stepMm = LengthMm / Places;
        var (k, left) = (0, 0.0);
        for (var i = 0; i < Places; i++)
        {
            var (p, q) = (points[k], points[(k + 1) % points.Count]);
            var side = double.Hypot(q.X - p.X, q.Y - p.Y);
            while (left > side && k + 1 < points.Count)
            {
                (left, k) = (left - side, k + 1);
                (p, q) = (points[k], points[(k + 1) % points.Count]);
                side = double.Hypot(q.X - p.X, q.Y - p.Y);
            }
            var share = side > 0 ? Math.Min(1, left / side) : 0;
            _at[i] = new(p.X + (share * (q.X - p.X)), p.Y + (share * (q.Y - p.Y)));
            left += _stepMm;
        }
        for (var i = 0; i < Places; i++)
        {
            var (before, after) = (_at[(i + Places - 2) % Places], _at[(i + 2) % Places]);
            var (dx, dy) = (after.X - before.X, after.Y - before.Y);
            var length = double.Hypot(dx, dy);
            _inward[i] = (-dy / length, dx / length);
        }
        WidthMm = _at.Max(p => p.X);
        HeightMm = _at.Max(p => p.Y);
        for (var cell = 0; cell < _nearest.Length; cell++)
            _nearest[cell] = (short)NearestOfAll(Middle(cell % Cells, cell / Cells));
        ReachMm = Farthest();
    }

    /// <summary>Length around it, mm.</summary>
    public double LengthMm { get; }

    /// <summary>Its farthest place to the right, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Its lowest place, mm.</summary>
    public double HeightMm { get; }

    /// <summary>The greatest distance inward of any place, mm.</summary>
    public double ReachMm { get; }

    /// <summary>Length of the closed line through points.</summary>
    public static double Length(IReadOnlyList<PointMm> points) =>
        Enumerable
            .Range(0, points.Count)
            .Sum(k =>
                double.Hypot(
                    points[(k + 1) % points.Count].X - points[k].X,
                    points[(k + 1) % points.Count].Y - points[k].Y
                )
            );

    /// <summary>The place <paramref name="s"/> mm along the curve and <paramref name="t"/> mm inward.</summary>
    public PointMm At(double s, double t)
    {
        var along = s / _stepMm;
        var whole = Math.Floor(along);
        var (share, i) = (along - whole, (int)(((whole % Places) + Places) % Places));
        var j = (i + 1) % Places;
        var (p, q, n, m) = (_at[i], _at[j], _inward[i], _inward[j]);
        var (nx, ny) = (n.X + (share * (m.X - n.X)), n.Y + (share * (m.Y - n.Y)));
        var far = t / double.Hypot(nx, ny);
        return new(p.X + (share * (q.X - p.X)) + (far * nx), p.Y + (share * (q.Y - p.Y)) + (far * ny));
    }

    /// <summary>How far along and how far inward a place lies; below 0 outside.</summary>
    public (double S, double InwardMm) Locate(PointMm p)
    {
        var i = Climbed(p, _nearest[(Cell(p.Y, HeightMm) * Cells) + Cell(p.X, WidthMm)]);
        var (before, after) = (Beside(p, (i + Places - 1) % Places), Beside(p, i));
        return before.Apart < after.Apart ? (before.S, before.InwardMm) : (after.S, after.InwardMm);
    }

    private static int Cell(double mm, double sizeMm) =>
        Math.Clamp((int)(((mm / sizeMm) + PastShare) / (1 + (2 * PastShare)) * Cells), 0, Cells - 1);

    private PointMm Middle(int x, int y) => new(Place(x) * WidthMm, Place(y) * HeightMm);

    private static double Place(int cell) => ((cell + 0.5) / Cells * (1 + (2 * PastShare))) - PastShare;

    private int NearestOfAll(PointMm p)
    {
        var (best, least) = (0, double.MaxValue);
        for (var i = 0; i < Places; i++)
            if (Squared(p, i) is var apart && apart < least)
                (best, least) = (i, apart);
        return best;
    }

    // The greatest distance inward: the best of all cells, then of ever nearer places about it.
    private double Farthest()
    {
        var at = Enumerable
            .Range(0, _nearest.Length)
            .Select(cell => Middle(cell % Cells, cell / Cells))
            .MaxBy(place => Locate(place).InwardMm);
        for (var step = Math.Max(WidthMm, HeightMm) / Cells; step > FinestMm; step /= 2)
        {
            PointMm[] about =
            [
                at,
                new(at.X - step, at.Y),
                new(at.X + step, at.Y),
                new(at.X, at.Y - step),
                new(at.X, at.Y + step),
            ];
            at = about.MaxBy(place => Locate(place).InwardMm);
        }
        return Locate(at).InwardMm;
    }

    // The place nearest to p, from one that is near.
    private int Climbed(PointMm p, int i)
    {
        var apart = Squared(p, i);
        for (var way = 1; way >= -1; way -= 2)
        {
            while (true)
            {
                var next = (i + way + Places) % Places;
                var to = Squared(p, next);
                if (to >= apart)
                    break;
                (i, apart) = (next, to);
            }
        }
        return i;
    }

    private double Squared(PointMm p, int i)
    {
        var (dx, dy) = (p.X - _at[i].X, p.Y - _at[i].Y);
        return (dx * dx) + (dy * dy);
    }

    // Where a place lies beside one chord, and how far from it.
    private (double S, double InwardMm, double Apart) Beside(PointMm p, int i)
    {
        var (a, b) = (_at[i], _at[(i + 1) % Places]);
        var (dx, dy, x, y) = (b.X - a.X, b.Y - a.Y, p.X - a.X, p.Y - a.Y);
        var length = double.Hypot(dx, dy);
        var share = Math.Clamp(((x * dx) + (y * dy)) / (length * length), 0, 1);
        var apart = double.Hypot(x - (share * dx), y - (share * dy));
        return ((i + share) * _stepMm, (y * dx) - (x * dy) >= 0 ? apart : -apart, apart);
    }
}

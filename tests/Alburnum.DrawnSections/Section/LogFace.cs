namespace Alburnum.DrawnSections;

/// <summary>A flat on a log: a chord at a share of the mean radius from its centre.</summary>
/// <param name="Angle">Direction of its middle, radians.</param>
/// <param name="Share">Distance from the centre as a share of the mean radius, below 1.</param>
public readonly record struct LogFlat(double Angle, double Share);

/// <summary>The rim of a log that is no circle: waves of its radius about the origin, and flats.</summary>
/// <remarks>Run clockwise from the top, as a circle is. Its length is that of the circle of the diameter that a tape around it would give.</remarks>
public sealed record LogFace : Face
{
    private const int Places = 2880;

    /// <summary>Corners of a flat are as round as this, as a share of the mean radius.</summary>
    private const double FlatRound = 0.01;

    private readonly double[] _radius = new double[Places];
    private readonly double[] _along = new double[Places + 1];

    /// <param name="diameterMm">Girth over π.</param>
    /// <param name="waves">Cosine and sine of the harmonics from the second, as shares of the mean radius.</param>
    /// <param name="flats">Flats.</param>
    public LogFace(double diameterMm, IReadOnlyList<(double Cos, double Sin)> waves, IReadOnlyList<LogFlat> flats)
    {
        LengthMm = Math.PI * diameterMm;
        for (var i = 0; i < Places; i++)
        {
            var angle = Angle(i);
            var radius = 1.0;
            for (var n = 0; n < waves.Count; n++)
                radius += waves[n].Cos * Math.Cos((n + 2) * angle) + waves[n].Sin * Math.Sin((n + 2) * angle);
            foreach (var flat in flats)
                if (Math.Cos(angle - flat.Angle) is > 0.5 and var cos)
                    radius = Smooth.Min(radius, flat.Share / cos, FlatRound);
            _radius[i] = radius;
        }
        var girth = Enumerable.Range(0, Places).Sum(i => (Place(i + 1) - Place(i)).Length);
        for (var i = 0; i < Places; i++)
            _radius[i] *= LengthMm / girth;
        for (var i = 0; i < Places; i++)
            _along[i + 1] = _along[i] + (Place(i + 1) - Place(i)).Length;
    }

    public override double LengthMm { get; }

    public override bool IsClosed => true;

    /// <summary>Greatest distance of the rim from the origin, mm.</summary>
    public double ReachMm => _radius.Max();

    /// <summary>How far a point lies within the rim along its own ray, mm; below 0 outside.</summary>
    public double WithinMm(double x, double y) => Radius(PlaceOf(x, y)) - Math.Sqrt(x * x + y * y);

    public override Point At(double alongMm)
    {
        var (i, share) = Chord(alongMm);
        var (p, q) = (Place(i), Place(i + 1));
        return p + (q - p) * share;
    }

    public override Point Inward(double alongMm)
    {
        var (i, share) = Chord(alongMm);
        return Normal(i + share);
    }

    public override (double AlongMm, double DepthMm) Locate(double x, double y)
    {
        var place = PlaceOf(x, y);
        var depth = WithinMm(x, y);
        // Far within, no rim is near, and its own ray is near enough.
        for (var turn = 0; turn < 4 && depth < 0.6 * Radius(place); turn++)
        {
            var inward = Normal(place);
            var from = new Point(x, y) - Place(place);
            var aside = inward.Y * from.X - inward.X * from.Y;
            depth = Point.Dot(from, inward);
            place += aside / Math.Max(0.3 * Radius(place), Radius(place) - depth) / (2 * Math.PI) * Places;
        }
        var whole = (int)Math.Floor(place);
        var (i, share) = (Whole(whole), place - whole);
        return (_along[i] + share * (_along[i + 1] - _along[i]), depth);
    }

    private static double Angle(double place) => -Math.PI / 2 + 2 * Math.PI * place / Places;

    private static int Whole(int place) => ((place % Places) + Places) % Places;

    private static double PlaceOf(double x, double y) => (Math.Atan2(y, x) + Math.PI / 2) / (2 * Math.PI) * Places;

    private double Radius(double place)
    {
        var whole = (int)Math.Floor(place);
        var (a, b) = (_radius[Whole(whole)], _radius[Whole(whole + 1)]);
        return a + (place - whole) * (b - a);
    }

    private Point Place(double place) => Point.Towards(Angle(place)) * Radius(place);

    private Point Normal(double place)
    {
        var along = Place(place + 3) - Place(place - 3);
        return new Point(-along.Y, along.X) * (1 / along.Length);
    }

    private (int Place, double Share) Chord(double alongMm)
    {
        var within = alongMm - Math.Floor(alongMm / LengthMm) * LengthMm;
        var found = Array.BinarySearch(_along, within);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, Places - 1);
        return (i, (within - _along[i]) / (_along[i + 1] - _along[i]));
    }
}

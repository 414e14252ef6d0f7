using Alburnum.Imaging.Outcomes;

namespace Alburnum.Imaging.Geometry;

/// <summary>The rim of a round section in the photograph: an ellipse, and the waves by which the rim strays from it.</summary>
/// <param name="Ellipse">The ellipse that it lies about.</param>
/// <param name="Waves">
/// How far outside the ellipse it lies along the ellipse's normal, px: a constant, then cosine and sine of each harmonic of the ellipse's parameter. Empty for
/// the ellipse itself.
/// </param>
internal sealed record RimCurve(Ellipse Ellipse, IReadOnlyList<double> Waves)
{
    /// <summary>Harmonics of the waves: of a round 120 mm wide they show what is 16 mm long or longer. Our own choice.</summary>
    private const int Harmonics = 24;

    /// <summary>What an ellipse does itself: a constant, a shift, and a flattening.</summary>
    private const int OfEllipse = 2;

    /// <summary>
    /// Standard deviation of the logarithm of the axes' ratio: of a disc as people photograph it, up to some 25 degrees aside; and of what grew flat, for each
    /// of its other waves' root mean square. Our own choice.
    /// </summary>
    private const double SeenAside = 0.03;

    private const double GrownPerWave = 3;

    /// <summary>Waves of a rim that passes for an ellipse, as a share of its mean half axis. Our own choice.</summary>
    private const double MostWavesOfEllipse = 0.004;

    /// <summary>Turns in which a point's parameter is found.</summary>
    private const int Turns = 2;

    /// <summary>The ellipse itself.</summary>
    public static RimCurve Of(Ellipse ellipse) => new(ellipse, []);

    /// <summary>Mean half axis, px.</summary>
    public double MeanRadius => Math.Sqrt(Ellipse.Major * Ellipse.Minor);

    /// <summary>Root mean square of the waves that no ellipse makes, as a share of the mean half axis.</summary>
    public double WaveShare
    {
        get
        {
            double sum = 0;
            for (var k = 1 + (2 * OfEllipse); k < Waves.Count; k++)
                sum += Waves[k] * Waves[k] / 2;
            return Math.Sqrt(sum) / MeanRadius;
        }
    }

    /// <summary>Whether it waves no more than a turned or peeled round does.</summary>
    public bool IsNearlyEllipse => WaveShare <= MostWavesOfEllipse;

    /// <summary>
    /// The ellipse that a disc of the same size would show, and what is not known of it: the standard uncertainty of a depth, as a share of it. A flat rim is
    /// a disc seen aside, or grew so. A rim with waves of its own grew so as well, as far as its waves go: both are normal about none.
    /// </summary>
    public (Ellipse Ellipse, double DepthShare) Disc
    {
        get
        {
            var grown = GrownPerWave * WaveShare;
            var spread = double.Hypot(grown, SeenAside);
            var seen = Math.Pow(Ellipse.Minor / Ellipse.Major, SeenAside * SeenAside / (spread * spread));
            var root = Math.Sqrt(seen);
            return (
                Ellipse with
                {
                    Major = MeanRadius / root,
                    Minor = MeanRadius * root,
                },
                grown * SeenAside / spread / 2
            );
        }
    }

    /// <summary>How far outside the ellipse the rim lies at a parameter, px.</summary>
    public double OffsetAt(double parameter)
    {
        if (Waves.Count == 0)
            return 0;
        var offset = Waves[0];
        var (sin1, cos1) = Math.SinCos(parameter);
        var (sin, cos) = (sin1, cos1);
        for (var k = 1; k < Waves.Count; k += 2)
        {
            offset += (Waves[k] * cos) + (Waves[k + 1] * sin);
            (sin, cos) = ((sin * cos1) + (cos * sin1), (cos * cos1) - (sin * sin1));
        }
        return offset;
    }

    /// <summary>Point at a parameter of the ellipse.</summary>
    public PointPx At(double parameter)
    {
        var (at, (nx, ny), offset) = (Ellipse.At(parameter), Ellipse.Normal(parameter), OffsetAt(parameter));
        return new(at.X + (offset * nx), at.Y + (offset * ny));
    }

    /// <summary>Points clockwise as displayed, from the top.</summary>
    public IReadOnlyList<PointPx> Points(int count) =>
        [.. Enumerable.Range(0, count).Select(i => At((2 * Math.PI * i / count) - (Math.PI / 2) - Ellipse.Angle))];

    /// <summary>Points at even parameters of the ellipse, with its outward unit normals.</summary>
    public (PointPx At, double Nx, double Ny)[] Stations(int count)
    {
        var stations = Ellipse.Stations(count);
        for (var i = 0; i < count; i++)
        {
            var (at, nx, ny) = stations[i];
            var offset = OffsetAt(2 * Math.PI * i / count);
            stations[i] = (new(at.X + (offset * nx), at.Y + (offset * ny)), nx, ny);
        }
        return stations;
    }

    /// <summary>How far outside the rim a point near it lies, px; below 0 within it.</summary>
    public double DistanceTo(PointPx p)
    {
        var (parameter, offset) = Locate(Ellipse, p);
        return offset - OffsetAt(parameter);
    }

    /// <summary>Which of so many places at even parameters of the ellipse a point near the rim lies nearest to.</summary>
    public int StationOf(PointPx p, int count)
    {
        var turn = Locate(Ellipse, p).Parameter / (2 * Math.PI);
        return (int)Math.Round((turn - Math.Floor(turn)) * count) % count;
    }

    /// <summary>Least squares on weighted points.</summary>
    /// <param name="points">Five or more.</param>
    /// <param name="weights">What each counts, 0 to 1.</param>
    /// <param name="stiffness">What a wave costs, as a share of all weights: that of the square of its harmonic, squared. 0 or more.</param>
    public static Outcome<RimCurve, NoEllipse> Fit(
        ReadOnlySpan<PointPx> points,
        ReadOnlySpan<double> weights,
        double stiffness
    )
    {
        if (!Ellipse.Fit(points, weights).Has(out var ellipse, out var none))
            return none;
        const int Unknowns = 1 + (2 * Harmonics);
        var normal = new double[Unknowns, Unknowns];
        var right = new double[Unknowns];
        Span<double> wave = stackalloc double[Unknowns];
        double all = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var (parameter, offset) = Locate(ellipse, points[i]);
            wave[0] = 1;
            for (var n = 1; n <= Harmonics; n++)
                (wave[2 * n], wave[(2 * n) - 1]) = Math.SinCos(n * parameter);
            all += weights[i];
            for (var j = 0; j < Unknowns; j++)
            {
                var of = weights[i] * wave[j];
                right[j] += of * offset;
                for (var k = 0; k <= j; k++)
                    normal[j, k] += of * wave[k];
            }
        }
        for (var j = 0; j < Unknowns; j++)
        {
            for (var k = 0; k < j; k++)
                normal[k, j] = normal[j, k];
            normal[j, j] += all * stiffness * Math.Pow(Math.Max(1, (j + 1) / 2), 4);
        }
        return LinearSystem.Solve(normal, right).Has(out var waves, out _) ? new RimCurve(ellipse, waves) : Of(ellipse);
    }

    // The parameter at whose normal a point lies, and how far outside.
    private static (double Parameter, double Offset) Locate(Ellipse e, PointPx p)
    {
        var (sin, cos) = Math.SinCos(e.Angle);
        var (x, y) = (p.X - e.Centre.X, p.Y - e.Centre.Y);
        var parameter = Math.Atan2(((y * cos) - (x * sin)) / e.Minor, ((x * cos) + (y * sin)) / e.Major);
        for (var turn = 0; ; turn++)
        {
            var (at, (nx, ny)) = (e.At(parameter), e.Normal(parameter));
            var (dx, dy) = (p.X - at.X, p.Y - at.Y);
            var offset = (dx * nx) + (dy * ny);
            if (turn == Turns)
                return (parameter, offset);
            parameter += ((dy * nx) - (dx * ny)) / Math.Max(e.Minor, e.Minor + offset);
        }
    }
}

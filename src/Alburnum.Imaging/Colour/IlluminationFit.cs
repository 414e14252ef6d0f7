using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Colour;

/// <summary>Fits the fall-off of the light: least squares of brightness on a level for each zone and a common quadratic in place.</summary>
/// <remarks>All that does not depend on the division into zones is summed once, as the light is fitted again for every division tried.</remarks>
internal sealed class IlluminationFit
{
    // Two levels, then x, y, x², xy, y².
    private const int Levels = 2;
    private const int Terms = 7;

    /// <summary>
    /// How strongly slope and curvature are held towards none, as a share of all samples: curvature hardly differs from the zones' own levels.
    /// Our own choice.
    /// </summary>
    private const double SlopeHold = 1e-3;

    private const double CurvatureHold = 0.02;

    /// <summary>Weight added to a zone's, lest one without samples have no level.</summary>
    private const double LevelHold = 1e-6;

    private readonly WoodSamples _samples;
    private readonly double[,] _normal = new double[Terms, Terms];
    private readonly double[] _right = new double[Terms];

    // Sums of weight, weight by each place term, and weight by brightness, over all samples.
    private readonly Sums _all;

    public IlluminationFit(WoodSamples samples)
    {
        _samples = samples;
        Span<double> place = stackalloc double[Terms];
        for (var n = 0; n < samples.Count; n++)
        {
            double x = samples.X[n];
            double y = samples.Y[n];
            (place[2], place[3], place[4], place[5], place[6]) = (x, y, x * x, x * y, y * y);
            for (var i = Levels; i < Terms; i++)
            {
                _right[i] += samples.Weight[n] * place[i] * samples.L[n];
                for (var j = Levels; j < Terms; j++)
                    _normal[i, j] += samples.Weight[n] * place[i] * place[j];
            }
        }
        for (var i = Levels; i < Terms; i++)
        {
            _normal[i, i] += samples.Count * (i is 4 or 6 ? CurvatureHold : SlopeHold);
        }
        var every = new float[samples.Count];
        Array.Fill(every, 1f);
        _all = Sums.Of(samples, every);
    }

    /// <summary>The light that suits a division best.</summary>
    /// <param name="treated">Above ½ where a sample is taken to be treated.</param>
    public Illumination Of(ReadOnlySpan<float> treated)
    {
        var system = (double[,])_normal.Clone();
        var known = (double[])_right.Clone();
        var one = Sums.Of(_samples, treated);
        Lay(system, known, 0, one);
        Lay(system, known, 1, _all.Less(one));
        return LinearSystem
            .Solve(system, known)
            .Match(
                k => new Illumination((float)k[2], (float)k[3], (float)k[4], (float)k[5], (float)k[6]),
                // Where no sample has any weight, nothing shows a fall-off: the light is taken to be even.
                _ => Illumination.Even
            );
    }

    private static void Lay(double[,] system, double[] known, int level, Sums of)
    {
        system[level, level] = of.Weight + LevelHold;
        known[level] = of.L;
        (system[level, 2], system[level, 3]) = (of.Place.X, of.Place.Y);
        (system[level, 4], system[level, 5], system[level, 6]) = (of.Place.XX, of.Place.XY, of.Place.YY);
        for (var i = Levels; i < Terms; i++)
            system[i, level] = system[level, i];
    }

    private readonly record struct Sums(double Weight, double L, PlaceSums Place)
    {
        public static Sums Of(WoodSamples samples, ReadOnlySpan<float> treated)
        {
            double w = 0,
                l = 0,
                sx = 0,
                sy = 0,
                sxx = 0,
                sxy = 0,
                syy = 0;
            for (var n = 0; n < treated.Length; n++)
            {
                if (!(treated[n] > 0.5f))
                    continue;
                double k = samples.Weight[n];
                var (kx, ky) = (k * samples.X[n], k * samples.Y[n]);
                w += k;
                l += k * samples.L[n];
                sx += kx;
                sy += ky;
                sxx += kx * samples.X[n];
                sxy += kx * samples.Y[n];
                syy += ky * samples.Y[n];
            }
            return new(w, l, new(sx, sy, sxx, sxy, syy));
        }

        public Sums Less(Sums o) => new(Weight - o.Weight, L - o.L, Place.Less(o.Place));
    }

    private readonly record struct PlaceSums(double X, double Y, double XX, double XY, double YY)
    {
        public PlaceSums Less(PlaceSums o) => new(X - o.X, Y - o.Y, XX - o.XX, XY - o.XY, YY - o.YY);
    }
}

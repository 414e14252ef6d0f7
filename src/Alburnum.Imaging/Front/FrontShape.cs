namespace Alburnum.Imaging.Front;

/// <summary>Colour that is drawn past the main step, fainter.</summary>
/// <param name="Share">Its share of the treated colour at the step, 0 to below 0.5.</param>
/// <param name="WidthMm">Mean of its exponential fall-off, mm. Above 0.</param>
internal readonly record struct Halo(double Share, double WidthMm)
{
    public static readonly Halo None = new(0, 1);

    /// <summary>How far the colour in it would move the front if it were treated wood's, mm.</summary>
    public double HoldsMm => Share * WidthMm;
}

/// <summary>How treated colour falls off across the front: blurred by the camera, with a halo beyond it.</summary>
/// <remarks>
/// A main step at 0 and a halo that starts there at its share and falls off exponentially, both convolved with a normal blur of standard deviation σ:
/// the survival functions of a normal and of an exponentially modified normal distribution, mixed. The front is the step, whatever the halo.
/// </remarks>
internal sealed class FrontShape
{
    /// <summary>Distance between neighbouring values of <see cref="Along"/>, mm.</summary>
    public const double StepMm = 0.05;

    // No front is fitted from farther away than 2.5 mm and a row or so, nor moved by more than 1 mm.
    private const double HalfWidthMm = 5;

    // The table is finer than the steps by this; values a step apart lie next to each other.
    private const int PerStep = 5;
    private const int Steps = (int)(2 * HalfWidthMm / StepMm) + 1;

    /// <summary>Below this, Φ is taken by its leading term φ(z) ⁄ −z, right to 2 %; above, it has not run out of digits.</summary>
    private const double FarTail = -8;

    /// <summary>½·ln 2π.</summary>
    private const double LogNorm = 0.9189385332046727;

    private readonly double[] _table = new double[PerStep * Steps];

    /// <param name="blurMm">Standard deviation of the camera's blur, mm. Above 0.</param>
    /// <param name="halo">Colour beyond the step.</param>
    /// <param name="read">The treated share that is read off a mixture of the two colours, from the true one.</param>
    public FrontShape(double blurMm, Halo halo, Func<double, double> read)
    {
        (BlurMm, Halo) = (blurMm, halo);
        for (var fine = 0; fine < PerStep; fine++)
        for (var step = 0; step < Steps; step++)
        {
            var inwardMm = HalfWidthMm - ((((double)fine / PerStep) + step) * StepMm);
            _table[(fine * Steps) + step] = read(Survival(inwardMm, blurMm, halo));
        }
    }

    public double BlurMm { get; }

    public Halo Halo { get; }

    /// <summary>Treated share of the colour at a distance inward of the front, and at that distance less 1, 2, 3 ... steps.</summary>
    /// <param name="inwardMm">At most 5 mm; the last value wanted must not lie below −5 mm.</param>
    /// <param name="count">Values wanted.</param>
    public ReadOnlySpan<double> Along(double inwardMm, int count)
    {
        var fine = (int)(((HalfWidthMm - inwardMm) * PerStep / StepMm) + 0.5);
        return _table.AsSpan((fine % PerStep * Steps) + (fine / PerStep), count);
    }

    private static double Survival(double x, double sigma, Halo halo)
    {
        var plain = Phi(-x / sigma);
        if (halo.Share <= 0)
            return plain;
        var shift = (x / sigma) - (sigma / halo.WidthMm);
        // ln Φ keeps the product finite where the exponential is huge and Φ tiny.
        var tail = Math.Exp(
            Math.Min(0, (sigma * sigma / (2 * halo.WidthMm * halo.WidthMm)) - (x / halo.WidthMm) + LnPhi(shift))
        );
        return Math.Clamp(plain + (halo.Share * tail), 0, 1);
    }

    private static double Phi(double z) => 0.5 * MathNet.Numerics.SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    private static double LnPhi(double z) => z > FarTail ? Math.Log(Phi(z)) : (-z * z / 2) - Math.Log(-z) - LogNorm;
}

namespace Alburnum.Imaging.Boundary;

/// <summary>How treated colour falls off across the front: blurred by the camera, and drawn inward by the spray.</summary>
/// <remarks>
/// A step at 0, convolved with a normal blur of standard deviation σ and with an exponential fall-off of mean b on the untreated side:
/// the survival function of an exponentially modified normal distribution. Half height lies deeper than the step, by 0.69·b for a sharp picture and nearly b for a blurred one.
/// </remarks>
internal sealed class FrontShape
{
    private const double HalfWidthMm = 8;
    private const int PerMm = 100;
    private readonly float[] table = new float[(int)(2 * HalfWidthMm * PerMm) + 1];

    /// <param name="blurMm">Standard deviation of the camera's blur, mm. Above 0.</param>
    /// <param name="bleedMm">Mean fall-off of drawn-in colour, mm. 0 or more.</param>
    /// <param name="read">The treated share that is read off a mixture of the two colours, from the true one.</param>
    public FrontShape(double blurMm, double bleedMm, Func<double, double> read)
    {
        (BlurMm, BleedMm) = (blurMm, bleedMm);
        for (var i = 0; i < table.Length; i++)
            table[i] = (float)read(Survival(((double)i / PerMm) - HalfWidthMm, blurMm, bleedMm));
    }

    public double BlurMm { get; }

    public double BleedMm { get; }

    /// <summary>Treated share of the colour at a distance inward of the front, mm.</summary>
    public float At(double inwardMm) =>
        table[(int)Math.Clamp(((inwardMm + HalfWidthMm) * PerMm) + 0.5, 0, table.Length - 1)];

    private static double Survival(double x, double sigma, double b)
    {
        var plain = Phi(-x / sigma);
        if (b < 1e-3)
            return plain;
        var shift = (x / sigma) - (sigma / b);
        // ln Φ keeps the product finite where the exponential is huge and Φ tiny.
        var tail = Math.Exp(Math.Min(0, (sigma * sigma / (2 * b * b)) - (x / b) + LnPhi(shift)));
        return Math.Clamp(plain + tail, 0, 1);
    }

    private static double Phi(double z) => 0.5 * MathNet.Numerics.SpecialFunctions.Erfc(-z / Math.Sqrt(2));

    private static double LnPhi(double z) =>
        z > -8 ? Math.Log(Phi(z)) : (-z * z / 2) - Math.Log(-z) - 0.9189385332046727;
}

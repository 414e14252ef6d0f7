namespace Alburnum.Imaging.Colour;

/// <summary>A bell in three dimensions, kept with the inverse of its covariance.</summary>
internal readonly struct Gaussian3
{
    /// <summary>Added to each variance: noise of a pixel. Our own choice.</summary>
    private const double Ridge = 2e-4;

    /// <summary>3⁄2·ln 2π.</summary>
    private const double LogNorm = 2.7568;

    private readonly float _a,
        _b,
        _c,
        _d,
        _e,
        _f;
    private readonly float _meanX,
        _meanY,
        _meanZ,
        _constant;

    /// <summary>From a mean and a covariance (xx, xy, xz, yy, yz, zz); a small ridge keeps it invertible.</summary>
    public Gaussian3(double[] mean, ReadOnlySpan<double> covariance, double weight = 1)
    {
        Mean = mean;
        Covariance = covariance.ToArray();
        Weight = weight;
        var (xx, xy, xz) = (covariance[0] + Ridge, covariance[1], covariance[2]);
        var (yy, yz, zz) = (covariance[3] + Ridge, covariance[4], covariance[5] + Ridge);
        var determinant =
            (xx * ((yy * zz) - (yz * yz))) - (xy * ((xy * zz) - (yz * xz))) + (xz * ((xy * yz) - (yy * xz)));
        _a = (float)(((yy * zz) - (yz * yz)) / determinant);
        _b = (float)(((xz * yz) - (xy * zz)) / determinant);
        _c = (float)(((xy * yz) - (xz * yy)) / determinant);
        _d = (float)(((xx * zz) - (xz * xz)) / determinant);
        _e = (float)(((xy * xz) - (xx * yz)) / determinant);
        _f = (float)(((xx * yy) - (xy * xy)) / determinant);
        LogDeterminant = (float)Math.Log(determinant);
        _constant = (float)(Math.Log(weight) - (0.5 * LogDeterminant) - LogNorm);
        (_meanX, _meanY, _meanZ) = ((float)mean[0], (float)mean[1], (float)mean[2]);
    }

    public double[] Mean { get; }

    public double[] Covariance { get; }

    /// <summary>Share of its class.</summary>
    public double Weight { get; }

    public float LogDeterminant { get; }

    /// <summary>Squared Mahalanobis distance.</summary>
    public float Distance2(float x, float y, float z)
    {
        var (p, q, r) = (x - _meanX, y - _meanY, z - _meanZ);
        return (_a * p * p) + (_d * q * q) + (_f * r * r) + (2 * ((_b * p * q) + (_c * p * r) + (_e * q * r)));
    }

    /// <summary>Natural logarithm of the density times the weight.</summary>
    public float LogDensity(float x, float y, float z) => _constant - (0.5f * Distance2(x, y, z));

    /// <summary>The inverse covariance applied to a vector.</summary>
    public (double X, double Y, double Z) Whiten(double x, double y, double z) =>
        ((_a * x) + (_b * y) + (_c * z), (_b * x) + (_d * y) + (_e * z), (_c * x) + (_e * y) + (_f * z));
}

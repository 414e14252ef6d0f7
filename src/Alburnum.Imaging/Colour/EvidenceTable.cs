namespace Alburnum.Imaging.Colour;

/// <summary>Evidence, front position value and strayness of every colour, tabulated once so that a pixel costs one look-up.</summary>
internal sealed class EvidenceTable
{
    // All figures are our own choice.

    /// <summary>Cells of the table along light, ln(red ⁄ green) and ln(blue ⁄ green).</summary>
    private const int BinsL = 24;
    private const int BinsU = 48;
    private const int BinsV = 48;

    /// <summary>The table spans all but this share of the colours at either end, and so much of that span more.</summary>
    private const double LeftOutShare = 0.003;

    private const float PadShare = 0.12f;

    private const float LeastPad = 0.02f;

    /// <summary>One pixel speaks for or against at most so much, as a logarithm.</summary>
    public const float MostEvidence = 4;

    /// <summary>How far a share may run past either mean colour.</summary>
    private const float PastMean = 0.75f;

    /// <summary>Shares of treated colour in mixtures that belong to untreated wood, as a halo has them, and in those that belong to treated wood.</summary>
    private static readonly double[] HaloShares = [0.15, 0.3, 0.45];

    private static readonly double[] ThinShares = [0.7, 0.85];

    /// <summary>How common each of them is beside the zone that it belongs to.</summary>
    private const double MixedWeight = 0.1;

    private readonly float _lowL,
        _lowU,
        _lowV,
        _perL,
        _perU,
        _perV;

    /// <summary>The zones' colours away from the front, with their mixtures.</summary>
    private readonly TwoZones _mixed;
    private readonly Entry[] _entries = new Entry[BinsL * BinsU * BinsV];

    /// <summary>What is known of one colour.</summary>
    /// <param name="Evidence">Logarithm of the likelihood ratio treated : untreated.</param>
    /// <param name="Share">0 for the mean untreated colour, 1 for the mean treated one, along the line that best parts them.</param>
    /// <param name="Known">1 for a colour of either zone, 0 for a stray.</param>
    public readonly record struct Entry(float Evidence, float Share, float Known);

    public EvidenceTable(TwoZonesFound found, WoodSamples samples)
    {
        var zones = Zones = found.Zones;
        var l = new float[samples.Count];
        for (var n = 0; n < l.Length; n++)
            l[n] = samples.L[n] - zones.Light.At(samples.X[n], samples.Y[n]);
        (_lowL, _perL) = Range(l, BinsL);
        (_lowU, _perU) = Range(samples.U, BinsU);
        (_lowV, _perV) = Range(samples.V, BinsV);
        Discriminant = new ZoneDiscriminant(found.Pure);
        _mixed = WithMixtures(found.Pure, Discriminant);
    }

    public TwoZones Zones { get; }

    // Colours of a halo, and of wood narrower than the blur, lie between the zones: each belongs to the nearer one.
    private static TwoZones WithMixtures(TwoZones zones, ZoneDiscriminant discriminant)
    {
        var covariance = discriminant.Within;
        Gaussian3 Mixture(double share) => new(discriminant.Mixture(share), covariance, MixedWeight);
        return zones with
        {
            Untreated = [.. zones.Untreated, .. HaloShares.Select(Mixture)],
            Treated = [.. zones.Treated, .. ThinShares.Select(Mixture)],
        };
    }

    public ZoneDiscriminant Discriminant { get; }

    public Entry Look(float evenL, float u, float v)
    {
        var i = Math.Clamp((int)((evenL - _lowL) * _perL), 0, BinsL - 1);
        var j = Math.Clamp((int)((u - _lowU) * _perU), 0, BinsU - 1);
        var k = Math.Clamp((int)((v - _lowV) * _perV), 0, BinsV - 1);
        ref var entry = ref _entries[(((i * BinsU) + j) * BinsV) + k];
        // Most colours never occur: each is worked out when it first does.
        if (entry.Known == 0)
            entry = Of(_lowL + ((i + 0.5f) / _perL), _lowU + ((j + 0.5f) / _perU), _lowV + ((k + 0.5f) / _perV));
        return entry;
    }

    private Entry Of(float l, float u, float v)
    {
        var density = Math.Max(
            Math.Max(TwoZones.LogDensity(Zones.Treated, l, u, v), TwoZones.LogDensity(Zones.Untreated, l, u, v)),
            Math.Max(TwoZones.LogDensity(_mixed.Treated, l, u, v), TwoZones.LogDensity(_mixed.Untreated, l, u, v))
        );
        return new(
            Math.Clamp(_mixed.Evidence(l, u, v), -MostEvidence, MostEvidence),
            Math.Clamp(Discriminant.Share(l, u, v), -PastMean, 1 + PastMean),
            Math.Max(float.Epsilon, 1 / (1 + MathF.Exp(TwoZones.StrayLogDensity - density)))
        );
    }

    private static (float Low, float PerUnit) Range(float[] values, int bins)
    {
        var sorted = (float[])values.Clone();
        Array.Sort(sorted);
        var low = sorted[(int)(LeftOutShare * sorted.Length)];
        var high = sorted[(int)((1 - LeftOutShare) * (sorted.Length - 1))];
        var pad = Math.Max(LeastPad, PadShare * (high - low));
        return (low - pad, bins / (high - low + (2 * pad)));
    }
}

/// <summary>The line through colour space that best parts two zones (Fisher's), scaled 0 at untreated and 1 at treated.</summary>
internal sealed class ZoneDiscriminant
{
    private readonly double _wx,
        _wy,
        _wz,
        _zero;
    private readonly double[] _treatedLight;
    private readonly double[] _untreatedLight;

    public ZoneDiscriminant(TwoZones zones)
    {
        var (t, u) = (Mean(zones.Treated), Mean(zones.Untreated));
        var within = Within;
        foreach (var zone in (IReadOnlyList<Gaussian3>[])[zones.Treated, zones.Untreated])
        foreach (var bell in zone)
            for (var k = 0; k < 6; k++)
                within[k] += bell.Weight * bell.Covariance[k] / 2;
        var pooled = new Gaussian3(t, within);
        var (dx, dy, dz) = (t[0] - u[0], t[1] - u[1], t[2] - u[2]);
        (_wx, _wy, _wz) = pooled.Whiten(dx, dy, dz);
        var length = (_wx * dx) + (_wy * dy) + (_wz * dz);
        (_wx, _wy, _wz) = (_wx / length, _wy / length, _wz / length);
        _zero = (_wx * u[0]) + (_wy * u[1]) + (_wz * u[2]);
        (_treatedLight, _untreatedLight) = (Light(t), Light(u));
    }

    /// <summary>
    /// The share read off a mixture of the two mean colours. Blur mixes light, and the dark colour counts for less in light than in its logarithm.
    /// </summary>
    public double ShareOfMixture(double treated)
    {
        var mixed = Mixture(treated);
        return Share((float)mixed[0], (float)mixed[1], (float)mixed[2]);
    }

    /// <summary>The colour of a mixture of the light of both.</summary>
    public double[] Mixture(double treated)
    {
        Span<double> log = stackalloc double[3];
        for (var k = 0; k < 3; k++)
            log[k] = Math.Log((treated * _treatedLight[k]) + ((1 - treated) * _untreatedLight[k]));
        return [(log[0] + log[1] + log[2]) / 3, log[0] - log[1], log[2] - log[1]];
    }

    /// <summary>Covariance of a zone's colours, the mean of both.</summary>
    public double[] Within { get; } = new double[6];

    public float Share(float l, float u, float v) => (float)((_wx * l) + (_wy * u) + (_wz * v) - _zero);

    // Red, green and blue light of a logarithmic colour.
    private static double[] Light(double[] c)
    {
        var green = c[0] - ((c[1] + c[2]) / 3);
        return [Math.Exp(green + c[1]), Math.Exp(green), Math.Exp(green + c[2])];
    }

    private static double[] Mean(IReadOnlyList<Gaussian3> zone)
    {
        var mean = new double[3];
        foreach (var bell in zone)
            for (var k = 0; k < 3; k++)
                mean[k] += bell.Weight * bell.Mean[k];
        return mean;
    }
}

namespace Alburnum.Imaging.Colour;

/// <summary>The colours of treated and untreated wood in one photograph, with the light evened.</summary>
/// <param name="Treated">Bells of the treated wood's colours.</param>
/// <param name="Untreated">Bells of the untreated wood's colours.</param>
/// <param name="Light">Fall-off of the light.</param>
internal sealed record TwoZones(
    IReadOnlyList<Gaussian3> Treated,
    IReadOnlyList<Gaussian3> Untreated,
    Illumination Light
)
{
    /// <summary>
    /// Logarithm of the density below which a colour belongs to neither zone but to something else (glare, a void, a knot, a drip) and says nothing.
    /// Our own choice.
    /// </summary>
    public const float StrayLogDensity = -4.5f;

    /// <summary>Evidence of a place pointed out by hand, as a logarithm of a likelihood ratio: more than any colour may count. Our own choice.</summary>
    public const float HandEvidence = 20;

    /// <summary>Added to a density, lest its logarithm be infinite.</summary>
    private const float LeastDensity = 1e-30f;

    /// <summary>Evidence for treated wood of a colour: logarithm of the likelihood ratio, near 0 for strays.</summary>
    public float Evidence(float evenL, float u, float v)
    {
        var t = Math.Max(StrayLogDensity, LogDensity(Treated, evenL, u, v));
        var n = Math.Max(StrayLogDensity, LogDensity(Untreated, evenL, u, v));
        return t - n;
    }

    public static float LogDensity(IReadOnlyList<Gaussian3> zone, float l, float u, float v)
    {
        if (zone.Count == 1)
            return zone[0].LogDensity(l, u, v);
        float sum = 0;
        foreach (var bell in zone)
            sum += MathF.Exp(bell.LogDensity(l, u, v));
        return MathF.Log(sum + LeastDensity);
    }
}

using Alburnum.Facts;

namespace Alburnum.Impregnation.Diffusing;

/// <summary>A salt spreading from a treated border inwards while the wood is stored, out of the face in the wet: through half the thickness of a sheet, or along the radius of a round.</summary>
/// <remarks>Fick's second law in even layers, backward Euler; conservative to round-off. Checked against Crank's sheet and the series of a cylinder.</remarks>
public sealed record SaltProfile
{
    private readonly bool _isRound;

    private SaltProfile(double halfMm, bool isRound, double[] loading, double washedOut) =>
        (HalfMm, _isRound, Loading, WashedOut) = (halfMm, isRound, loading, washedOut);

    /// <summary>Half the thickness, or the radius, mm: the last layer ends at the middle.</summary>
    public double HalfMm { get; }

    /// <summary>Loading of each layer from the face to the middle, in whatever unit the border was given.</summary>
    public IReadOnlyList<double> Loading { get; }

    /// <summary>Salt lost through the face since the start, as loading × mm of depth at the face.</summary>
    public double WashedOut { get; }

    /// <summary>Salt in the wood, as loading × mm of depth at the face.</summary>
    public double Held => Loading.Select((loading, i) => loading * Volume(i)).Sum();

    /// <summary>Mean loading of the wood.</summary>
    public double Mean => Held / Enumerable.Range(0, Loading.Count).Sum(Volume);

    /// <summary>A border of even loading on untreated wood.</summary>
    /// <param name="halfMm">Half the thickness, or the radius, mm. 1 to 1000.</param>
    /// <param name="borderMm">Depth of the border, mm. Above 0, at most half the thickness.</param>
    /// <param name="loading">Loading of the border, above 0.</param>
    /// <param name="isRound">True along the radius of a round, false through a sheet.</param>
    /// <param name="layers">Layers, 10 to 10 000.</param>
    public static SaltProfile Border(
        double halfMm,
        double borderMm,
        double loading,
        bool isRound = false,
        int layers = 400
    )
    {
        Require.InRange(halfMm, Ranges.SectionMm.Low / 4, Ranges.SectionMm.High / 2, "mm");
        Require.InRange(borderMm, 1e-3, halfMm, "mm");
        Require.Positive(loading, "(loading)");
        Require.InRange(layers, 10, 10_000, "layers");
        var width = halfMm / layers;
        return new(
            halfMm,
            isRound,
            [.. Enumerable.Range(0, layers).Select(i => loading * Math.Clamp((borderMm - i * width) / width, 0, 1))],
            0
        );
    }

    /// <summary>The profile some time later.</summary>
    /// <param name="diffusionM2PerS">Coefficient, m²/s. 1e-16 to 1e-8.</param>
    /// <param name="days">Time, days. 0 to 100 000.</param>
    /// <param name="isFaceWet">True where running water keeps the face free of salt; false where nothing passes the face.</param>
    /// <param name="steps">Time steps, 1 to 100 000.</param>
    public SaltProfile After(double diffusionM2PerS, double days, bool isFaceWet, int steps = 200)
    {
        Require.InRange(diffusionM2PerS, 1e-16, 1e-8, "m²/s");
        Require.InRange(days, 0, 1e5, "days");
        Require.InRange(steps, 1, 100_000, "steps");
        var now = Loading.ToArray();
        var (n, width) = (now.Length, HalfMm / Loading.Count);
        // What passes an interface in a step for a difference of 1, as loading × mm; through the face over half a layer.
        var passes = diffusionM2PerS * 1e6 * days * 86400 / steps / width;
        double Through(int i) =>
            i == n ? 0
            : i > 0 ? passes * Area(i)
            : isFaceWet ? 2 * passes
            : 0;
        var (upper, x) = (new double[n], new double[n]);
        double lost = 0;
        for (var step = 0; step < steps; step++)
        {
            // Elimination down the layers, substitution back: each joins only its neighbours.
            for (var i = 0; i < n; i++)
            {
                var (above, below, volume) = (Through(i), Through(i + 1), Volume(i));
                var pivot = volume + above + below - (i > 0 ? above * upper[i - 1] : 0);
                upper[i] = below / pivot;
                x[i] = (volume * now[i] + (i > 0 ? above * x[i - 1] : 0)) / pivot;
            }
            for (var i = n - 2; i >= 0; i--)
                x[i] += upper[i] * x[i + 1];
            lost += Through(0) * x[0];
            x.CopyTo(now, 0);
        }
        return new(HalfMm, _isRound, now, WashedOut + lost);
    }

    /// <summary>The same places with other loadings.</summary>
    /// <param name="loading">Loading of each layer, as many as there are, from layer and place.</param>
    internal SaltProfile With(Func<double, int, double> loading) =>
        new(HalfMm, _isRound, [.. Loading.Select(loading)], WashedOut);

    // Of the interface above a layer, as a share of the face's.
    private double Area(int layer) => _isRound ? 1 - (double)layer / Loading.Count : 1;

    private double Volume(int layer) => HalfMm / Loading.Count * (Area(layer) + Area(layer + 1)) / 2;

    /// <summary>Depth down to which the loading is at least a value, mm; 0 where the face itself has less.</summary>
    /// <param name="loading">The value, above 0.</param>
    public double DepthMm(double loading)
    {
        Require.Positive(loading, "(loading)");
        var width = HalfMm / Loading.Count;
        for (var i = 0; i < Loading.Count; i++)
        {
            if (Loading[i] >= loading)
                continue;
            if (i == 0)
                return 0;
            return (i - 0.5 + (Loading[i - 1] - loading) / (Loading[i - 1] - Loading[i])) * width;
        }
        return HalfMm;
    }
}

namespace Alburnum.Imaging.Colour;

/// <summary>Two colours expected side by side on one section, in channels ln(light), ln(red ⁄ green), ln(blue ⁄ green).</summary>
/// <remarks>
/// The two are expected up to a change of light common to both (wide) and a change of wood of each (narrower), so their difference is known better than
/// either.
/// </remarks>
/// <param name="One">One of them.</param>
/// <param name="Other">The other.</param>
internal readonly record struct ColourPair(ColourSpread One, ColourSpread Other)
{
    /// <summary>Strengths of the spray tried, 0 to 1: a thin one lets the wood shine through. Our own choice.</summary>
    private static readonly double[] Strengths = [1, 0.75, 0.5, 0.35];

    /// <summary>Which of them is middling.</summary>
    public const int Middling = 1;

    /// <summary>What two palettes lead one to expect, at each strength of the spray.</summary>
    public static IReadOnlyList<ColourPair> Of(IReadOnlyList<int> one, IReadOnlyList<int> other) =>
        [.. Strengths.Select(k => new ColourPair(ColourSpread.Of(one, k), ColourSpread.Of(other, k)))];

    /// <summary>Logarithm of how well two means fit; 0 at best.</summary>
    public double LogFit(double[] one, double[] other)
    {
        var sum = 0.0;
        for (var k = 0; k < ColourSpread.Channels; k++)
        {
            var difference = one[k] - other[k] - (One.Mean[k] - Other.Mean[k]);
            var variance = One.Variance[k] + Other.Variance[k];
            var middle = (one[k] + other[k] - One.Mean[k] - Other.Mean[k]) / 2;
            var middleVariance = (variance / 4) + ColourSpread.LightVariance(k);
            sum -= (difference * difference / variance) + (middle * middle / middleVariance);
        }
        return sum / 2;
    }
}

/// <summary>A colour as it is expected on one piece of wood after another.</summary>
/// <param name="Mean">Its mean.</param>
/// <param name="Variance">Its variance from piece to piece in the same light.</param>
internal readonly record struct ColourSpread(double[] Mean, double[] Variance)
{
    // All figures are our own choice.

    public const int Channels = 3;

    /// <summary>Bare wood that shines through a thin spray, sRGB.</summary>
    private const int Wood = 0xD8B98C;

    /// <summary>Standard deviation from one piece of wood to another: ln(light), ln(red ⁄ green), ln(blue ⁄ green).</summary>
    private static readonly double[] OwnSpread = [0.3, 0.16, 0.2];

    /// <summary>Standard deviation from one light to another, the same for all that one photograph shows, in the same channels.</summary>
    private static readonly double[] LightSpread = [0.8, 0.22, 0.3];

    /// <summary>Variance of a channel from one light to another.</summary>
    public static double LightVariance(int channel) => LightSpread[channel] * LightSpread[channel];

    /// <summary>What a palette leads one to expect.</summary>
    /// <param name="palette">Colours in even white light, sRGB as 0xRRGGBB.</param>
    /// <param name="strength">Strength of the spray, 0 to 1.</param>
    public static ColourSpread Of(IReadOnlyList<int> palette, double strength)
    {
        var points = palette
            .Select(c => LogColour.OfHex(Blend(c, strength)))
            .Select(c => new double[] { c.L, c.U, c.V })
            .ToList();
        var mean = new double[Channels];
        var variance = new double[Channels];
        for (var k = 0; k < Channels; k++)
        {
            mean[k] = points.Average(p => p[k]);
            variance[k] = points.Average(p => (p[k] - mean[k]) * (p[k] - mean[k])) + (OwnSpread[k] * OwnSpread[k]);
        }
        return new(mean, variance);
    }

    /// <summary>The same of wood whose own colour lies elsewhere.</summary>
    public ColourSpread Moved(IReadOnlyList<double> by) => this with { Mean = [.. Mean.Zip(by, (m, d) => m + d)] };

    /// <summary>Logarithm of how well one mean fits; 0 at best.</summary>
    public double LogFit(double[] mean)
    {
        var sum = 0.0;
        for (var k = 0; k < Channels; k++)
        {
            var off = mean[k] - Mean[k];
            sum -= off * off / (Variance[k] + LightVariance(k));
        }
        return sum / 2;
    }

    private static int Blend(int colour, double strength)
    {
        int Channel(int shift) =>
            (int)Math.Round((((colour >> shift) & 255) * strength) + (((Wood >> shift) & 255) * (1 - strength)));
        return (Channel(16) << 16) | (Channel(8) << 8) | Channel(0);
    }
}

using Alburnum.Penetration;

namespace Alburnum.Imaging.Colour;

/// <summary>What an indicator's palette leads one to expect of the two mean colours in a photograph.</summary>
/// <remarks>
/// The two means are expected at the palette's, up to a change of light common to both (wide) and a change of wood of each (narrower), so their
/// difference is known better than either. A thin spray lets the wood shine through: the palette is tried at several strengths and the best counts.
/// </remarks>
internal sealed class IndicatorPrior
{
    // All figures are our own choice.

    /// <summary>No indicator, and no preservative, makes wood brighter by more than this, a difference of ln(light); beyond it, what its square costs.</summary>
    private const double MostBrighter = 0.15;

    private const double BrighterCost = 40;

    /// <summary>Bare wood that shines through a thin spray, sRGB.</summary>
    private const int Wood = 0xD8B98C;

    /// <summary>Strengths of the spray tried, 0 to 1, and which of them is middling.</summary>
    private static readonly double[] Strengths = [1, 0.75, 0.5, 0.35];

    private const int Middling = 1;

    /// <summary>Standard deviation from one piece of wood to another: ln(light), ln(red ⁄ green), ln(blue ⁄ green).</summary>
    private static readonly double[] OwnSpread = [0.3, 0.16, 0.2];

    /// <summary>Standard deviation from one light to another, the same for both zones of a photograph, in the same channels.</summary>
    private static readonly double[] LightSpread = [0.8, 0.22, 0.3];
    private readonly IReadOnlyList<(Spread Treated, Spread Untreated)> _levels;

    private readonly record struct Spread(double[] Mean, double[] Variance);

    public IndicatorPrior(Indicator indicator)
    {
        Indicator = indicator;
        _levels =
        [
            .. Strengths.Select(k => (SpreadOf(indicator.TreatedColours, k), SpreadOf(indicator.UntreatedColours, k))),
        ];
    }

    public Indicator Indicator { get; }

    /// <summary>Expected difference treated − untreated at middling strength.</summary>
    public double[] Difference =>
        [.. _levels[Middling].Treated.Mean.Zip(_levels[Middling].Untreated.Mean, (t, u) => t - u)];

    /// <summary>Variance of the difference.</summary>
    public double[] DifferenceVariance =>
        [.. _levels[Middling].Treated.Variance.Zip(_levels[Middling].Untreated.Variance, (t, u) => t + u)];

    /// <summary>Logarithm of how well two means fit the palette; 0 at best.</summary>
    public double LogFit(double[] treatedMean, double[] untreatedMean) =>
        _levels.Max(level => LogFit(level.Treated, level.Untreated, treatedMean, untreatedMean));

    /// <summary>Logarithm of how well one mean fits the treated (or untreated) colours; 0 at best.</summary>
    public double LogFit(double[] mean, bool isTreated) =>
        _levels.Max(level =>
        {
            var expected = isTreated ? level.Treated : level.Untreated;
            double sum = 0;
            for (var k = 0; k < 3; k++)
            {
                var off = mean[k] - expected.Mean[k];
                sum -= off * off / (expected.Variance[k] + (LightSpread[k] * LightSpread[k]));
            }
            return sum / 2;
        });

    private static double LogFit(Spread treated, Spread untreated, double[] treatedMean, double[] untreatedMean)
    {
        var brighter = Math.Max(0, treatedMean[0] - untreatedMean[0] - MostBrighter);
        var sum = -BrighterCost * brighter * brighter;
        for (var k = 0; k < 3; k++)
        {
            var difference = treatedMean[k] - untreatedMean[k] - (treated.Mean[k] - untreated.Mean[k]);
            var variance = treated.Variance[k] + untreated.Variance[k];
            var middle = (treatedMean[k] + untreatedMean[k] - treated.Mean[k] - untreated.Mean[k]) / 2;
            var middleVariance = (variance / 4) + (LightSpread[k] * LightSpread[k]);
            sum -= (difference * difference / variance) + (middle * middle / middleVariance);
        }
        return sum / 2;
    }

    private static Spread SpreadOf(IReadOnlyList<int> colours, double strength)
    {
        var points = colours
            .Select(c => LogColour.OfHex(Blend(c, strength)))
            .Select(c => new double[] { c.L, c.U, c.V })
            .ToList();
        var mean = new double[3];
        var variance = new double[3];
        for (var k = 0; k < 3; k++)
        {
            mean[k] = points.Average(p => p[k]);
            variance[k] = points.Average(p => (p[k] - mean[k]) * (p[k] - mean[k])) + (OwnSpread[k] * OwnSpread[k]);
        }
        return new(mean, variance);
    }

    private static int Blend(int colour, double strength)
    {
        int Channel(int shift) =>
            (int)Math.Round((((colour >> shift) & 255) * strength) + (((Wood >> shift) & 255) * (1 - strength)));
        return (Channel(16) << 16) | (Channel(8) << 8) | Channel(0);
    }
}

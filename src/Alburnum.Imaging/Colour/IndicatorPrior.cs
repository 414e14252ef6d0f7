namespace Alburnum.Imaging.Colour;

/// <summary>What an indicator's palette leads one to expect of the two mean colours in a photograph.</summary>
/// <remarks>
/// The two means are expected at the palette's, up to a change of light common to both (wide) and a change of wood and dose
/// of each (narrower). So their difference is known better than either.
/// </remarks>
internal sealed class IndicatorPrior
{
    private static readonly double[] OwnSpread = [0.45, 0.2, 0.28];
    private static readonly double[] LightSpread = [0.8, 0.22, 0.3];
    private readonly (double[] Mean, double[] Variance) treated;
    private readonly (double[] Mean, double[] Variance) untreated;

    public IndicatorPrior(Indicator indicator)
    {
        Indicator = indicator;
        treated = Spread(indicator.TreatedColours);
        untreated = Spread(indicator.UntreatedColours);
    }

    public Indicator Indicator { get; }

    /// <summary>Expected difference treated − untreated.</summary>
    public double[] Difference => [.. treated.Mean.Zip(untreated.Mean, (t, u) => t - u)];

    /// <summary>Variance of the difference.</summary>
    public double[] DifferenceVariance => [.. treated.Variance.Zip(untreated.Variance, (t, u) => t + u)];

    /// <summary>Logarithm of how well two means fit the palette; 0 at best.</summary>
    public double LogFit(double[] treatedMean, double[] untreatedMean)
    {
        double sum = 0;
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

    /// <summary>Logarithm of how well one mean fits the treated (or untreated) colours; 0 at best.</summary>
    public double LogFit(double[] mean, bool isTreated)
    {
        var (expected, variance) = isTreated ? treated : untreated;
        double sum = 0;
        for (var k = 0; k < 3; k++)
        {
            var off = mean[k] - expected[k];
            sum -= off * off / (variance[k] + (LightSpread[k] * LightSpread[k]));
        }
        return sum / 2;
    }

    private static (double[] Mean, double[] Variance) Spread(IReadOnlyList<int> colours)
    {
        var points = colours.Select(LogColour.OfHex).Select(c => new double[] { c.L, c.U, c.V }).ToList();
        var mean = new double[3];
        var variance = new double[3];
        for (var k = 0; k < 3; k++)
        {
            mean[k] = points.Average(p => p[k]);
            variance[k] = points.Average(p => (p[k] - mean[k]) * (p[k] - mean[k])) + (OwnSpread[k] * OwnSpread[k]);
        }
        return (mean, variance);
    }
}

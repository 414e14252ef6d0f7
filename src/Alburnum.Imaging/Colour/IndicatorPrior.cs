using Alburnum.Penetration;

namespace Alburnum.Imaging.Colour;

/// <summary>What an indicator's palette leads one to expect of the two mean colours in a photograph.</summary>
/// <remarks>The palette is tried at several strengths of the spray, and the best counts.</remarks>
internal sealed class IndicatorPrior
{
    // All figures are our own choice.

    /// <summary>No indicator, and no preservative, makes wood brighter by more than this, a difference of ln(light); beyond it, what its square costs.</summary>
    private const double MostBrighter = 0.15;

    private const double BrighterCost = 40;

    /// <summary>From the usual colour of bare wood to that of heartwood, half-way from sapwood: ln(light), ln(red ⁄ green), ln(blue ⁄ green).</summary>
    private static readonly double[] ToHeartwood = [-0.25, 0.15, -0.075];

    private static readonly double[] ToSapwood = [.. ToHeartwood.Select(d => -d)];

    private readonly IReadOnlyList<ColourPair> _reactions;
    private readonly IReadOnlyList<ColourPair> _bare;

    public IndicatorPrior(Indicator indicator)
    {
        Indicator = indicator;
        _reactions = ColourPair.Of(indicator.TreatedColours, indicator.UntreatedColours);
        _bare =
        [
            .. _reactions.SelectMany(pair =>
                (ColourPair[])
                    [new(pair.Other, pair.Other), new(pair.Other.Moved(ToSapwood), pair.Other.Moved(ToHeartwood))]
            ),
        ];
    }

    public Indicator Indicator { get; }

    /// <summary>Expected difference treated − untreated at middling strength.</summary>
    public double[] Difference =>
        [.. _reactions[ColourPair.Middling].One.Mean.Zip(_reactions[ColourPair.Middling].Other.Mean, (t, u) => t - u)];

    /// <summary>Variance of the difference.</summary>
    public double[] DifferenceVariance =>
        [
            .. _reactions[ColourPair.Middling]
                .One.Variance.Zip(_reactions[ColourPair.Middling].Other.Variance, (t, u) => t + u),
        ];

    /// <summary>Logarithm of how well two means fit the palette; 0 at best.</summary>
    public double LogFit(double[] treatedMean, double[] untreatedMean)
    {
        var brighter = Math.Max(0, treatedMean[0] - untreatedMean[0] - MostBrighter);
        return _reactions.Max(pair => pair.LogFit(treatedMean, untreatedMean))
            - (BrighterCost * brighter * brighter / 2);
    }

    /// <summary>Logarithm of how well two means fit wood on which the indicator finds nothing, both alike or sapwood outside heartwood; 0 at best.</summary>
    public double LogFitBare(double[] outerMean, double[] innerMean) =>
        _bare.Max(pair => pair.LogFit(outerMean, innerMean));

    /// <summary>Logarithm of how well one mean fits the treated (or untreated) colours; 0 at best.</summary>
    public double LogFit(double[] mean, bool isTreated) =>
        _reactions.Max(pair => (isTreated ? pair.One : pair.Other).LogFit(mean));
}

using Alburnum.Timber;

namespace Alburnum.Imaging.Colour;

/// <summary>What a reagent for heartwood leads one to expect of the mean colours in a photograph, at the strength of the spray that suits them best.</summary>
/// <param name="reagent">The reagent.</param>
internal sealed class HeartwoodPrior(HeartwoodReagent reagent)
{
    private readonly IReadOnlyList<ColourPair> _pairs = ColourPair.Of(reagent.HeartwoodColours, reagent.SapwoodColours);

    /// <summary>Logarithm of how well two means fit heartwood and sapwood, whichever is which; 0 at best.</summary>
    public double LogFit(double[] one, double[] other) =>
        _pairs.Max(pair => Math.Max(pair.LogFit(one, other), pair.LogFit(other, one)));

    /// <summary>Logarithm of how well one mean fits heartwood or sapwood; 0 at best.</summary>
    public double LogFit(double[] mean) => _pairs.Max(pair => Math.Max(pair.One.LogFit(mean), pair.Other.LogFit(mean)));
}

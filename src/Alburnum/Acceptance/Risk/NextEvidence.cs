using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance.Risk;

/// <summary>How much another reading or another piece would help, before it is paid for.</summary>
public static class NextEvidence
{
    /// <summary>Probability that a second, independent reading of the same piece would decide it.</summary>
    /// <param name="reading">The reading so far; standard uncertainty above 0.</param>
    /// <param name="lowerLimit">Least value that conforms.</param>
    /// <param name="nextUncertainty">Standard uncertainty of the reading considered, for instance a better photograph. Above 0.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <remarks>
    /// The two readings would be weighed together; before the second is taken, their mean scatters about the first with the variance
    /// that the second removes.
    /// </remarks>
    public static double SecondReadingDecides(
        Estimate reading,
        double lowerLimit,
        double nextUncertainty,
        DecisionRule decision
    )
    {
        var u = Require.Positive(reading.StandardUncertainty, "");
        Require.Positive(nextUncertainty, "");
        var together = ConformityRisk.Combine(reading, new(reading.Value, nextUncertainty)).StandardUncertainty;
        var scatter = Math.Sqrt(u * u - together * together);
        var conforms = lowerLimit + Normal.InvCDF(0, 1, Math.Min(decision.ConformsFrom, 1 - 1e-12)) * together;
        var fails = lowerLimit + Normal.InvCDF(0, 1, Math.Max(decision.FailsUpTo, 1e-12)) * together;
        return Normal.CDF(0, 1, (reading.Value - conforms) / scatter)
            + Normal.CDF(0, 1, (fails - reading.Value) / scatter);
    }

    /// <summary>Probability that cutting more pieces would bring the lower bound on the conforming share to a target.</summary>
    /// <param name="failures">Failures so far.</param>
    /// <param name="cut">Pieces cut so far, 0 or more.</param>
    /// <param name="more">Further pieces, 1 or more.</param>
    /// <param name="lotSize">Pieces in the lot; null for a supply without end.</param>
    /// <param name="conformingShare">Share to be shown, above 0, below 1.</param>
    /// <param name="confidence">Confidence of the bound.</param>
    /// <remarks>The failures still to come follow the beta-binomial of what has been seen (belief before: Jeffreys').</remarks>
    public static double MorePiecesShow(
        int failures,
        int cut,
        int more,
        int? lotSize,
        double conformingShare,
        double confidence
    )
    {
        Require.InRange(more, 1, lotSize - cut ?? 1_000_000, "pieces");
        var belief = new BetaBinomial(failures, cut);
        return Enumerable
            .Range(0, more + 1)
            .Where(next =>
                LotShare.LowerBound(cut + more - failures - next, cut + more, lotSize, confidence) >= conformingShare
            )
            .Sum(next => belief.Probability(next, more));
    }
}

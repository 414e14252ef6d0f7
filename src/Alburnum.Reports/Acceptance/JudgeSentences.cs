using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Acceptance;

/// <summary>What is said of a judged batch beside its reasons.</summary>
internal static class JudgeSentences
{
    public static string Believed(Belief belief)
    {
        var supply =
            $"Bayesian reading (Jeffreys' belief before): {Percent(belief.Confidence)} probable that at least {Percent(belief.LeastShare)} of the supply conform";
        return belief.Lot is { } lot
            ? $"{supply}, {Certainty(lot.Probability)} that {Percent(lot.Share)} of this lot do."
            : supply + ".";
    }

    public static string Other(OtherReading other, int pieces) =>
        $"Read as \"{ReasonWords.English.Acceptance.Rule(other.Rule)}\" instead, {other.MayFail} of {pieces} may fail and penetration "
        + $"{(other.Penetration == Verdict.Undecided ? "is undecided" : other.Penetration.InWords())}.";

    public static IEnumerable<string> Risks(ReadingRisks risks)
    {
        if (risks is not { Now: { } now, WithHalfTheUncertainty: { } better })
        {
            yield return $"Global risks are not put in figures: fewer than {PieceRisks.LeastPieces} pieces turn on one depth that was read with an uncertainty.";
            yield break;
        }
        yield return $"Pieces of such a production (margin {Mm(now.MarginMm.Value)}, spread {Mm(now.MarginMm.StandardUncertainty)}, read to "
            + $"{Mm(now.ReadingUMm)}, guard band {Mm(now.GuardBandMm)}): consumer's risk {Certainty(now.Consumer)} (fails, is said to conform), "
            + $"producer's risk {Certainty(now.Producer)} (conforms, is said not to); {Certainty(now.LeftOpen)} conform and stay undecided.";
        if (now.SpecificConsumer is { } fails)
            yield return $"Of the pieces in hand that conform, the least sure fails with probability {Certainty(fails)}.";
        if (now.SpecificProducer is { } meets)
            yield return $"Of the pieces in hand that do not conform, the least sure meets its demand with probability {Certainty(meets)}.";
        yield return $"Read twice as well (a better photograph): consumer's risk {Certainty(better.Consumer)}, producer's "
            + $"{Certainty(better.Producer)}, undecided though conforming {Certainty(better.LeftOpen)}.";
    }

    /// <summary>What a better photograph or some more pieces would do for a verdict that is still open.</summary>
    public static IEnumerable<string> Help(CountedBatch counted)
    {
        foreach (var reading in counted.SecondReadings)
            yield return $"Piece {reading.Piece}: a second reading as good as the first would decide it with probability "
                + $"{Certainty(reading.Decides)}, one with half the uncertainty with {Certainty(reading.BetterDecides)}.";
        if (counted.MorePieces is TooFewPieces few)
            yield return $"The bound on the conforming share does not reach {Percent(few.Share)} with {few.Pieces} more pieces either.";
        if (counted.MorePieces is EnoughPieces more)
            yield return $"The bound on the conforming share reaches {Percent(more.Share)} with {Wording.English.Count("count.more-piece", more.Pieces)}, if all conform: probability "
                + $"{Certainty(more.Probability)} by what was seen so far.";
    }
}

using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>Risks of a wrong verdict on single pieces (JCGM 106), now and with readings of half the uncertainty.</summary>
/// <param name="Now">The risks; absent where too few pieces turn on one depth.</param>
/// <param name="WithHalfTheUncertainty">The same if every piece were read twice as well; absent likewise.</param>
/// <param name="InWords">The risks in words, or why there are none.</param>
internal sealed record JudgeRisks(PieceRisks? Now, PieceRisks? WithHalfTheUncertainty, IReadOnlyList<string> InWords)
{
    public static JudgeRisks Of(IReadOnlyList<Judgement> pieces, DecisionRule decision)
    {
        if (PieceRisks.Of(pieces, decision) is not { } now || PieceRisks.Of(pieces, decision, 0.5) is not { } better)
            return new(
                null,
                null,
                [
                    $"Global risks are not put in figures: fewer than {PieceRisks.LeastPieces} pieces turn on one depth that was read with an uncertainty.",
                ]
            );
        return new(
            now,
            better,
            [
                $"Pieces of such a production (margin {Mm(now.MarginMm.Value)}, spread {Mm(now.MarginMm.StandardUncertainty)}, read to "
                    + $"{Mm(now.ReadingUMm)}, guard band {Mm(now.GuardBandMm)}): consumer's risk {Certainty(now.Consumer)} (fails, is said to conform), "
                    + $"producer's risk {Certainty(now.Producer)} (conforms, is said not to); {Certainty(now.LeftOpen)} conform and stay undecided.",
                .. Specific(now),
                $"Read twice as well (a better photograph): consumer's risk {Certainty(better.Consumer)}, producer's "
                    + $"{Certainty(better.Producer)}, undecided though conforming {Certainty(better.LeftOpen)}.",
            ]
        );
    }

    private static IEnumerable<string> Specific(PieceRisks now)
    {
        if (now.SpecificConsumer is { } fails)
            yield return $"Of the pieces in hand that conform, the least sure fails with probability {Certainty(fails)}.";
        if (now.SpecificProducer is { } meets)
            yield return $"Of the pieces in hand that do not conform, the least sure meets its demand with probability {Certainty(meets)}.";
    }
}

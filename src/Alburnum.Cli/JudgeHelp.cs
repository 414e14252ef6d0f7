using Alburnum.Acceptance;
using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Cli;

/// <summary>What a better photograph or some more pieces would do for a verdict that is still open.</summary>
internal static class JudgeHelp
{
    private const int MorePieces = 5;

    public static IReadOnlyList<string> For(
        IReadOnlyList<PieceJudgement> pieces,
        BatchJudgement batch,
        int? lot,
        DecisionRule decision
    )
    {
        // A verdict that stands needs no more wood.
        if (batch.Penetration.Verdict != Verdict.Undecided)
            return [];
        List<string> help = [];
        foreach (
            var piece in pieces.Where(piece =>
                piece.Judgement is { Verdict: Verdict.Undecided, Probability: > 0 and < 1 }
            )
        )
        {
            // In units of the reading's own uncertainty the margin is the normal quantile of the probability.
            var margin = new Estimate(Normal.InvCDF(0, 1, piece.Judgement.Probability!.Value), 1);
            help.Add(
                $"Piece {piece.Number}: a second reading as good as the first would decide it with probability "
                    + $"{Options.Percent(NextEvidence.SecondReadingDecides(margin, 0, 1, decision))}, one with half the uncertainty "
                    + $"with {Options.Percent(NextEvidence.SecondReadingDecides(margin, 0, 0.5, decision))}."
            );
        }
        if (batch.Rule is ShareMustPass { Share: < 1 } rule && batch.ConformingShare.LowerBound < rule.Share)
        {
            var more = Math.Min(MorePieces, (lot ?? int.MaxValue) - batch.Counts.Cut);
            if (more > 0)
                help.Add(
                    $"The bound on the conforming share would reach {Options.Percent(rule.Share)} with probability "
                        + Options.Percent(
                            NextEvidence.MorePiecesShow(
                                batch.Counts.Cut - batch.Counts.Conforming,
                                batch.Counts.Cut,
                                more,
                                lot,
                                rule.Share,
                                batch.ConformingShare.Confidence
                            )
                        )
                        + $" if {more} more pieces were cut."
                );
        }
        return help;
    }
}

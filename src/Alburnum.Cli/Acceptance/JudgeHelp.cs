using Alburnum.Acceptance;
using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>What a better photograph or some more pieces would do for a verdict that is still open.</summary>
internal static class JudgeHelp
{
    private const int MorePiecesMax = 500;

    public static IReadOnlyList<string> For(
        IReadOnlyList<PieceJudgement> pieces,
        BatchJudgement batch,
        int? lot,
        DecisionRule decision
    ) =>
        // A verdict that stands needs no more wood.
        batch.Penetration.Verdict == Verdict.Undecided
            ? [.. Readings(pieces, decision), .. Cores(batch, lot)]
            : [];

    private static IEnumerable<string> Readings(IReadOnlyList<PieceJudgement> pieces, DecisionRule decision)
    {
        foreach (var piece in pieces.Where(piece => piece.Judgement.Verdict == Verdict.Undecided))
        {
            if (piece.Judgement.MarginMm is not { StandardUncertainty: > 0 and var u } margin)
                continue;
            yield return $"Piece {piece.Number}: a second reading as good as the first would decide it with probability "
                + $"{Certainty(NextEvidence.SecondReadingDecides(margin, 0, u, decision))}, one with half the uncertainty "
                + $"with {Certainty(NextEvidence.SecondReadingDecides(margin, 0, u / 2, decision))}.";
        }
    }

    private static IEnumerable<string> Cores(BatchJudgement batch, int? lot)
    {
        if (batch.Rule is not ShareMustPass { Share: < 1 } rule || batch.ConformingShare.LowerBound >= rule.Share)
            yield break;
        var (cut, failures, sure) = (
            batch.Counts.Cut,
            batch.Counts.Cut - batch.Counts.Conforming,
            batch.ConformingShare.Confidence
        );
        var mostMore = Math.Min(MorePiecesMax, (lot ?? int.MaxValue) - cut);
        var needed = Enumerable
            .Range(1, Math.Max(0, mostMore))
            .FirstOrDefault(more =>
                LotShare.LowerBound(batch.Counts.Conforming + more, cut + more, lot, sure) >= rule.Share
            );
        yield return needed == 0
            ? $"The bound on the conforming share does not reach {Percent(rule.Share)} with {mostMore} more pieces either."
            : $"The bound on the conforming share reaches {Percent(rule.Share)} with {Wording.English.Count("count.more-piece", needed)}, if all conform: probability "
                + $"{Certainty(NextEvidence.MorePiecesShow(failures, cut, needed, lot, rule.Share, sure))} by what was seen so far.";
    }
}

using Alburnum.Acceptance;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>Makes the sheet of a batch judged by counting.</summary>
internal static class JudgeSheet
{
    /// <summary>The sheet of a batch, with what the other reading of the same figure would have said.</summary>
    public static JudgeDocument Of(
        BatchJudgement batch,
        IReadOnlyList<PieceJudgement> pieces,
        int? lot,
        string? demand,
        AcceptanceRule? other,
        DecisionRule decision
    ) =>
        new(
            batch.Overall.Verdict.InWords(),
            batch.Overall.Probability?.Middle,
            ReasonWords.English.Say(batch.Parts),
            ReasonWords.English.Acceptance.Rule(batch.Rule),
            demand,
            JudgePart.Of(batch.Penetration),
            batch.Retention is { } retention ? JudgePart.Of(retention) : null,
            batch.Counts,
            batch.ConformingShare,
            Believed(batch, lot),
            [.. pieces.Select(piece => JudgePiece.Of(piece.Number, piece.Judgement))],
            OtherReading(other, pieces, lot, decision),
            demand is null ? null : JudgeRisks.Of([.. pieces.Select(piece => piece.Judgement)], decision),
            JudgeHelp.For(pieces, batch, lot, decision)
        );

    /// <summary>The sheet of a case that was run.</summary>
    public static JudgeDocument Of(JudgedCase result, DecisionRule decision)
    {
        PieceJudgement[] pieces =
        [
            .. result.Pieces.Select(piece => new PieceJudgement(piece.Evidence.Piece, piece.Judgement)),
        ];
        if (result is { Batch: { } batch, Required.Answer: Alburnum.Requirements.Required required })
        {
            var sheet = Of(
                batch,
                pieces,
                result.Enquired.BatchSize,
                required.Requirement.Penetration.InWords,
                null,
                decision
            );
            // What the case could not judge belongs to its reasons.
            return sheet with { InWords = string.Join(" ", ReasonWords.English.Say(result.Overall.Reasons)) };
        }
        return new(
            result.Overall.Verdict.InWords(),
            result.Overall.Probability?.Middle,
            string.Join(" ", ReasonWords.English.Say(result.Overall.Reasons)),
            ReasonWords.English.Acceptance.Rule(result.Enquired.Acceptance),
            null,
            JudgePart.Of(result.Overall),
            null,
            BatchConformity.Count(pieces),
            null,
            null,
            [.. pieces.Select(piece => JudgePiece.Of(piece.Number, piece.Judgement))],
            null,
            null,
            []
        );
    }

    /// <summary>The beta-binomial reading beside the exact bound; undecided pieces count as failing in both.</summary>
    private static string Believed(BatchJudgement batch, int? lot)
    {
        var belief = new BetaBinomial(batch.Counts.Cut - batch.Counts.Conforming, batch.Counts.Cut);
        var share = Percent(belief.ConformingShareExceeded(batch.ConformingShare.Confidence));
        var supply =
            $"Bayesian reading (Jeffreys' belief before): {Percent(batch.ConformingShare.Confidence)} probable that at least {share} of the supply conform";
        return lot is { } pieces && batch.Rule is ShareMustPass rule
            ? $"{supply}, {Certainty(belief.LotConforms(rule.Share, pieces))} that {Percent(rule.Share)} of this lot do."
            : supply + ".";
    }

    private static string? OtherReading(
        AcceptanceRule? other,
        IReadOnlyList<PieceJudgement> pieces,
        int? lot,
        DecisionRule decision
    )
    {
        if (other is null)
            return null;
        var judged = BatchConformity.Judge(new(pieces, lot, other), decision);
        return $"Read as \"{ReasonWords.English.Acceptance.Rule(other)}\" instead, {other.MayFail(pieces.Count)} of {pieces.Count} may fail and penetration "
            + $"{(judged.Penetration.Verdict == Verdict.Undecided ? "is undecided" : judged.Penetration.Verdict.InWords())}.";
    }
}

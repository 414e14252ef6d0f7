using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes the verdict on a batch down.</summary>
public static class JudgeMapping
{
    /// <summary>A batch judged by counting.</summary>
    public static JudgeDocument Of(CountedBatch counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        var batch = counted.Batch;
        return new()
        {
            Verdict = batch.Overall.Verdict,
            Probability = batch.Overall.Probability,
            InWords = batch.InWords,
            Rule = batch.Rule.InWords,
            Demand = counted.Demand,
            Penetration = Part(batch.Penetration),
            Retention = batch.Retention is { } retention ? Part(retention) : null,
            Counts = batch.Counts,
            ConformingShare = batch.ConformingShare,
            Believed = JudgeSentences.Believed(counted.Belief),
            Pieces = [.. counted.Pieces.Select(Piece)],
            OtherReading = counted.Other is { } other ? JudgeSentences.Other(other, counted.Pieces.Count) : null,
            Risks = counted.Risks is { } risks
                ? new()
                {
                    Now = risks.Now,
                    WithHalfTheUncertainty = risks.WithHalfTheUncertainty,
                    InWords = [.. JudgeSentences.Risks(risks)],
                }
                : null,
            Help = [.. JudgeSentences.Help(counted)],
        };
    }

    /// <summary>The batch of a case.</summary>
    public static JudgeDocument Of(CaseBatch judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        var overall = judged.Result.Overall;
        if (judged.Counted is { } counted)
        {
            // What the case could not judge belongs to its reasons.
            var inWords = counted.Batch.InWords;
            string[] open = [.. overall.Reasons.Where(reason => reason != inWords)];
            return Of(counted) with { InWords = string.Join(" ", [inWords, .. open]) };
        }
        return new()
        {
            Verdict = overall.Verdict,
            Probability = overall.Probability,
            InWords = string.Join(" ", overall.Reasons),
            Rule = judged.Result.Case.Acceptance.InWords,
            Penetration = Part(overall),
            Counts = BatchConformity.Count(judged.Pieces),
            Pieces = [.. judged.Pieces.Select(Piece)],
            Help = [],
        };
    }

    private static JudgePart Part(Judgement judgement) =>
        new()
        {
            Verdict = judgement.Verdict,
            Probability = judgement.Probability,
            Reasons = judgement.Reasons,
        };

    private static JudgePiece Piece(PieceJudgement piece) =>
        new()
        {
            Piece = piece.Number,
            Verdict = piece.Judgement.Verdict,
            Probability = piece.Judgement.Probability,
            MarginMm = piece.Judgement.MarginMm?.Value,
            MarginUMm = piece.Judgement.MarginMm?.StandardUncertainty,
            Reasons = piece.Judgement.Reasons,
        };
}

using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
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
            Probability = batch.Overall.Probability?.Middle,
            ProbabilityLow = batch.Overall.Probability?.Low,
            ProbabilityHigh = batch.Overall.Probability?.High,
            InWords = ReasonWords.Current.Say(batch.Parts),
            Rule = ReasonWords.Current.Acceptance.Rule(batch.Rule),
            Demand = counted.Demand is { } rule ? RequirementWords.Current.Depths.Say(rule) : null,
            Penetration = Part(batch.Penetration),
            Retention = batch.Retention is { } retention ? Part(retention) : null,
            Counts = batch.Counts,
            ConformingShare = batch.ConformingShare,
            Believed = JudgeWords.Current.Say(counted.Belief),
            Pieces = [.. counted.Pieces.Select(Piece)],
            OtherReading = counted.Other is { } other ? JudgeWords.Current.Say(other, counted.Pieces.Count) : null,
            Risks = counted.Risks is { } risks
                ? new()
                {
                    Now = risks.Now,
                    WithHalfTheUncertainty = risks.WithHalfTheUncertainty,
                    InWords = [.. JudgeWords.Current.Say(risks)],
                }
                : null,
            Help = [.. JudgeWords.Current.Help(counted)],
        };
    }

    /// <summary>The batch of a case.</summary>
    public static JudgeDocument Of(CaseBatch judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        var overall = judged.Judged.Overall;
        var inWords = string.Join(" ", ReasonWords.Current.Say(overall.Reasons));
        // What the case could not judge belongs to its reasons.
        if (judged.Counted is { } counted)
            return Of(counted) with { InWords = inWords };
        return new()
        {
            Verdict = overall.Verdict,
            Probability = overall.Probability?.Middle,
            ProbabilityLow = overall.Probability?.Low,
            ProbabilityHigh = overall.Probability?.High,
            InWords = inWords,
            Rule = ReasonWords.Current.Acceptance.Rule(judged.Judged.Enquired.Acceptance),
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
            Probability = judgement.Probability?.Middle,
            ProbabilityLow = judgement.Probability?.Low,
            ProbabilityHigh = judgement.Probability?.High,
            Reasons = ReasonWords.Current.Say(judgement.Reasons),
            Grounds = ReasonMapping.Of(judgement.Reasons),
        };

    private static JudgePiece Piece(PieceJudgement piece) =>
        new()
        {
            Piece = piece.Number,
            Verdict = piece.Judgement.Verdict,
            Probability = piece.Judgement.Probability?.Middle,
            ProbabilityLow = piece.Judgement.Probability?.Low,
            ProbabilityHigh = piece.Judgement.Probability?.High,
            MarginMm = piece.Judgement.MarginMm?.Value,
            MarginUMm = piece.Judgement.MarginMm?.StandardUncertainty,
            Reasons = ReasonWords.Current.Say(piece.Judgement.Reasons),
            Grounds = ReasonMapping.Of(piece.Judgement.Reasons),
        };
}

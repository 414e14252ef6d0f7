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
            Findings = FindingsMapping.Of(batch.Findings),
            AcceptanceRule = ReasonWords.Current.Acceptance.Rule(batch.Rule),
            Demand = counted.Demand is { } rule ? RequirementWords.Current.Depths.Say(rule) : null,
            Penetration = FindingsMapping.Rule(batch.Penetration),
            Retention = batch.Retention is { } retention ? FindingsMapping.Rule(retention) : null,
            Counts = batch.Counts,
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
            BesideFindings = Beside(batch.Findings, batch.Penetration, batch.Retention),
        };
    }

    /// <summary>The batch of a case.</summary>
    public static JudgeDocument Of(CaseBatch judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        // What the case could not judge belongs to its findings.
        var findings = FindingsMapping.Of(judged.Judged.Findings);
        if (judged.Counted is { } counted)
            return Of(counted) with
            {
                Findings = findings,
                BesideFindings = Beside(judged.Judged.Findings, counted.Batch.Penetration, counted.Batch.Retention),
            };
        return new()
        {
            Findings = findings,
            AcceptanceRule = ReasonWords.Current.Acceptance.Rule(judged.Judged.Enquired.Acceptance),
            Penetration = FindingsMapping.Rule(judged.Judged.Overall),
            Retention = judged.Judged.Findings.Rule.Retention is { } retention ? FindingsMapping.Rule(retention) : null,
            Counts = BatchConformity.Count(judged.Pieces),
            Pieces = [.. judged.Pieces.Select(Piece)],
            Help = [],
            BesideFindings = Beside(
                judged.Judged.Findings,
                judged.Judged.Overall,
                judged.Judged.Findings.Rule.Retention
            ),
        };
    }

    private static IReadOnlyList<string> Beside(BatchFindings findings, Judgement penetration, Judgement? retention) =>
        ReasonWords.Current.Say(
            penetration
                .Reasons.Concat(retention?.Reasons ?? [])
                .Where(reason => !FindingsMapping.Says(findings, reason))
        );

    private static JudgePiece Piece(PieceJudgement piece) =>
        new()
        {
            Piece = piece.Number,
            Verdict = piece.Judgement.Verdict,
            Probability = FindingsMapping.Chance(piece.Judgement.Probability?.Middle),
            ProbabilityLow = FindingsMapping.Chance(piece.Judgement.Probability?.Low),
            ProbabilityHigh = FindingsMapping.Chance(piece.Judgement.Probability?.High),
            MarginMm = piece.Judgement.MarginMm?.Value,
            MarginUMm = piece.Judgement.MarginMm?.StandardUncertainty,
            Reasons = ReasonWords.Current.Say(piece.Judgement.Reasons),
            Grounds = ReasonMapping.Of(piece.Judgement.Reasons),
        };
}

using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>Runs a case: the rulebook's answer, every piece against it, then the batch.</summary>
public static class CaseRun
{
    /// <summary>Runs a case on what was measured.</summary>
    /// <param name="case">The case.</param>
    /// <param name="rulebook">The code of practice that governs it.</param>
    /// <param name="evidence">What was measured on each piece cut; one or more, each with its own name.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <exception cref="ArgumentException">No pieces, a name twice, or more pieces than the batch has.</exception>
    public static CaseResult Run(
        Case @case,
        Rulebook rulebook,
        IReadOnlyList<PieceEvidence> evidence,
        DecisionRule decision
    )
    {
        var answer = rulebook.Answer(@case.Enquiry);
        var stated = evidence.Select(piece => WithStatedSapwood(piece, @case.StatedSapwoodMm)).ToList();
        return answer switch
        {
            Required required => Judged(@case, required, stated, decision),
            NotPermitted no => Unjudged(
                @case,
                no,
                stated,
                new(Verdict.DoesNotConform, ProbabilityRange.Exactly(0), [new CodeForbids(no)])
            ),
            NotCovered unknown => Unjudged(
                @case,
                unknown,
                stated,
                new(Verdict.Undecided, null, [new RulebookSilent(unknown)])
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(rulebook), answer, "Not an answer."),
        };
    }

    private static CaseResult Judged(
        Case @case,
        Required required,
        IReadOnlyList<PieceEvidence> evidence,
        DecisionRule decision
    )
    {
        var pieces = evidence
            .Select(piece => new PieceResult(piece, Judge(piece, required.Requirement.Penetration, decision)))
            .ToList();
        var retention = RequiredRetention(@case, required.Requirement);
        var batch = BatchConformity.Judge(
            new(
                [.. pieces.Select(piece => new PieceJudgement(piece.Evidence.Piece, piece.Judgement))],
                @case.BatchSize,
                @case.Acceptance
            )
            {
                Assays = @case.Assays,
                RequiredKgPerM3 = retention,
            },
            decision
        );
        var overall = batch.Overall with { Reasons = [batch.Parts, .. Unmeasured(@case, retention)] };
        return new(@case, required, pieces, batch, retention, overall);
    }

    private static CaseResult Unjudged(
        Case @case,
        Answer answer,
        IReadOnlyList<PieceEvidence> evidence,
        Judgement overall
    )
    {
        var nothingToMeet = new Judgement(Verdict.Undecided, null, [new NoDepthKnown()]);
        return new(
            @case,
            answer,
            [.. evidence.Select(piece => new PieceResult(piece, nothingToMeet))],
            null,
            null,
            overall
        );
    }

    private static Judgement Judge(PieceEvidence piece, DepthRule rule, DecisionRule decision) =>
        piece.Profile is { } profile
            ? PieceConformity.Judge(rule, profile, decision)
            : new Judgement(Verdict.Undecided, null, [.. piece.NotDetermined.Select(note => new DepthNotRead(note))]);

    private static double? RequiredRetention(Case @case, Requirement requirement) =>
        @case.StatedRetentionKgPerM3
        ?? (requirement.RequiredRetention is { Unit: AmountUnit.KgPerM3 } amount ? amount.Value : null);

    /// <summary>What the verdict leaves out, so that silence is never taken for a pass.</summary>
    private static IEnumerable<CaseReason> Unmeasured(Case @case, double? requiredKgPerM3)
    {
        if (requiredKgPerM3 is null)
            yield return new RetentionNotStated();
        else if (@case.Assays.Count == 0)
            yield return new RetentionNotAssayed();
    }

    private static PieceEvidence WithStatedSapwood(PieceEvidence piece, double? sapwoodMm) =>
        sapwoodMm is not { } depthMm || piece.Profile is not { } profile
            ? piece
            : piece with
            {
                Profile = profile with
                {
                    Faces =
                    [
                        .. profile.Faces.Select(face =>
                            face with
                            {
                                SapwoodDepthMm = [.. face.SapwoodDepthMm.Select(seen => seen ?? depthMm)],
                            }
                        ),
                    ],
                },
            };
}

using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Cli.Acceptance;

/// <summary>A batch verdict with its reasons. Fields as in docs/json/judge.md.</summary>
/// <param name="Verdict">conforms, does not conform or undecided.</param>
/// <param name="Probability">Probability that the demands are met; absent where nothing could be determined.</param>
/// <param name="InWords">The whole in a sentence or two.</param>
/// <param name="Rule">The acceptance rule that was used.</param>
/// <param name="Demand">The depth rule, in words; absent where the pieces came already judged.</param>
/// <param name="Penetration">Penetration alone.</param>
/// <param name="Retention">Retention alone; absent where none was asked for.</param>
/// <param name="Counts">Pieces by verdict.</param>
/// <param name="ConformingShare">Exact lower bound on the conforming share; absent where there was nothing to judge by.</param>
/// <param name="Believed">The Bayesian reading of the same pieces, in words; absent likewise.</param>
/// <param name="Pieces">Each piece.</param>
/// <param name="OtherReading">What the other reading of the same figure would have said; absent where there is none.</param>
/// <param name="Risks">Risks of a wrong verdict on a piece; absent where the pieces came already judged.</param>
/// <param name="Help">What further evidence would help, one sentence each.</param>
internal sealed record JudgeDocument(
    string Verdict,
    double? Probability,
    string InWords,
    string Rule,
    string? Demand,
    JudgePart Penetration,
    JudgePart? Retention,
    PieceCounts Counts,
    ConformingShareBound? ConformingShare,
    string? Believed,
    IReadOnlyList<JudgePiece> Pieces,
    string? OtherReading,
    JudgeRisks? Risks,
    IReadOnlyList<string> Help
);

/// <summary>A verdict on one part.</summary>
internal sealed record JudgePart(string Verdict, double? Probability, IReadOnlyList<string> Reasons)
{
    public static JudgePart Of(Judgement judgement) =>
        new(judgement.Verdict.InWords(), judgement.Probability?.Middle, ReasonWords.English.Say(judgement.Reasons));
}

/// <summary>A verdict on one piece.</summary>
/// <param name="Piece">Number of the piece.</param>
/// <param name="Verdict">conforms, does not conform or undecided.</param>
/// <param name="Probability">Probability that the piece meets its demand; absent where not determined.</param>
/// <param name="MarginMm">How far the deciding depth lies above what is asked for, mm; absent where no one depth decides.</param>
/// <param name="MarginUMm">Its standard uncertainty, mm.</param>
/// <param name="Reasons">Why, one sentence each.</param>
internal sealed record JudgePiece(
    string Piece,
    string Verdict,
    double? Probability,
    double? MarginMm,
    double? MarginUMm,
    IReadOnlyList<string> Reasons
)
{
    public static JudgePiece Of(string number, Judgement judgement) =>
        new(
            number,
            judgement.Verdict.InWords(),
            judgement.Probability?.Middle,
            judgement.MarginMm?.Value,
            judgement.MarginMm?.StandardUncertainty,
            ReasonWords.English.Say(judgement.Reasons)
        );
}

using Alburnum.Acceptance;
using Alburnum.Penetration;

namespace Alburnum.Cases;

/// <summary>A case from enquiry to verdict.</summary>
/// <param name="Measured">The case with what was measured.</param>
/// <param name="Pieces">Every piece with its judgement, in the order given.</param>
/// <param name="Batch">The batch's judgement; null where the rulebook demands nothing that could be judged.</param>
/// <param name="Overall">What is said of the whole.</param>
public sealed record JudgedCase(
    MeasuredCase Measured,
    IReadOnlyList<JudgedPiece> Pieces,
    BatchJudgement? Batch,
    Judgement Overall
)
{
    /// <summary>The case with what was expected.</summary>
    public PredictedCase Predicted => Measured.Predicted;

    /// <summary>The case with what is demanded.</summary>
    public RequiredCase Required => Measured.Required;

    /// <summary>The case as it was put.</summary>
    public EnquiredCase Enquired => Measured.Enquired;
}

/// <summary>One piece with its judgement.</summary>
/// <param name="Evidence">What was measured, with the sapwood as stated filled in.</param>
/// <param name="Judgement">What is said of it.</param>
public sealed record JudgedPiece(PieceEvidence Evidence, Judgement Judgement);

using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>A case from enquiry to verdict.</summary>
/// <param name="Measured">The case with what was measured.</param>
/// <param name="Pieces">Every piece with its judgement, in the order given.</param>
/// <param name="Batch">The batch's judgement; null where the rulebook demands nothing that could be judged.</param>
/// <param name="Findings">What is said of the whole: the rules, the lot, and what was not judged.</param>
public sealed record JudgedCase(
    MeasuredCase Measured,
    IReadOnlyList<JudgedPiece> Pieces,
    BatchJudgement? Batch,
    BatchFindings Findings
)
{
    /// <summary>The batch against the code's demand and against the contract's, each by itself; empty where there are not two.</summary>
    public IReadOnlyList<DemandJudged> ByDemand { get; init; } = [];

    /// <summary>Whether everything that is required is met.</summary>
    public Judgement Overall => Findings.Rule.Whole;

    /// <summary>The case with what was expected.</summary>
    public PredictedCase Predicted => Measured.Predicted;

    /// <summary>The case with what is demanded.</summary>
    public RequiredCase Required => Measured.Required;

    /// <summary>The case as it was put.</summary>
    public EnquiredCase Enquired => Measured.Enquired;
}

/// <summary>A batch against one of two demands.</summary>
/// <param name="IsContract">True for the contract's demand, false for the code's.</param>
/// <param name="Name">Name of the demand, for instance "NP5".</param>
/// <param name="Depth">How deep.</param>
/// <param name="Penetration">Whether the acceptance rule is met with that demand.</param>
public sealed record DemandJudged(bool IsContract, string Name, DepthRule Depth, Judgement Penetration);

/// <summary>The assays against one of several retentions.</summary>
/// <param name="Demand">The retention.</param>
/// <param name="Judgement">Whether it is reached.</param>
public sealed record RetentionJudged(RetentionDemand Demand, Judgement Judgement);

/// <summary>One piece with its judgement.</summary>
/// <param name="Evidence">What was measured, with the sapwood as stated filled in.</param>
/// <param name="Judgement">What is said of it.</param>
public sealed record JudgedPiece(PieceEvidence Evidence, Judgement Judgement);

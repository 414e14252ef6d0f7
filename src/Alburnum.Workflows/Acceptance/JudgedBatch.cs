using Alburnum.Acceptance;
using Alburnum.Acceptance.Risk;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Records.Tables;
using Alburnum.Requirements;

namespace Alburnum.Workflows.Acceptance;

/// <summary>A batch judged by counting its pieces.</summary>
public sealed record CountedBatch
{
    /// <summary>The judgement.</summary>
    public required BatchJudgement Batch { get; init; }

    /// <summary>Each piece.</summary>
    public required IReadOnlyList<PieceJudgement> Pieces { get; init; }

    /// <summary>The depth rule; null where the pieces came already judged.</summary>
    public DepthRule? Demand { get; init; }

    /// <summary>What the other reading of the same figure says; null where there is none.</summary>
    public OtherReading? Other { get; init; }

    /// <summary>Risks of a wrong verdict on a piece; null where the pieces came already judged.</summary>
    public ReadingRisks? Risks { get; init; }

    /// <summary>What a second reading of an undecided piece would do; empty where the verdict stands.</summary>
    public required IReadOnlyList<SecondReading> SecondReadings { get; init; }

    /// <summary>What cutting more would do; null where it would not change what is shown.</summary>
    public MorePieces? MorePieces { get; init; }
}

/// <summary>A batch judged by values measured on its pieces.</summary>
/// <param name="Pieces">The pieces.</param>
/// <param name="Demand">What was asked.</param>
/// <param name="Judgement">The judgement.</param>
/// <param name="LotSize">Pieces in the batch; null where not known.</param>
public sealed record ValuedBatch(
    ValuedPieces Pieces,
    VariablesDemand Demand,
    VariablesJudgement Judgement,
    int? LotSize
);

/// <summary>The batch of a case.</summary>
/// <param name="Judged">The case.</param>
/// <param name="Pieces">Each piece.</param>
/// <param name="Counted">The batch; null where the rulebook demands nothing that could be judged.</param>
public sealed record CaseBatch(JudgedCase Judged, IReadOnlyList<PieceJudgement> Pieces, CountedBatch? Counted);

/// <summary>What the other reading of the same figure says.</summary>
/// <param name="Rule">The other rule.</param>
/// <param name="MayFail">Failures that it allows.</param>
/// <param name="Penetration">Its verdict on penetration.</param>
public sealed record OtherReading(AcceptanceRule Rule, int MayFail, Verdict Penetration);

/// <summary>Risks of a wrong verdict on single pieces (JCGM 106), now and with readings of half the uncertainty.</summary>
/// <param name="Now">The risks; null where too few pieces turn on one depth.</param>
/// <param name="WithHalfTheUncertainty">The same if every piece were read twice as well; null likewise.</param>
public sealed record ReadingRisks(PieceRisks? Now, PieceRisks? WithHalfTheUncertainty);

/// <summary>What a second reading of a piece would do.</summary>
/// <param name="Piece">Number of the piece.</param>
/// <param name="Decides">Probability that one as good as the first decides it.</param>
/// <param name="BetterDecides">Probability that one of half the uncertainty does.</param>
public sealed record SecondReading(string Piece, double Decides, double BetterDecides);

/// <summary>What cutting more pieces would do for the bound on the conforming share.</summary>
/// <param name="Share">Share that the bound is to reach.</param>
public abstract record MorePieces(double Share);

/// <summary>So many more reach it, if all conform.</summary>
/// <param name="Share">Share that the bound is to reach.</param>
/// <param name="Pieces">Pieces more.</param>
/// <param name="Probability">Probability that all conform, by what was seen so far.</param>
public sealed record EnoughPieces(double Share, int Pieces, double Probability) : MorePieces(Share);

/// <summary>As many as there may be do not reach it either.</summary>
/// <param name="Share">Share that the bound is to reach.</param>
/// <param name="Pieces">Pieces more.</param>
public sealed record TooFewPieces(double Share, int Pieces) : MorePieces(Share);

using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Acceptance;

/// <summary>A batch verdict with its reasons. Fields as in docs/json/judge.md.</summary>
public sealed record JudgeDocument
{
    /// <summary>The headline and the three findings.</summary>
    public required FindingsDocument Findings { get; init; }

    /// <summary>The acceptance rule that was used.</summary>
    public required string AcceptanceRule { get; init; }

    /// <summary>The depth rule, in words; null where the pieces came already judged.</summary>
    public string? Demand { get; init; }

    /// <summary>Penetration alone.</summary>
    public required RuleDocument Penetration { get; init; }

    /// <summary>Retention alone; null where none was required.</summary>
    public RuleDocument? Retention { get; init; }

    /// <summary>Pieces by verdict.</summary>
    public required PieceCounts Counts { get; init; }

    /// <summary>Each piece.</summary>
    public required IReadOnlyList<JudgePiece> Pieces { get; init; }

    /// <summary>What the other reading of the same figure would have said; null where there is none.</summary>
    public string? OtherReading { get; init; }

    /// <summary>Risks of a wrong verdict on a piece; null where the pieces came already judged.</summary>
    public JudgeRisks? Risks { get; init; }

    /// <summary>What further evidence would help, one sentence each.</summary>
    public required IReadOnlyList<string> Help { get; init; }

    /// <summary>The reasons of the two parts that are not said among the findings, one sentence each, for whoever prints both.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> BesideFindings { get; init; } = [];
}

/// <summary>A verdict on one piece.</summary>
public sealed record JudgePiece
{
    /// <summary>Number of the piece.</summary>
    public required string Piece { get; init; }

    /// <summary>conforms, does not conform or undecided.</summary>
    [JsonConverter(typeof(VerdictConverter))]
    public required Verdict Verdict { get; init; }

    /// <summary>Probability that the piece meets its demand; null where not determined.</summary>
    public double? Probability { get; init; }

    /// <summary>Least probability that the evidence allows; null likewise.</summary>
    public double? ProbabilityLow { get; init; }

    /// <summary>Greatest probability that the evidence allows; null likewise.</summary>
    public double? ProbabilityHigh { get; init; }

    /// <summary>How far the deciding depth lies above what is required, mm; null where no one depth decides.</summary>
    public double? MarginMm { get; init; }

    /// <summary>Its standard uncertainty, mm.</summary>
    public double? MarginUMm { get; init; }

    /// <summary>Why, one sentence each.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The same as data, one object for each reason, in their order: docs/json/reasons.md.</summary>
    public IReadOnlyList<JsonObject> Grounds { get; init; } = [];
}

/// <summary>Risks of a wrong verdict on single pieces (JCGM 106), now and with readings of half the uncertainty.</summary>
public sealed record JudgeRisks
{
    /// <summary>The risks; null where too few pieces turn on one depth.</summary>
    public PieceRisks? Now { get; init; }

    /// <summary>The same if every piece were read twice as well; null likewise.</summary>
    public PieceRisks? WithHalfTheUncertainty { get; init; }

    /// <summary>The risks in words, or why there are none.</summary>
    public required IReadOnlyList<string> InWords { get; init; }
}

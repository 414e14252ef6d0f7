using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Alburnum.Acceptance;
using Alburnum.Penetration;

namespace Alburnum.Reports.Documents;

/// <summary>What was found of a batch: a headline, and three findings that do not stand for each other. Fields as in docs/json/findings.md.</summary>
public sealed record FindingsDocument
{
    /// <summary>All three in a line; it says no more than the weakest of them.</summary>
    public required string Headline { get; init; }

    /// <summary>The weakest of the three: conforms, does not conform or undecided.</summary>
    [JsonConverter(typeof(VerdictConverter))]
    public required Verdict Weakest { get; init; }

    /// <summary>Whether the rules are met.</summary>
    public required RuleFindingDocument Rule { get; init; }

    /// <summary>What is shown of the whole lot; null where there was nothing to judge by.</summary>
    public LotFindingDocument? Lot { get; init; }

    /// <summary>What was not judged, one sentence each.</summary>
    public required IReadOnlyList<string> NotJudged { get; init; }

    /// <summary>The same as data: docs/json/reasons.md.</summary>
    public IReadOnlyList<JsonObject> NotJudgedGrounds
    {
        get => field ?? [];
        init;
    } = [];
}

/// <summary>Whether the rules are met.</summary>
public sealed record RuleFindingDocument
{
    /// <summary>met, not met or undecided.</summary>
    [JsonConverter(typeof(RuleConverter))]
    public required Verdict Verdict { get; init; }

    /// <summary>Chance that the rules would be met if depths and retention were known exactly; null where not known.</summary>
    public double? Probability { get; init; }

    /// <summary>Least such chance that the evidence allows; null likewise.</summary>
    public double? ProbabilityLow { get; init; }

    /// <summary>Greatest such chance that the evidence allows; null likewise.</summary>
    public double? ProbabilityHigh { get; init; }

    /// <summary>The rule, in words.</summary>
    public required string InWords { get; init; }
}

/// <summary>What is shown of the whole lot.</summary>
public sealed record LotFindingDocument
{
    /// <summary>Pieces in the lot; null where its size is not known, and the supply is spoken of.</summary>
    public int? Pieces { get; init; }

    /// <summary>One-sided confidence of the bounds, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>At least this share conforms, every undecided piece counted as failing, 0 to 1.</summary>
    public required double LowerBound { get; init; }

    /// <summary>The same with every undecided piece counted as conforming.</summary>
    public required double LowerBoundIfUndecidedPass { get; init; }

    /// <summary>Share that is wanted to conform; null where none is.</summary>
    public double? WantedShare { get; init; }

    /// <summary>must pass, aql or asked: who wants it; null where no share is wanted.</summary>
    [JsonConverter(typeof(WantedByConverter))]
    public WantedBy? WantedBy { get; init; }

    /// <summary>Chance that the wanted share conforms; null where none is wanted, or the verdict is one by variables.</summary>
    public double? Probability { get; init; }

    /// <summary>The same with every undecided piece counted as conforming; null likewise.</summary>
    public double? ProbabilityIfUndecidedPass { get; init; }

    /// <summary>The lot, in words.</summary>
    public required string InWords { get; init; }
}

/// <summary>Whether a rule is met, with its reasons.</summary>
public sealed record RuleDocument
{
    /// <summary>met, not met or undecided.</summary>
    [JsonConverter(typeof(RuleConverter))]
    public required Verdict Verdict { get; init; }

    /// <summary>Chance that it would be met if depths and retention were known exactly; null where not known.</summary>
    public double? Probability { get; init; }

    /// <summary>Least such chance that the evidence allows; null likewise.</summary>
    public double? ProbabilityLow { get; init; }

    /// <summary>Greatest such chance that the evidence allows; null likewise.</summary>
    public double? ProbabilityHigh { get; init; }

    /// <summary>Why, one sentence each.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The same as data, one object for each reason, in their order: docs/json/reasons.md.</summary>
    public IReadOnlyList<JsonObject> Grounds
    {
        get => field ?? [];
        init;
    } = [];
}

using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Acceptance;

/// <summary>A batch verdict by variables with its reasons. Fields as in docs/json/judge.md.</summary>
public sealed record VariablesDocument
{
    /// <summary>The headline and the three findings.</summary>
    public required FindingsDocument Findings { get; init; }

    /// <summary>What was asked, in words.</summary>
    public required string AcceptanceRule { get; init; }

    /// <summary>What kind of quantity was measured.</summary>
    [JsonConverter(typeof(MeasureKindConverter))]
    public required MeasureKind Kind { get; init; }

    /// <summary>What was measured.</summary>
    public required string Measure { get; init; }

    /// <summary>Its unit.</summary>
    public required string Unit { get; init; }

    /// <summary>Least value that conforms, in <see cref="Unit"/>.</summary>
    public required double Limit { get; init; }

    /// <summary>Share of all pieces that must reach it, 0 to 1.</summary>
    public required double Share { get; init; }

    /// <summary>One-sided confidence, 0 to 1.</summary>
    public required double Confidence { get; init; }

    /// <summary>normal or log-normal.</summary>
    [JsonConverter(typeof(PopulationConverter))]
    public required Population Population { get; init; }

    /// <summary>The share exceeds at least this, with the confidence; null where nothing fixes the spread.</summary>
    public double? LowerLimit { get; init; }

    /// <summary>The share exceeds at most this, with the same confidence; null likewise.</summary>
    public double? UpperLimit { get; init; }

    /// <summary>Lower bound on the share that reaches the limit; null where readings are cut off.</summary>
    public double? ShareLowerBound { get; init; }

    /// <summary>Upper bound on it.</summary>
    public double? ShareUpperBound { get; init; }

    /// <summary>Exact bound from counting alone.</summary>
    public required double CountedShareLowerBound { get; init; }

    /// <summary>False where readings are cut off and the limits approximate.</summary>
    public required bool IsExact { get; init; }

    /// <summary>Each piece with its value.</summary>
    public required IReadOnlyList<ValuedPiece> Pieces { get; init; }

    /// <summary>Why, one sentence each.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The same as data, one object for each reason, in their order: docs/json/reasons.md.</summary>
    public IReadOnlyList<JsonObject> Grounds { get; init; } = [];
}

/// <summary>Where a reading was cut off.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<CutOff>))]
public enum CutOff
{
    /// <summary>The value is this or less.</summary>
    [JsonStringEnumMemberName("below")]
    Below,

    /// <summary>The value is this or more.</summary>
    [JsonStringEnumMemberName("above")]
    Above,
}

/// <summary>One piece with its value.</summary>
public sealed record ValuedPiece
{
    /// <summary>Number of the piece.</summary>
    public required string Piece { get; init; }

    /// <summary>The value, or where it was cut off.</summary>
    public required double Value { get; init; }

    /// <summary>below, above; null where the value was read.</summary>
    public CutOff? CutOff { get; init; }
}

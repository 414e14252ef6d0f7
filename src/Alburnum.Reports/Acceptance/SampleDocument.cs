using System.Text.Json.Serialization;
using Alburnum.Acceptance;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Acceptance;

/// <summary>What to cut, how to pick it, what passes, and how surely. Fields as in docs/json/sample.md.</summary>
public sealed record SampleDocument
{
    /// <summary>The plan's full name.</summary>
    public required string Plan { get; init; }

    /// <summary>The standard or method it comes from.</summary>
    public required string Source { get; init; }

    /// <summary>How far the source may be relied on.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>Pieces in the lot; null where none was stated.</summary>
    public int? LotSize { get; init; }

    /// <summary>What to cut, in words.</summary>
    public required string Cut { get; init; }

    /// <summary>What passes, in words.</summary>
    public required string Passes { get; init; }

    /// <summary>Most pieces that may have to be cut.</summary>
    public required int MostPiecesCut { get; init; }

    /// <summary>Seed that the positions were drawn with; null without a lot.</summary>
    public ulong? Seed { get; init; }

    /// <summary>Pieces to cut, counted through the lot as it lies; in the order to cut them where a plan may stop early.</summary>
    public required IReadOnlyList<int> Positions { get; init; }

    /// <summary>Operating characteristic of each reading of the plan.</summary>
    public required IReadOnlyList<SampleReading> Readings { get; init; }

    /// <summary>What the reader should know, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}

/// <summary>One reading of a plan.</summary>
public sealed record SampleReading
{
    /// <summary>Which reading.</summary>
    public required string Name { get; init; }

    /// <summary>Failing shares accepted with 95, 50 and 10 %.</summary>
    public required OcLandmarks Landmarks { get; init; }

    /// <summary>The operating characteristic.</summary>
    public required IReadOnlyList<OcPoint> Curve { get; init; }
}

using System.Text.Json.Serialization;
using Alburnum.Acceptance.Indexed;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Acceptance;

/// <summary>A plant's lots under the switching rules. Fields as in docs/json/history.md.</summary>
public sealed record LotsDocument
{
    /// <summary>The standard of plans and rules.</summary>
    public required string Standard { get; init; }

    /// <summary>How far the switching rules may be relied on.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing SwitchingStanding { get; init; }

    /// <summary>Inspection level.</summary>
    [JsonConverter(typeof(LevelConverter))]
    public required InspectionLevel Level { get; init; }

    /// <summary>AQL.</summary>
    public required double Aql { get; init; }

    /// <summary>Each lot, oldest first.</summary>
    public required IReadOnlyList<LotEntry> Lots { get; init; }

    /// <summary>Inspection of the next lot: normal, tightened, reduced, or stopped.</summary>
    [JsonConverter(typeof(NextInspectionConverter))]
    public required NextInspection Next { get; init; }

    /// <summary>Where the plant stands, in words.</summary>
    public required string InWords { get; init; }
}

/// <summary>One lot.</summary>
public sealed record LotEntry
{
    /// <summary>Number of the lot.</summary>
    public required string Lot { get; init; }

    /// <summary>Pieces in it.</summary>
    public required int Pieces { get; init; }

    /// <summary>Inspection in force for it.</summary>
    [JsonConverter(typeof(SeverityConverter))]
    public required Severity Severity { get; init; }

    /// <summary>Letter of the plan used.</summary>
    public required char Letter { get; init; }

    /// <summary>Pieces cut.</summary>
    public required int Cut { get; init; }

    /// <summary>Acceptance number.</summary>
    public required int MayFail { get; init; }

    /// <summary>Failures found.</summary>
    public required int Failures { get; init; }

    /// <summary>accepted, accepted in the gap, not accepted.</summary>
    [JsonConverter(typeof(LotOutcomeConverter))]
    public required LotOutcome Outcome { get; init; }

    /// <summary>Inspection after it.</summary>
    [JsonConverter(typeof(NextInspectionConverter))]
    public required NextInspection Next { get; init; }

    /// <summary>Why inspection was switched with it; null where it was not.</summary>
    public string? Because { get; init; }
}

using System.Text.Json.Serialization;
using Alburnum.Acceptance.Indexed;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>How a standard's scheme behaves with its switching. Fields as in docs/json/sample.md.</summary>
public sealed record SchemeDocument
{
    /// <summary>The standard.</summary>
    public required string Standard { get; init; }

    /// <summary>Pieces in each lot.</summary>
    public required int LotSize { get; init; }

    /// <summary>Inspection level.</summary>
    [JsonConverter(typeof(LevelConverter))]
    public required InspectionLevel Level { get; init; }

    /// <summary>AQL, %.</summary>
    public required double Aql { get; init; }

    /// <summary>The plan of each severity.</summary>
    public required IReadOnlyList<SchemePlan> Plans { get; init; }

    /// <summary>The characteristic.</summary>
    public required IReadOnlyList<SchemePoint> Points { get; init; }

    /// <summary>What the reader should know, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The scheme as a document.</summary>
    public static SchemeDocument Of(PlannedScheme scheme)
    {
        ArgumentNullException.ThrowIfNull(scheme);
        var sequence = scheme.Sequence;
        return new()
        {
            Standard = sequence.Tables.Source.Document,
            LotSize = scheme.Pieces,
            Level = sequence.Level,
            Aql = sequence.AqlPercent,
            Plans = [.. Enum.GetValues<Severity>().Select(severity => SchemePlan.Of(scheme.Plan(severity)))],
            Points = scheme.Points,
            Notes = [.. SchemeWords.Current.Notes(scheme)],
        };
    }
}

/// <summary>One plan of a scheme.</summary>
public sealed record SchemePlan
{
    /// <summary>When it is in force.</summary>
    [JsonConverter(typeof(SeverityConverter))]
    public required Severity Severity { get; init; }

    /// <summary>Pieces to cut.</summary>
    public required int Cut { get; init; }

    /// <summary>Failures that pass.</summary>
    public required int MayFail { get; init; }

    /// <summary>Failures from which on the lot is rejected.</summary>
    public required int RejectedFrom { get; init; }

    internal static SchemePlan Of(IndexedPlan found) =>
        new()
        {
            Severity = found.Severity,
            Cut = found.Plan.SampleSize,
            MayFail = found.Plan.AcceptanceNumber,
            RejectedFrom = found.Plan.RejectionNumber,
        };
}

using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Handling;

namespace Alburnum.Reports.Handling;

/// <summary>When a preservative has fixed. Fields as in docs/json/fixation.md.</summary>
public sealed record FixationDocument
{
    /// <summary>The preservative.</summary>
    public required string Preservative { get; init; }

    /// <summary>Temperature of the wood, °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Hours since treatment; null where not asked for.</summary>
    public double? Hours { get; init; }

    /// <summary>Whether a rate is known of it.</summary>
    public required bool IsKnown { get; init; }

    /// <summary>How fixation goes, strength by strength; empty where no rate is known.</summary>
    public required IReadOnlyList<FixationStrengthDocument> Strengths { get; init; }

    /// <summary>What the figures rest on, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Standing of the rate; null where none is known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? Standing { get; init; }

    /// <summary>What else is known of its fixation.</summary>
    public required IReadOnlyList<StatementDocument> Answers { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>How fixation goes at one strength.</summary>
public sealed record FixationStrengthDocument
{
    /// <summary>Strength of the solution, % by mass.</summary>
    public required double StrengthPercent { get; init; }

    /// <summary>Hours until so much has fixed.</summary>
    public required IReadOnlyList<FixedShareDocument> HoursTo { get; init; }

    /// <summary>Share fixed after the hours asked for; null while the first zone lasts, and where no hours were asked for.</summary>
    public double? ShareAfter { get; init; }
}

/// <summary>Hours until a share has fixed.</summary>
/// <param name="Share">The share, 0 to 1.</param>
/// <param name="Hours">Hours since treatment.</param>
public sealed record FixedShareDocument(double Share, double Hours);

/// <summary>Writes down when a preservative has fixed.</summary>
public static class FixationMapping
{
    /// <summary>The answer as a document.</summary>
    public static FixationDocument Of(Fixation fixation)
    {
        ArgumentNullException.ThrowIfNull(fixation);
        var words = FixationWords.Current;
        return new()
        {
            Preservative = fixation.Asked.Preservative.Name,
            TemperatureCelsius = fixation.Asked.Celsius,
            Hours = fixation.Asked.Hours,
            IsKnown = fixation.Law is not null,
            Strengths =
            [
                .. fixation.Strengths.Select(each => new FixationStrengthDocument
                {
                    StrengthPercent = each.StrengthPercent,
                    HoursTo =
                    [
                        .. Fixation.Shares.Zip(each.HoursTo, (share, hours) => new FixedShareDocument(share, hours)),
                    ],
                    ShareAfter = each.ShareAfter,
                }),
            ],
            Notes = [.. words.Notes(fixation)],
            Standing = fixation.Law?.Provenance.Standing,
            Answers = HandlingMapping.From(fixation.Known).Answers,
            Cautions = words.Cautions,
        };
    }
}

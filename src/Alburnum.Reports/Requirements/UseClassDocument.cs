using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Requirements;

/// <summary>The use class of a situation. Fields as in docs/json/use-class.md.</summary>
public sealed record UseClassDocument
{
    /// <summary>The class, or those still possible.</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>True where one class is left.</summary>
    public required bool IsSettled { get; init; }

    /// <summary>The question that decided it so far; null where none was answered.</summary>
    public required string? DecidedBy { get; init; }

    /// <summary>The question that narrows it down further; null where the class is settled.</summary>
    public required string? AskNext { get; init; }

    /// <summary>What EN 335 says of each class.</summary>
    public required IReadOnlyList<UseClassMeaning> Meaning { get; init; }

    /// <summary>Traps between editions, and what goes with the class.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}

/// <summary>What EN 335 says of one class.</summary>
public sealed record UseClassMeaning
{
    /// <summary>The class.</summary>
    public required string UseClass { get; init; }

    /// <summary>Where such timber stands.</summary>
    public required string Situation { get; init; }

    /// <summary>How wet it gets.</summary>
    public required string Moisture { get; init; }

    /// <summary>What may attack it.</summary>
    public required string Agents { get; init; }

    /// <summary>Standing of what is said of the agents.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing AgentsStanding { get; init; }

    /// <summary>The source of what is said of the agents.</summary>
    public required string AgentsSource { get; init; }

    /// <summary>Standing of the rest.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source of the rest.</summary>
    public required string Source { get; init; }
}

using System.Text.Json.Serialization;
using Alburnum.Reports.Words;
using Alburnum.Requirements;

namespace Alburnum.Reports.Documents;

/// <summary>What becomes of a class that a contract names, and that the code which governs does not know.</summary>
public sealed record ContractDocument
{
    /// <summary>The class, as the contract names it.</summary>
    public required string StatedClass { get; init; }

    /// <summary>Title and edition of the rulebook that defines it; null where none does, or more than one.</summary>
    public string? Rulebook { get; init; }

    /// <summary>The depth that it demands, in words; null where it gives no demand.</summary>
    public string? PenetrationInWords { get; init; }

    /// <summary>Where retention is assayed by it; null where not known.</summary>
    public string? AnalyticalZone { get; init; }

    /// <summary>code, contract, neither or not comparable; null where there are not two demands.</summary>
    [JsonConverter(typeof(StricterDemandConverter))]
    public StricterDemand? Stricter { get; init; }

    /// <summary>Weakest standing of what its depth rests on, the analytical zone left out; null where it gives no demand.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? Standing { get; init; }

    /// <summary>Standing of its analytical zone; null where that is not known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public Standing? AnalyticalZoneStanding { get; init; }

    /// <summary>Retention of its class, in words: an amount, or a multiple of the critical value; null where not known.</summary>
    public string? Retention { get; init; }

    /// <summary>All of it in a sentence.</summary>
    public required string InWords { get; init; }

    /// <summary>The analytical zone: that of the demand that decides, named, with the other's beside it; null where none is known.</summary>
    /// <param name="code">The code's zone; null where it is not known.</param>
    /// <param name="contract">What becomes of the contract's class; null where none is named.</param>
    public static string? Zone(string? code, ContractDocument? contract) =>
        contract is { PenetrationInWords: not null }
            ? RequirementWords.Current.Answers.Zone(
                code,
                contract.AnalyticalZone,
                contract.StatedClass,
                contract.Stricter
            )
            : code;

    /// <summary>Writes it down.</summary>
    /// <param name="contract">The class; null where the contract names none, or the code knows it.</param>
    /// <param name="code">What the code answers.</param>
    public static ContractDocument? Of(ContractClass? contract, Answer code)
    {
        if (contract is null)
            return null;
        var demand = contract as ContractDemand;
        var requirement = demand?.Answer.Requirement;
        return new()
        {
            StatedClass = contract.Name,
            Rulebook = (demand?.Answer ?? (contract as ContractClassNotAnswered)?.Answer)?.Trace.RulebookTitle,
            PenetrationInWords = requirement is null
                ? null
                : RequirementWords.Current.Depths.Say(requirement.Penetration),
            AnalyticalZone = requirement?.Zone?.Name,
            Stricter = demand?.Stricter,
            Standing = demand?.Answer.Trace.PenetrationStanding,
            AnalyticalZoneStanding = demand?.Answer.Trace.ZoneStanding,
            Retention = requirement is null ? null : RequirementWords.Current.Answers.Retention(requirement),
            InWords = RequirementWords.Current.Answers.Say(
                contract,
                RequirementWords.Current.Answers.Demanded(code),
                code.Outcome
            ),
        };
    }
}

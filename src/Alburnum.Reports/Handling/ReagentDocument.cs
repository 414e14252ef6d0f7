using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Handling;

/// <summary>A sentence with where it comes from.</summary>
public sealed record StatementDocument
{
    /// <summary>The sentence.</summary>
    public required string Says { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

/// <summary>What shows a preservative. Fields as in docs/json/reagent.md.</summary>
public sealed record ReagentChoiceDocument
{
    /// <summary>The preservative; null where none was named.</summary>
    public required string? Preservative { get; init; }

    /// <summary>What kind it is; null where none was named.</summary>
    public required string? Kind { get; init; }

    /// <summary>Its elements that a laboratory or a reagent finds.</summary>
    public required IReadOnlyList<string> ActiveElements { get; init; }

    /// <summary>The answer in a sentence.</summary>
    public required string Answer { get; init; }

    /// <summary>Reagents that show it; all of them where no preservative was named.</summary>
    public required IReadOnlyList<ReagentDocument> Reagents { get; init; }

    /// <summary>What a laboratory does.</summary>
    public required IReadOnlyList<StatementDocument> Analyses { get; init; }

    /// <summary>What goes for every reagent.</summary>
    public required IReadOnlyList<StatementDocument> Always { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One reagent.</summary>
public sealed record ReagentDocument
{
    /// <summary>Its short name.</summary>
    public required string Key { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Elements of the preservative that it colours, every element where none was named; empty where none decides.</summary>
    public required IReadOnlyList<string> Shows { get; init; }

    /// <summary>What treated wood looks like.</summary>
    public required string Treated { get; init; }

    /// <summary>What untreated wood looks like.</summary>
    public required string Untreated { get; init; }

    /// <summary>Name to give to --indicator when photographs of it are measured; null where they are not.</summary>
    public required string? Indicator { get; init; }

    /// <summary>Greatest content tried that was not seen, mg of the element in a kg of wood; null where no figure is known.</summary>
    public required double? NotSeenMgPerKg { get; init; }

    /// <summary>Least content tried that was seen; null where no figure is known.</summary>
    public required double? SeenMgPerKg { get; init; }

    /// <summary>The limit of detection in a sentence, with wood and preservative that it was tried on.</summary>
    public required string Detection { get; init; }

    /// <summary>How it is made up, in general.</summary>
    public required string Preparation { get; init; }

    /// <summary>What it cannot show.</summary>
    public required IReadOnlyList<string> CannotShow { get; init; }

    /// <summary>What misleads it.</summary>
    public required IReadOnlyList<string> Misleads { get; init; }

    /// <summary>How to photograph it.</summary>
    public required IReadOnlyList<string> Photograph { get; init; }

    /// <summary>What to mind.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Standing of its colours and its preparation.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>Source of its colours and its preparation.</summary>
    public required string Source { get; init; }

    /// <summary>Standing of what it cannot show, what misleads it and how to photograph it.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing LimitsStanding { get; init; }

    /// <summary>Source of the same.</summary>
    public required string LimitsSource { get; init; }
}

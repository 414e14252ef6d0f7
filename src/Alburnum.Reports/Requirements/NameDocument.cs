using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Requirements;

/// <summary>What is known under a word, as timber, component, preservative and mark. Fields as in docs/json/name.md.</summary>
public sealed record NameDocument
{
    /// <summary>"alburnum name".</summary>
    public required string Format { get; init; }

    /// <summary>Version of this form, 1.</summary>
    public required int Version { get; init; }

    /// <summary>The word as it was asked.</summary>
    public required string Word { get; init; }

    /// <summary>What it means as the name of a timber; null where it names none.</summary>
    public required NamedTimberDocument? Timber { get; init; }

    /// <summary>What it means as the name of a component; null where it names none.</summary>
    public required NamedComponentDocument? Component { get; init; }

    /// <summary>The preservatives of that name.</summary>
    public required IReadOnlyList<PreservativeDocument> Preservatives { get; init; }

    /// <summary>The marks, one entry a system.</summary>
    public required IReadOnlyList<MarkDocument> Marks { get; init; }
}

/// <summary>The name of a timber.</summary>
public sealed record NamedTimberDocument
{
    /// <summary>"species", "glued", "board", "modified" or "mixture".</summary>
    [JsonConverter(typeof(TimberKindConverter))]
    public required Timber.TimberKind Kind { get; init; }

    /// <summary>What it is; empty for a species.</summary>
    public required string Says { get; init; }

    /// <summary>What decides between several; empty where it means one.</summary>
    public required string Decides { get; init; }

    /// <summary>The species that treatment reaches least; null where it means one, or where that is not known of each.</summary>
    public required string? LeastTreatable { get; init; }

    /// <summary>Species of a mixture of which it is not known how treatable their heartwood is; empty for any other name.</summary>
    public required IReadOnlyList<string> TreatabilityNotKnown { get; init; }

    /// <summary>Where it is said.</summary>
    public required IReadOnlyList<string> Where { get; init; }

    /// <summary>Standing of the name; null for a species' own.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? Standing { get; init; }

    /// <summary>Source of the name; null for a species' own.</summary>
    public required string? Source { get; init; }

    /// <summary>The species that it may mean.</summary>
    public required IReadOnlyList<SpeciesDocument> Species { get; init; }
}

/// <summary>What is known of a species.</summary>
public sealed record SpeciesDocument
{
    /// <summary>Common name.</summary>
    public required string Name { get; init; }

    /// <summary>Botanical names.</summary>
    public required IReadOnlyList<string> Botanical { get; init; }

    /// <summary>Durability, treatability, sapwood and density, each with its standing and source.</summary>
    public required IReadOnlyList<FactDocument> Facts { get; init; }

    /// <summary>What a reader should know; empty where nothing.</summary>
    public required string Notes { get; init; }
}

/// <summary>The name of a component.</summary>
public sealed record NamedComponentDocument
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>Where it belongs; empty for a component of codes.</summary>
    public required string Group { get; init; }

    /// <summary>The components of codes that it may mean; empty where no code here speaks of it.</summary>
    public required IReadOnlyList<string> Components { get; init; }

    /// <summary>Narrower names that it may mean, beside the components; empty where there are none.</summary>
    public required IReadOnlyList<string> Narrower { get; init; }

    /// <summary>What decides between them; empty where it means one thing.</summary>
    public required string Decides { get; init; }

    /// <summary>What it settles of its exposure, in words; null where nothing.</summary>
    public required string? Exposure { get; init; }

    /// <summary>The use class that follows, or those possible; empty where it settles nothing.</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>The question that narrows it down; null where it is settled.</summary>
    public required string? AskNext { get; init; }

    /// <summary>Usual service life, years; null where not known.</summary>
    public required int? LifeYears { get; init; }

    /// <summary>Standing of the life; null where it is not known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? LifeStanding { get; init; }

    /// <summary>Source of the life; null where it is not known.</summary>
    public required string? LifeSource { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

/// <summary>A kind of preservative.</summary>
public sealed record PreservativeDocument
{
    /// <summary>Name of the kind.</summary>
    public required string Name { get; init; }

    /// <summary>Its codes.</summary>
    public required IReadOnlyList<string> Codes { get; init; }

    /// <summary>Other names.</summary>
    public required IReadOnlyList<string> AlsoCalled { get; init; }

    /// <summary>What sort it is.</summary>
    public required string Kind { get; init; }

    /// <summary>Elements that an assay looks for.</summary>
    public required IReadOnlyList<string> ActiveElements { get; init; }

    /// <summary>What it protects against.</summary>
    public required IReadOnlyList<string> ProtectsAgainst { get; init; }

    /// <summary>Whether it stays in wood that is wetted.</summary>
    public required bool FixedInWood { get; init; }

    /// <summary>How it is put on or in.</summary>
    public required IReadOnlyList<string> AppliedBy { get; init; }

    /// <summary>Use classes that it is meant for; empty where none is known.</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>What it cannot do.</summary>
    public required IReadOnlyList<string> Limits { get; init; }

    /// <summary>What the law of a place says, each with its standing and source.</summary>
    public required IReadOnlyList<FactDocument> Restrictions { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

/// <summary>A mark of one system.</summary>
public sealed record MarkDocument
{
    /// <summary>The mark.</summary>
    public required string Mark { get; init; }

    /// <summary>The system.</summary>
    public required string System { get; init; }

    /// <summary>What it says there.</summary>
    public required string Means { get; init; }

    /// <summary>The use class that it comes nearest to, roughly; null where it says none.</summary>
    public required string? UseClass { get; init; }

    /// <summary>Whether it is that use class itself, by a name that EN 335 gives it.</summary>
    public required bool IsUseClassItself { get; init; }

    /// <summary>Standing of the source.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing Standing { get; init; }

    /// <summary>The source.</summary>
    public required string Source { get; init; }
}

using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;
using Alburnum.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>A rulebook named. Fields as in docs/json/rulebook.md.</summary>
public sealed record RulebookDocument
{
    /// <summary>Name by which it is asked for.</summary>
    public required string Name { get; init; }

    /// <summary>Document and edition.</summary>
    public required string Citation { get; init; }

    /// <summary>What it is about.</summary>
    public required string Title { get; init; }

    /// <summary>Number of its rows.</summary>
    public required int Rows { get; init; }

    /// <summary>What a reader should know about the whole of it, as its file says.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}

/// <summary>What a check of a rulebook found. Fields as in docs/json/rulebook.md.</summary>
public sealed record RulebookCheckDocument
{
    /// <summary>The rulebook.</summary>
    public required RulebookDocument Rulebook { get; init; }

    /// <summary>Number of findings that must be corrected.</summary>
    public required int Faults { get; init; }

    /// <summary>Every finding, the weightiest first.</summary>
    public required IReadOnlyList<RulebookFindingDocument> Findings { get; init; }
}

/// <summary>One finding.</summary>
public sealed record RulebookFindingDocument
{
    /// <summary>What was found, for instance "gap".</summary>
    [JsonConverter(typeof(FindingKindConverter))]
    public required RulebookFindingKind Kind { get; init; }

    /// <summary>Whether it must be corrected before anyone relies on the rulebook.</summary>
    public required bool IsFault { get; init; }

    /// <summary>What was decided, for instance "penetration".</summary>
    [JsonConverter(typeof(SubjectConverter))]
    public required Subject Subject { get; init; }

    /// <summary>One sentence.</summary>
    public required string Says { get; init; }

    /// <summary>Keys of the rows concerned.</summary>
    public required IReadOnlyList<string> Rows { get; init; }

    /// <summary>Groups of like cases, in words.</summary>
    public required IReadOnlyList<string> Cases { get; init; }
}

/// <summary>What changes between two rulebooks. Fields as in docs/json/rulebook.md.</summary>
public sealed record RulebookComparisonDocument
{
    /// <summary>The first rulebook.</summary>
    public required RulebookDocument Before { get; init; }

    /// <summary>The second rulebook.</summary>
    public required RulebookDocument After { get; init; }

    /// <summary>Number of enquiries asked of both.</summary>
    public required int Enquiries { get; init; }

    /// <summary>The enquiries that they answer differently, in the order asked.</summary>
    public required IReadOnlyList<ChangeDocument> Changes { get; init; }

    /// <summary>The enquiries of which one says nothing, or nothing without knowing more: whether the code itself changes is not known.</summary>
    public required IReadOnlyList<ChangeDocument> NotRead { get; init; }

    /// <summary>The enquiries that state a class which one of the two does not have.</summary>
    public required IReadOnlyList<ChangeDocument> NoSuchClass { get; init; }

    /// <summary>Number of enquiries that neither answers.</summary>
    public required int AnsweredByNeither { get; init; }
}

/// <summary>One enquiry that is answered differently.</summary>
public sealed record ChangeDocument
{
    /// <summary>Place in the list of enquiries, from 1.</summary>
    public required int Case { get; init; }

    /// <summary>The enquiry in words.</summary>
    public required string Enquiry { get; init; }

    /// <summary>What the first rulebook says.</summary>
    public required string Before { get; init; }

    /// <summary>What the second rulebook says.</summary>
    public required string After { get; init; }
}

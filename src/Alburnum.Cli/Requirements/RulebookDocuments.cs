using Alburnum.Requirements;

namespace Alburnum.Cli.Requirements;

/// <summary>A rulebook named. Fields as in docs/json/rulebook.md.</summary>
internal sealed record RulebookDocument(string Name, string Citation, string Title, int Rows)
{
    public static RulebookDocument From(Rulebook rulebook) =>
        new(rulebook.Name, rulebook.Citation, rulebook.Title, rulebook.Rows.Count);

    public string InWords() => FormattableString.Invariant($"{Citation}: {Title} ({Rows} rows)");
}

/// <summary>What a check of a rulebook found. Fields as in docs/json/rulebook.md.</summary>
/// <param name="Rulebook">The rulebook.</param>
/// <param name="Faults">Number of findings to mend.</param>
/// <param name="Findings">Every finding, the weightiest first.</param>
internal sealed record RulebookCheckDocument(
    RulebookDocument Rulebook,
    int Faults,
    IReadOnlyList<RulebookFindingDocument> Findings
)
{
    public static RulebookCheckDocument From(Rulebook rulebook, IReadOnlyList<RulebookFinding> findings) =>
        new(
            RulebookDocument.From(rulebook),
            findings.Count(finding => finding.IsFault),
            [.. findings.Select(RulebookFindingDocument.From)]
        );
}

/// <summary>One finding.</summary>
internal sealed record RulebookFindingDocument(
    string Kind,
    bool IsFault,
    string Subject,
    string Says,
    IReadOnlyList<string> Rows,
    IReadOnlyList<string> Cases
)
{
    public static RulebookFindingDocument From(RulebookFinding finding) =>
        new(
            InWords(finding.Kind),
            finding.IsFault,
            Reports.Requirements.AnswerMapping.InWords(finding.Subject),
            finding.InWords,
            [.. finding.Rows.Select(row => row.Key)],
            [.. finding.Cases.Select(box => box.InWords)]
        );

    private static string InWords(RulebookFindingKind kind) =>
        kind switch
        {
            RulebookFindingKind.Contradiction => "contradiction",
            RulebookFindingKind.AsksLess => "asks for less",
            RulebookFindingKind.Unreachable => "unreachable row",
            RulebookFindingKind.Gap => "gap",
            RulebookFindingKind.Silent => "not covered",
            RulebookFindingKind.Overlap => "overlap",
            RulebookFindingKind.TooLarge => "not checked",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind."),
        };
}

/// <summary>What changes between two rulebooks. Fields as in docs/json/rulebook.md.</summary>
/// <param name="Before">The first rulebook.</param>
/// <param name="After">The second rulebook.</param>
/// <param name="Enquiries">Number of enquiries asked of both.</param>
/// <param name="Changes">The enquiries that they answer differently, in the order asked.</param>
internal sealed record RulebookComparisonDocument(
    RulebookDocument Before,
    RulebookDocument After,
    int Enquiries,
    IReadOnlyList<ChangeDocument> Changes
)
{
    public static RulebookComparisonDocument From(
        Rulebook before,
        Rulebook after,
        int enquiries,
        IReadOnlyList<ChangedAnswer> changed
    ) =>
        new(
            RulebookDocument.From(before),
            RulebookDocument.From(after),
            enquiries,
            [.. changed.Select(ChangeDocument.From)]
        );
}

/// <summary>One enquiry that is answered differently.</summary>
/// <param name="Case">Place in the list of enquiries, from 1.</param>
/// <param name="Enquiry">The enquiry in words.</param>
/// <param name="Before">What the first rulebook says.</param>
/// <param name="After">What the second rulebook says.</param>
internal sealed record ChangeDocument(int Case, string Enquiry, string Before, string After)
{
    public static ChangeDocument From(ChangedAnswer change) =>
        new(
            change.Index + 1,
            InWords(change.Enquiry),
            AnswerWords.Short(change.Before),
            AnswerWords.Short(change.After)
        );

    private static string InWords(Enquiry enquiry)
    {
        var parts = new[]
        {
            enquiry.Component?.Name,
            enquiry.FormOrFromSection?.ToString().ToLowerInvariant(),
            enquiry.Species?.Name,
            enquiry.UseClasses.Count > 0
                ? $"use class {string.Join(" or ", enquiry.UseClasses.Select(each => each.Label()))}"
                : null,
            enquiry.Life is { } life ? FormattableString.Invariant($"{life.Years} years") : null,
        };
        return string.Join(", ", parts.Where(part => part is not null));
    }
}

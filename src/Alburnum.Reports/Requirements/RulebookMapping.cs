using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From rulebooks, checked or compared, to their documents.</summary>
public static class RulebookMapping
{
    /// <summary>A rulebook named.</summary>
    public static RulebookDocument From(Rulebook rulebook)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        return new()
        {
            Name = rulebook.Name,
            Citation = rulebook.Citation,
            Title = rulebook.Title,
            Rows = rulebook.Rows.Count,
        };
    }

    /// <summary>What a check found.</summary>
    public static RulebookCheckDocument From(CheckedRulebook found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return new()
        {
            Rulebook = From(found.Rulebook),
            Faults = found.Faults,
            Findings = [.. found.Findings.Select(From)],
        };
    }

    /// <summary>What changes between two rulebooks.</summary>
    public static RulebookComparisonDocument From(ComparedRulebooks compared)
    {
        ArgumentNullException.ThrowIfNull(compared);
        return new()
        {
            Before = From(compared.Before),
            After = From(compared.After),
            Enquiries = compared.Enquiries,
            Changes = [.. compared.Changes.Select(From)],
        };
    }

    private static RulebookFindingDocument From(RulebookFinding finding) =>
        new()
        {
            Kind = InWords(finding.Kind),
            IsFault = finding.IsFault,
            Subject = AnswerMapping.InWords(finding.Subject),
            Says = finding.InWords,
            Rows = [.. finding.Rows.Select(row => row.Key)],
            Cases = [.. finding.Cases.Select(box => box.InWords)],
        };

    private static ChangeDocument From(ChangedAnswer change) =>
        new()
        {
            Case = change.Index + 1,
            Enquiry = InWords(change.Enquiry),
            Before = AnswerWords.Short(change.Before),
            After = AnswerWords.Short(change.After),
        };

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

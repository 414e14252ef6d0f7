using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From rulebooks, checked or compared, to their documents.</summary>
public static class RulebookMapping
{
    private static RequirementWords Words => RequirementWords.Current;

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
            Notes = rulebook.Notes,
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
            Changes = Of(ChangeKind.Changed, compared),
            NotRead = Of(ChangeKind.NotRead, compared),
            NoSuchClass = Of(ChangeKind.NoSuchClass, compared),
            AnsweredByNeither = compared.Answers.AnsweredByNeither,
        };
    }

    private static RulebookFindingDocument From(RulebookFinding finding) =>
        new()
        {
            Kind = finding.Kind,
            IsFault = finding.IsFault,
            Subject = finding.Subject,
            Says = Words.Checks.Say(finding),
            Rows = [.. finding.Rows.Select(row => row.Key)],
            Cases = [.. finding.Cases.Select(Words.Rows.Say)],
        };

    private static IReadOnlyList<ChangeDocument> Of(ChangeKind kind, ComparedRulebooks compared) =>
        [.. compared.Answers.Changes.Where(change => change.Kind == kind).Select(From)];

    private static ChangeDocument From(ChangedAnswer change) =>
        new()
        {
            Case = change.Index + 1,
            // A list of changes names what most enquiries differ in; the size is left to the archive.
            Enquiry = AnswerParts.Asked(AnswerMapping.Asked(change.Enquiry) with { Section = null }),
            Before = change.LacksClassBefore
                ? Wording.Said("rulebooks.lacks-class")
                : Said(change.Before, change.OtherUseClass?.Before),
            After = change.LacksClassAfter
                ? Wording.Said("rulebooks.lacks-class")
                : Said(change.After, change.OtherUseClass?.After),
        };

    private static string Said(Answer answer, UseClassDemand? use) =>
        use is null ? Words.Answers.Short(answer) : $"{Words.Rows.Say(use)}: {Words.Answers.Short(answer)}";
}

using Alburnum.Reports.Words;

namespace Alburnum.Reports.Requirements;

/// <summary>Rulebooks, checked or compared, as plain lines.</summary>
public static class RulebookText
{
    private const int CasesShown = 6;
    private const int ChangesShown = 200;

    /// <summary>A rulebook in one line.</summary>
    public static string Line(RulebookDocument rulebook)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        return Say(
            "rulebooks.line",
            ("citation", rulebook.Citation),
            ("title", rulebook.Title),
            ("rows", Figures.Whole(rulebook.Rows))
        );
    }

    /// <summary>What a check found, line by line.</summary>
    public static IEnumerable<string> Lines(RulebookCheckDocument found)
    {
        ArgumentNullException.ThrowIfNull(found);
        yield return Line(found.Rulebook);
        foreach (var note in found.Rulebook.Notes)
            yield return note;
        foreach (var finding in found.Findings)
        {
            yield return Say(
                "rulebooks.finding",
                ("kind", RequirementWords.English.Checks.Say(finding.Kind)),
                ("subject", RequirementWords.English.Rows.Say(finding.Subject)),
                ("says", finding.Says)
            );
            foreach (var cases in finding.Cases.Take(CasesShown))
                yield return $"    {cases}";
            if (finding.Cases.Count > CasesShown)
                yield return "    " + Say("rulebooks.more-cases", More(finding.Cases.Count - CasesShown));
        }
        yield return found.Faults == 0 ? Say("rulebooks.no-faults") : Say("rulebooks.to-fix", More(found.Faults));
    }

    /// <summary>What changes between two rulebooks, line by line.</summary>
    public static IEnumerable<string> Lines(RulebookComparisonDocument compared)
    {
        ArgumentNullException.ThrowIfNull(compared);
        yield return $"{compared.Before.Citation} → {compared.After.Citation}";
        foreach (var change in compared.Changes.Take(ChangesShown))
            yield return FormattableString.Invariant(
                $"  {change.Case, 6}  {change.Enquiry}: {change.Before} → {change.After}"
            );
        if (compared.Changes.Count > ChangesShown)
            yield return "  " + Say("rulebooks.more-changes", More(compared.Changes.Count - ChangesShown));
        yield return Say(
            "rulebooks.answers-change",
            ("changes", Figures.Whole(compared.Changes.Count)),
            ("enquiries", Figures.Whole(compared.Enquiries))
        );
    }

    private static (string, string) More(int count) => ("count", Figures.Whole(count));

    private static string Say(string key, params ReadOnlySpan<(string Name, string Value)> values) =>
        Wording.English.Say(key, values);
}

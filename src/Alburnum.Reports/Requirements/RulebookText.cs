using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

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
        return Said(
            "rulebooks.line",
            ("citation", rulebook.Citation),
            ("title", rulebook.Title),
            ("rows", Figures.Whole(rulebook.Rows))
        );
    }

    /// <summary>What a check found, line by line.</summary>
    /// <param name="found">The check.</param>
    /// <param name="wholeOption">What prints the whole of it, as the reader writes it.</param>
    public static IEnumerable<string> Lines(RulebookCheckDocument found, string wholeOption)
    {
        ArgumentNullException.ThrowIfNull(found);
        yield return Line(found.Rulebook);
        foreach (var note in found.Rulebook.Notes)
            yield return note;
        foreach (var finding in found.Findings)
        {
            yield return Said(
                "rulebooks.finding",
                ("kind", RequirementWords.Current.Checks.Say(finding.Kind)),
                ("subject", RequirementWords.Current.Rows.Say(finding.Subject)),
                ("says", finding.Says)
            );
            foreach (var cases in finding.Cases.Take(CasesShown))
                yield return $"    {cases}";
            if (finding.Cases.Count > CasesShown)
                yield return "    "
                    + Said("rulebooks.more-cases", More(finding.Cases.Count - CasesShown), ("option", wholeOption));
        }
        yield return found.Faults == 0 ? Said("rulebooks.no-faults") : Said("rulebooks.to-fix", More(found.Faults));
    }

    /// <summary>What changes between two rulebooks, line by line.</summary>
    /// <param name="compared">The comparison.</param>
    /// <param name="wholeOption">What prints the whole of it, as the reader writes it.</param>
    public static IEnumerable<string> Lines(RulebookComparisonDocument compared, string wholeOption)
    {
        ArgumentNullException.ThrowIfNull(compared);
        yield return $"{compared.Before.Citation} → {compared.After.Citation}";
        foreach (var line in Lines(compared.Changes, wholeOption))
            yield return line;
        if (compared.NoSuchClass.Count > 0)
            yield return Said("rulebooks.no-such-class", More(compared.NoSuchClass.Count));
        foreach (var line in Lines(compared.NoSuchClass, wholeOption))
            yield return line;
        if (compared.NotRead.Count > 0)
            yield return Said("rulebooks.not-read");
        foreach (var line in Lines(compared.NotRead, wholeOption))
            yield return line;
        yield return Said(
            "rulebooks.answers-change",
            ("changes", Figures.Whole(compared.Changes.Count)),
            ("enquiries", Figures.Whole(compared.Enquiries)),
            ("notRead", Figures.Whole(compared.NotRead.Count)),
            ("neither", Figures.Whole(compared.AnsweredByNeither))
        );
    }

    private static IEnumerable<string> Lines(IReadOnlyList<ChangeDocument> changes, string wholeOption)
    {
        foreach (var change in changes.Take(ChangesShown))
            yield return FormattableString.Invariant(
                $"  {change.Case, 6}  {change.Enquiry}: {change.Before} → {change.After}"
            );
        if (changes.Count > ChangesShown)
            yield return "  "
                + Said("rulebooks.more-changes", More(changes.Count - ChangesShown), ("option", wholeOption));
    }

    private static (string, string) More(int count) => ("count", Figures.Whole(count));
}

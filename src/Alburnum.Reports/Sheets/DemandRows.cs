using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Sheets;

/// <summary>What the code demands of a case, or why it demands nothing: rows of a name and a value, for page and print alike.</summary>
public static class DemandRows
{
    private static SheetWords Words => SheetWords.Current;

    private static AnswerWords Answers => RequirementWords.Current.Answers;

    /// <summary>The rows; each figure with its own standing.</summary>
    /// <param name="requirement">What the rulebook answers.</param>
    /// <param name="weakest">Standing of the weakest fact that it rests on.</param>
    public static IEnumerable<(string Name, string Value)> Of(RequirementDocument requirement, Standing weakest)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        yield return (Said("sheet.code"), RulebookCopyDocument.Title(requirement.Rulebook, requirement.RulebookCopy));
        yield return requirement.Penetration is { } penetration
            ? Words.Penetration(
                Answers.WithStanding(
                    Words.Named(penetration, requirement.PenetrationInWords),
                    requirement.PenetrationStanding
                )
            )
            : (
                Said("sheet.answer"),
                Words.Named(Answers.Say(requirement.Outcome, requirement.Unless.Count > 0), requirement.Reason)
            );
        if (requirement.Contract is { } contract)
            yield return (Said("sheet.contract"), contract.InWords);
        foreach (var insect in requirement.Unless)
            yield return (Said("sheet.unless"), insect);
        // Where nothing is to be treated there is no zone, and nothing to be retained in it.
        if (requirement.Outcome != AnswerOutcome.NotNeeded || requirement.Contract is { PenetrationInWords: not null })
        {
            yield return (Said("sheet.zone"), Zone(requirement));
            yield return (
                Said("sheet.retention"),
                Answers.WithStanding(
                    Words.RetentionDemand(requirement.RetentionKgPerM3, requirement.RetentionFactor),
                    requirement.RetentionStanding
                )
            );
        }
        if (requirement.MoistureMaxPercent is { } moisture)
            yield return (
                Said("sheet.moisture"),
                Answers.WithStanding(
                    Said("requirements.clause.at-most", ("percent", Figures.Number(moisture, 0))),
                    requirement.MoistureStanding
                )
            );
        yield return (Said("sheet.weakest-standing"), Wording.Current.Say(weakest));
    }

    private static string Zone(RequirementDocument requirement) =>
        ContractDocument.Zone(
            requirement.AnalyticalZone is { } zone
                ? Answers.WithStanding(zone, requirement.AnalyticalZoneStanding)
                : null,
            requirement.Contract
        ) ?? Said("sheet.consult-code");
}

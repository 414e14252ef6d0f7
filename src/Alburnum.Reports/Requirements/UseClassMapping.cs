using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>From a use class found to its document.</summary>
public static class UseClassMapping
{
    private static ExposureWords Words => RequirementWords.Current.Exposure;

    /// <summary>The document.</summary>
    public static UseClassDocument From(FoundUseClass found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return new()
        {
            UseClasses = [.. found.Answer.Classes.Select(each => each.Label())],
            IsSettled = found.Answer.NextQuestion is null,
            DecidedBy = found.Answer.DecidedBy is { } decided ? Words.Say(decided) : null,
            AskNext = found.Answer.NextQuestion is { } next ? Words.Say(next) : null,
            Meaning =
            [
                .. found.Meaning.Select(row => new UseClassMeaning
                {
                    UseClass = row.UseClass.Label(),
                    Situation = row.Situation,
                    Moisture = row.Moisture,
                    Agents = row.Agents.Value,
                    AgentsStanding = row.Agents.Provenance.Standing,
                    AgentsSource = row.Agents.Provenance.Citation,
                    Standing = row.Provenance.Standing,
                    Source = row.Provenance.Citation,
                }),
            ],
            Remarks =
            [
                .. found.Traps.Select(Words.Say),
                .. found.Answer.Remarks.Select(Words.Say),
                .. Words.Say(found.Insects, found.NotRuledOut),
            ],
        };
    }
}

using Alburnum.Penetration;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Handling;

namespace Alburnum.Reports.Handling;

/// <summary>From what was found about reagents and handling to documents.</summary>
public static class HandlingMapping
{
    private static HandlingWords Words => HandlingWords.Current;

    /// <summary>The document of a choice of reagents.</summary>
    public static ReagentChoiceDocument From(ChosenReagents chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        var preservative = chosen.Preservative;
        return new()
        {
            Preservative = chosen.SharedName ?? preservative?.Name,
            Kind = chosen.SharedName is null ? preservative?.Kind : null,
            ActiveElements = preservative?.ActiveElements ?? [],
            Answer = Words.Answer(
                chosen.SharedName ?? preservative?.Name,
                [.. chosen.Reagents.Select(each => each.Name)],
                chosen.NotShown
            ),
            Reagents = [.. chosen.Reagents.Select(each => Reagent(each, preservative))],
            Analyses = [.. chosen.Analyses.Select(each => Statement(each.Says, each.Provenance))],
            Always = [.. chosen.Always.Select(each => Statement(each.Value, each.Provenance))],
            Cautions = chosen.Reagents.Count > 0 ? Words.ReagentCautions : [],
        };
    }

    /// <summary>The document of an answer about handling.</summary>
    public static HandlingDocument From(HandlingAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var question = answer.Question;
        return new()
        {
            Question = question.Subject.Asks,
            Preservative = question.Preservative?.Name,
            UseClasses = [.. question.UseClasses.Select(each => each.Label())],
            Place = question.Place.Length > 0 ? question.Place : null,
            Answers = [.. answer.Answers.Select(each => Statement(each.Says, each.Provenance))],
            Remarks = [.. Words.Remarks(answer)],
        };
    }

    private static ReagentDocument Reagent(Reagent reagent, Preservative? preservative)
    {
        IReadOnlyList<string> shows = preservative is null
            ? reagent.Shows
            : [.. reagent.Shows.Intersect(preservative.ActiveElements, StringComparer.Ordinal)];
        // A limit found for one element says nothing of another that the reagent colours too.
        var detection =
            reagent.Detection is { } limit && shows.Contains(limit.Element, StringComparer.Ordinal) ? limit : null;
        return new()
        {
            Key = reagent.Key,
            Name = reagent.Name,
            Shows = shows,
            Treated = reagent.Treated,
            Untreated = reagent.Untreated,
            Indicator = reagent.IndicatorKey,
            NotSeenMgPerKg = detection?.AboveMgPerKg,
            SeenMgPerKg = detection?.AtMostMgPerKg,
            Detection = Words.Detection(detection),
            Preparation = reagent.Preparation,
            CannotShow = reagent.CannotShow,
            Misleads = reagent.Misleads,
            Photograph = reagent.Photograph,
            Cautions = reagent.Cautions,
            Standing = reagent.Provenance.Standing,
            Source = reagent.Provenance.Citation,
            LimitsStanding = reagent.Limits.Standing,
            LimitsSource = reagent.Limits.Citation,
        };
    }

    private static StatementDocument Statement(string says, Provenance provenance) =>
        new()
        {
            Says = says,
            Standing = provenance.Standing,
            Source = provenance.Citation,
        };
}

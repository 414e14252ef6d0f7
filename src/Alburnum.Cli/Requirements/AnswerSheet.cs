using Alburnum.Records.Facts;
using Alburnum.Reports.Requirements;
using Alburnum.Requirements;

namespace Alburnum.Cli.Requirements;

/// <summary>Gathers what is shown with an answer: untreated timber, routes, traps and correspondence.</summary>
internal static class AnswerSheet
{
    public static AnswerDocument Of(Answer answer, Rulebook rulebook, FactLibrary facts)
    {
        var enquiry = AsAnswered(answer);
        var routes = Routes(answer, enquiry, rulebook, facts);
        var untreated =
            enquiry.Species is { } species && enquiry.UseClasses.Count > 0
                ? facts.Durability.Judge(species, enquiry.UseClasses.Max())
                : null;
        return AnswerMapping.From(answer, untreated, routes, [.. Remarks(enquiry, routes.Count > 0, facts)]);
    }

    // With the use class and life that the answer was found with, which may be the code's own for the component.
    private static Enquiry AsAnswered(Answer answer)
    {
        var enquiry = answer.Trace.Enquiry;
        if (
            enquiry.UseClasses.Count == 0
            && answer.Trace.Step(Subject.UseClass)?.Finding is Settled { Demand: UseClassDemand code }
        )
            enquiry = enquiry with { UseClasses = code.Classes, IsCoated = enquiry.IsCoated ?? code.IsCoated };
        if (enquiry.Life is null && answer.Trace.Step(Subject.Life)?.Finding is Settled { Demand: LifeDemand usual })
            enquiry = enquiry with { Life = usual.Life };
        return enquiry;
    }

    private static IReadOnlyList<Route> Routes(Answer answer, Enquiry enquiry, Rulebook rulebook, FactLibrary facts)
    {
        var search = new RouteSearch(rulebook, facts.Species, facts.Durability, facts.UsualReach);
        if (answer is not Required { Requirement: var demand })
            return search.Find(enquiry);
        if (
            facts.UsualReach.Judge(demand.Penetration, enquiry.Species, enquiry.IsIncised == true)
            == ReachVerdict.Unlikely
        )
            return search.Find(enquiry);
        return enquiry.MoisturePercent > demand.MoistureMaxPercent
            ? [.. search.Find(enquiry).Where(route => route.Kind == RouteKind.Dry)]
            : [];
    }

    private static IEnumerable<string> Remarks(Enquiry enquiry, bool hasRoutes, FactLibrary facts)
    {
        if (hasRoutes && enquiry is { FormOrFromSection: TimberForm.Sawn, HasExposedHeartwood: null })
            yield return "Heartwood is taken to be exposed in what would make it possible.";
        foreach (var remark in enquiry.Species is { } species ? OfSpecies(species, enquiry, facts) : [])
            yield return remark;
        foreach (var trap in facts.UseClassTraps.Where(trap => trap.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return $"{trap.Sentence} ({trap.Provenance.Standing.InWords()})";
        foreach (var match in facts.Equivalences.Where(match => match.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return $"Elsewhere {match.Situation} is {match.AustralianNewZealand} (Australia, New Zealand) or {match.American} (America). {Equivalence.Caution}";
        yield return SpecificationClause.Caution;
    }

    // What is known of the timber beside its classes: conflicts between sources, trials, scales of other systems.
    private static IEnumerable<string> OfSpecies(Timber.Species species, Enquiry enquiry, FactLibrary facts)
    {
        if (species.Notes.Length > 0)
            yield return $"On {species.Name}: {species.Notes}.";
        foreach (
            var row in facts.YearsInGround.Where(row =>
                enquiry.UseClasses.Contains(UseClass.Four) && row.DurabilityClass == species.Durability?.Value.High
            )
        )
            yield return $"Untreated heartwood of durability class {row.DurabilityClass} lasted {row.Years} years in the ground in trials ({row.Provenance.Standing.InWords()}: {row.Provenance.Citation}).";
        var scales = facts
            .OtherScales.Where(scale => scale.SpeciesNames.Contains(species.Name, StringComparer.Ordinal))
            .Select(scale => $"{scale.Scale}: {scale.Says} ({scale.Means}; {scale.Provenance.Standing.InWords()})")
            .ToList();
        if (scales.Count > 0)
            yield return $"{species.Name} on scales other than EN 350's. {string.Join(". ", scales)}.";
    }
}

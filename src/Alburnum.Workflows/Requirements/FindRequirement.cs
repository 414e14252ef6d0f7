using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Workflows.Requirements;

/// <summary>What a code of practice demands of a piece, with what helps to act on it.</summary>
/// <param name="Answer">What the rulebook says, and why.</param>
/// <param name="Untreated">Whether the timber will do untreated; null where species or use class is not known.</param>
/// <param name="Routes">What would make it possible, best first; empty where nothing is wrong.</param>
/// <param name="Remarks">What else a reader should know, in the order in which it is said.</param>
public sealed record FoundRequirement(
    Answer Answer,
    UntreatedTimber? Untreated,
    IReadOnlyList<Route> Routes,
    IReadOnlyList<RequirementRemark> Remarks
);

/// <summary>Asks a rulebook what it demands of a piece, and looks for what would make it possible.</summary>
public static class FindRequirement
{
    /// <summary>Asks.</summary>
    /// <param name="enquiry">What is known of the piece.</param>
    /// <param name="rulebook">The rulebook to ask.</param>
    /// <param name="facts">Species, durability, and what is known beside the codes.</param>
    public static FoundRequirement Run(Enquiry enquiry, Rulebook rulebook, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        ArgumentNullException.ThrowIfNull(facts);
        var answer = rulebook.Answer(enquiry);
        var asked = AsAnswered(answer);
        var routes = Routes(answer, asked, rulebook, facts);
        var untreated = asked is { Species: { } species, UseClasses.Count: > 0 }
            ? facts.Durability.Judge(species, asked.UseClasses.Max())
            : null;
        return new(answer, untreated, routes, [.. Remarks(asked, routes.Count > 0, facts)]);
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

    private static IEnumerable<RequirementRemark> Remarks(Enquiry enquiry, bool hasRoutes, FactLibrary facts)
    {
        if (hasRoutes && enquiry is { FormOrFromSection: TimberForm.Sawn, HasExposedHeartwood: null })
            yield return new HeartwoodTakenAsExposed();
        if (hasRoutes)
            yield return new OrientationOnReach([.. facts.UsualReach.Rows.Select(row => row.Provenance)]);
        if (enquiry.Species is { } species)
        {
            foreach (var remark in OfSpecies(species, enquiry, facts))
                yield return remark;
        }
        foreach (var trap in facts.UseClassTraps.Where(trap => trap.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return new TrapOfUseClass(trap);
        foreach (var match in facts.Equivalences.Where(match => match.UseClasses.Intersect(enquiry.UseClasses).Any()))
            yield return new ElsewhereCalled(match);
        yield return new CodeGoverns();
    }

    // What is known of the timber beside its classes: conflicts between sources, trials, scales of other systems.
    private static IEnumerable<RequirementRemark> OfSpecies(Species species, Enquiry enquiry, FactLibrary facts)
    {
        if (species.Notes.Length > 0)
            yield return new NoteOnSpecies(species);
        foreach (
            var row in facts.YearsInGround.Where(row =>
                enquiry.UseClasses.Contains(UseClass.Four) && row.DurabilityClass == species.Durability?.Value.High
            )
        )
            yield return new LastedInGround(species, row);
        var scales = facts
            .OtherScales.Where(scale => scale.SpeciesNames.Contains(species.Name, StringComparer.Ordinal))
            .ToList();
        if (scales.Count > 0)
            yield return new OnOtherScales(species, scales);
    }
}

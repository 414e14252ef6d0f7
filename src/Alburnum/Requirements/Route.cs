using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>What is changed to make something possible. Ordered: a greater value asks more of the client.</summary>
public enum RouteKind
{
    /// <summary>Incise the faces before treatment.</summary>
    Incise,

    /// <summary>Dry the timber before treatment.</summary>
    Dry,

    /// <summary>Round timber in place of sawn.</summary>
    UseRound,

    /// <summary>Another species, treated.</summary>
    OtherSpecies,

    /// <summary>Naturally durable heartwood, untreated.</summary>
    DurableHeartwood,

    /// <summary>A shorter desired service life.</summary>
    ShorterLife,

    /// <summary>Another design, which lowers the use class.</summary>
    LowerUseClass,
}

/// <summary>One way to make an enquiry possible.</summary>
/// <param name="Kind">What is changed.</param>
/// <param name="InWords">The change in words.</param>
/// <param name="Enquiry">The enquiry after the change.</param>
/// <param name="Answer">What the rulebook then says; null where no preservative is needed.</param>
/// <param name="Reach">Whether the demand is usually met then.</param>
/// <param name="Untreated">The verdict on untreated timber, where that is the route.</param>
public sealed record Route(
    RouteKind Kind,
    string InWords,
    Enquiry Enquiry,
    Required? Answer,
    ReachVerdict Reach,
    UntreatedTimber? Untreated
);

/// <summary>Searches the neighbourhood of an enquiry for what would make it possible.</summary>
public sealed class RouteSearch(
    Rulebook rulebook,
    SpeciesCatalogue species,
    NaturalDurability durability,
    UsualReach reach
)
{
    private const int SpeciesMax = 4;
    private const double UnknownDensityKgPerM3 = 600;

    /// <summary>Every route found, the likeliest and least demanding first.</summary>
    /// <remarks>Routes to which the rulebook has no answer are left out; two changes are combined only with incising.</remarks>
    public IReadOnlyList<Route> Find(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        var routes = new List<Route>();
        Add(
            routes,
            RouteKind.Incise,
            "incise the faces",
            enquiry.IsIncised == true ? null : enquiry with { IsIncised = true }
        );
        foreach (var change in Changes(enquiry))
        {
            Add(routes, change.Kind, change.InWords, change.Enquiry);
            if (change.Enquiry.IsIncised != true)
                Add(
                    routes,
                    change.Kind,
                    change.InWords + " and incise the faces",
                    change.Enquiry with
                    {
                        IsIncised = true,
                    }
                );
        }
        routes.AddRange(DurableHeartwood(enquiry));
        return [.. KeepBest(routes).OrderBy(route => route.Reach).ThenBy(route => route.Kind)];
    }

    private void Add(List<Route> routes, RouteKind kind, string inWords, Enquiry? changed)
    {
        if (changed is null || rulebook.Answer(changed) is not Required required)
            return;
        var verdict = reach.Judge(required.Requirement.Penetration, changed.Species, changed.IsIncised == true);
        routes.Add(new Route(kind, inWords, changed, required, verdict, null));
    }

    private IEnumerable<(RouteKind Kind, string InWords, Enquiry Enquiry)> Changes(Enquiry enquiry)
    {
        if (
            rulebook.Answer(enquiry) is Required { Requirement.MoistureMaxPercent: { } max }
            && enquiry.MoisturePercent > max
        )
            yield return (
                RouteKind.Dry,
                FormattableString.Invariant($"dry to {max:0} % or less"),
                enquiry with
                {
                    MoisturePercent = max,
                }
            );
        if (enquiry.FormOrFromSection == TimberForm.Sawn)
        {
            var section = enquiry.Section is { } sawn ? new RoundSection(sawn.ThicknessMm) : null;
            yield return (
                RouteKind.UseRound,
                "round timber in place of sawn",
                enquiry with
                {
                    Form = TimberForm.Round,
                    Section = section,
                    HasExposedHeartwood = false,
                }
            );
        }
        foreach (var other in Permeable(enquiry.Species))
            yield return (
                RouteKind.OtherSpecies,
                $"{other.Name} in place of {enquiry.Species?.Name ?? "the species"}",
                enquiry with
                {
                    Species = other,
                }
            );
        var life = enquiry.Life?.Years ?? int.MaxValue;
        foreach (var years in rulebook.Lives.Where(years => years < life).Reverse())
            yield return (
                RouteKind.ShorterLife,
                FormattableString.Invariant($"a service life of {years} years"),
                enquiry with
                {
                    Life = new DesiredServiceLife(years),
                }
            );
        foreach (var (lower, design) in LowerClasses(enquiry))
            yield return (
                RouteKind.LowerUseClass,
                $"{design} (use class {lower.Label()})",
                enquiry with
                {
                    UseClasses = [lower],
                    Component = null,
                }
            );
    }

    // Species whose sapwood is easy to treat; those nearest in density first, since they will do the same work.
    private IEnumerable<Species> Permeable(Species? instead)
    {
        var density = Density(instead);
        return species
            .All.Where(each => each.SapwoodTreatability?.Value.High == 1 && !each.Equals(instead))
            .Where(each => instead is null || each.Type == instead.Type)
            .OrderBy(each => Math.Abs(Density(each) - density));
    }

    private static double Density(Species? wood) => wood?.Density?.Value.TypicalKgPerM3 ?? UnknownDensityKgPerM3;

    private static IEnumerable<(UseClass Class, string Design)> LowerClasses(Enquiry enquiry)
    {
        var now = enquiry.UseClasses.Count == 0 ? UseClass.One : enquiry.UseClasses.Max();
        if (now == UseClass.Four)
            yield return (UseClass.ThreeTwo, "hold it clear of the ground, on a metal shoe");
        if (now is UseClass.Four or UseClass.ThreeTwo)
            yield return (UseClass.ThreeOne, "shape joints and tops so that no water stays");
        if (now is UseClass.ThreeOne or UseClass.ThreeTwo)
            yield return (UseClass.Two, "bring it under a roof");
    }

    private IEnumerable<Route> DurableHeartwood(Enquiry enquiry)
    {
        if (enquiry.UseClasses.Count == 0)
            yield break;
        var useClass = enquiry.UseClasses.Max();
        foreach (var other in species.All)
        {
            var untreated = durability.Judge(other, useClass);
            if (untreated.Heartwood is not (DurabilityVerdict.Enough or DurabilityVerdict.NormallyEnough))
                continue;
            var verdict = untreated.Heartwood == DurabilityVerdict.Enough ? ReachVerdict.Likely : ReachVerdict.NotKnown;
            yield return new Route(
                RouteKind.DurableHeartwood,
                $"heartwood of {other.Name}, free of sapwood, untreated",
                enquiry with
                {
                    Species = other,
                },
                null,
                verdict,
                untreated
            );
        }
    }

    // A change that works without incising is not shown with it; of many species only the first few.
    private static IEnumerable<Route> KeepBest(List<Route> routes) =>
        routes
            .Where(route =>
                route.Enquiry.IsIncised != true
                || route.Kind == RouteKind.Incise
                || !routes.Exists(other =>
                    other.Kind == route.Kind
                    && other.Reach <= route.Reach
                    && other.Enquiry == (route.Enquiry with { IsIncised = other.Enquiry.IsIncised })
                    && other.Enquiry.IsIncised != true
                )
            )
            .GroupBy(route => (route.Kind, route.Reach))
            .SelectMany(group =>
                group.Key.Kind is RouteKind.OtherSpecies or RouteKind.DurableHeartwood ? group.Take(SpeciesMax) : group
            );
}

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
/// <param name="Answer">What the rulebook then says: a demand, or that it is silent; null where no preservative is needed.</param>
/// <param name="Reach">Whether the demand is usually met then.</param>
/// <param name="Untreated">The verdict on untreated timber, where that is the route.</param>
public sealed record Route(
    RouteKind Kind,
    string InWords,
    Enquiry Enquiry,
    Answer? Answer,
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
    private const int SpeciesMax = 3;
    private const double UnknownDensityKgPerM3 = 600;

    /// <summary>Every route found, the likeliest and least demanding first.</summary>
    /// <remarks>
    /// Where it is not known whether heartwood of a sawn piece is exposed, it is taken to be: the careful side. Two changes are
    /// combined only with incising. Where the rulebook answers the enquiry itself but is silent on a kind of change, that is
    /// given once.
    /// </remarks>
    public IReadOnlyList<Route> Find(Enquiry enquiry)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        if (enquiry.FormOrFromSection == TimberForm.Sawn)
            enquiry = enquiry with { HasExposedHeartwood = enquiry.HasExposedHeartwood ?? true };
        var isSilent = rulebook.Answer(enquiry) is NotCovered;
        var treated = Changes(enquiry)
            .SelectMany(WithAndWithoutIncising)
            .Select(Asked)
            .OfType<Route>()
            .Where(route => !(isSilent && route.Answer is NotCovered));
        return
        [
            .. KeepBest([.. treated, .. DurableHeartwood(enquiry)])
                .OrderBy(route => route.Reach)
                .ThenBy(route => route.Kind),
        ];
    }

    private static IEnumerable<Change> WithAndWithoutIncising(Change change)
    {
        yield return change;
        if (change.Enquiry.IsIncised != true)
            yield return new Change(
                change.Kind,
                change.InWords + " and incise the faces",
                change.Enquiry with
                {
                    IsIncised = true,
                }
            );
    }

    // What the code does not permit is no route.
    private Route? Asked(Change change)
    {
        var (kind, inWords, enquiry) = change;
        return rulebook.Answer(enquiry) switch
        {
            Required required => new Route(
                kind,
                inWords,
                enquiry,
                required,
                reach.Judge(required.Requirement.Penetration, enquiry.Species, enquiry.IsIncised == true),
                null
            ),
            NotCovered silent => new Route(kind, inWords, enquiry, silent, ReachVerdict.NotKnown, null),
            _ => null,
        };
    }

    private IEnumerable<Change> Changes(Enquiry enquiry)
    {
        if (enquiry.IsIncised != true)
            yield return new(RouteKind.Incise, "incise the faces", enquiry with { IsIncised = true });
        if (
            rulebook.Answer(enquiry) is Required { Requirement.MoistureMaxPercent: { } max }
            && enquiry.MoisturePercent > max
        )
            yield return new(
                RouteKind.Dry,
                FormattableString.Invariant($"dry to {max:0} % or less"),
                enquiry with
                {
                    MoisturePercent = max,
                }
            );
        if (enquiry.FormOrFromSection == TimberForm.Sawn)
            yield return new(
                RouteKind.UseRound,
                "round timber in place of sawn",
                enquiry with
                {
                    Form = TimberForm.Round,
                    Section = enquiry.Section is { } sawn ? new RoundSection(sawn.ThicknessMm) : null,
                    HasExposedHeartwood = false,
                }
            );
        foreach (var other in Permeable(enquiry.Species))
            yield return new(
                RouteKind.OtherSpecies,
                $"{other.Name} in place of {enquiry.Species?.Name ?? "the species"}",
                enquiry with
                {
                    Species = other,
                }
            );
        var life = enquiry.Life?.Years ?? int.MaxValue;
        foreach (var years in rulebook.Lives.Where(years => years < life).Reverse())
            yield return new(
                RouteKind.ShorterLife,
                FormattableString.Invariant($"a service life of {years} years"),
                enquiry with
                {
                    Life = new DesiredServiceLife(years),
                }
            );
        foreach (var (lower, design) in LowerClasses(enquiry))
            yield return new(
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

    // Within a kind: no incising where it works without, nothing unlikely beside what is likely, nothing silent beside an
    // answer, and of many species only the first few.
    private static IEnumerable<Route> KeepBest(IReadOnlyList<Route> routes) =>
        routes
            .GroupBy(route => route.Kind)
            .SelectMany(kind =>
            {
                var answered = kind.Where(route => route.Answer is not NotCovered).ToList();
                if (answered.Count == 0)
                    return kind.Take(1);
                var isAnyLikely = answered.Exists(route => route.Reach == ReachVerdict.Likely);
                return answered
                    .Where(route => !(isAnyLikely && route.Reach == ReachVerdict.Unlikely))
                    .Where(route => !answered.Exists(other => IsSameWithoutIncising(other, route)))
                    .GroupBy(route => route.Reach)
                    .SelectMany(same =>
                        kind.Key is RouteKind.OtherSpecies or RouteKind.DurableHeartwood ? same.Take(SpeciesMax) : same
                    );
            });

    private static bool IsSameWithoutIncising(Route other, Route route) =>
        route.Enquiry.IsIncised == true
        && other.Enquiry.IsIncised != true
        && other.Reach <= route.Reach
        && other.Enquiry == (route.Enquiry with { IsIncised = other.Enquiry.IsIncised });

    private sealed record Change(RouteKind Kind, string InWords, Enquiry Enquiry);
}

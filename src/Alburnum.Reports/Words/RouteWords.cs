using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What would make an enquiry possible, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class RouteWords(Wording wording)
{
    /// <summary>The change, for instance "dry to 28 % or less and incise the faces".</summary>
    public string Say(Route route)
    {
        ArgumentNullException.ThrowIfNull(route);
        var change = Say(route.Change);
        var whole = route.IsIncisedToo ? wording.Say("routes.and-incise", ("change", change)) : change;
        return route.DriedTooPercent is { } percent
            ? wording.Say("routes.and-dry", ("change", whole), ("percent", Figures.Digits(percent, 1)))
            : whole;
    }

    /// <summary>What kind of change it is, for instance "other species".</summary>
    public string Say(RouteKind kind) =>
        kind switch
        {
            RouteKind.Incise => wording.Say("routes.kind.incise"),
            RouteKind.Dry => wording.Say("routes.kind.dry"),
            RouteKind.UseRound => wording.Say("routes.kind.use-round"),
            RouteKind.OtherSpecies => wording.Say("routes.kind.other-species"),
            RouteKind.DurableHeartwood => wording.Say("routes.kind.durable-heartwood"),
            RouteKind.ShorterLife => wording.Say("routes.kind.shorter-life"),
            RouteKind.LowerUseClass => wording.Say("routes.kind.lower-use-class"),
            RouteKind.CodesClass => wording.Say("routes.kind.codes-class"),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a route."),
        };

    /// <summary>That a timber is commonly sold for the component, or that this is not known; null where no other timber is proposed.</summary>
    public string? Sold(Route route)
    {
        ArgumentNullException.ThrowIfNull(route);
        return route switch
        {
            { CommonlySold: { } sold } => wording.Say(
                "routes.commonly-sold",
                ("standing", wording.Say(sold.Provenance.Standing))
            ),
            { Change: TakeSpecies or TakeHeartwood } => wording.Say("routes.not-known-whether-sold"),
            _ => null,
        };
    }

    /// <summary>How long such heartwood lasted in the ground, and whether it lasts as long as is asked; null where neither matters.</summary>
    public string? Lasts(Route route)
    {
        ArgumentNullException.ThrowIfNull(route);
        var parts = new[] { route.Trial is { } trial ? Lasted(trial, route) : null, LastsAsAsked(route) }
            .OfType<string>()
            .ToList();
        return parts.Count > 0 ? string.Join(", ", parts) : null;
    }

    private string Lasted(YearsInGround trial, Route route)
    {
        var lasted = route.Untreated?.Species is { Durability: not null } species
            ? new LastedInGround(species, trial)
            : null;
        (string, string) durability = ("class", Figures.Whole(trial.DurabilityClass)),
            years = ("years", RequirementWords.Current.Durability.Years(trial)),
            standing = ("standing", wording.Say(lasted?.Standing ?? trial.Provenance.Standing));
        return lasted is { IsOfWorseEnd: true }
            ? wording.Say("routes.lasted-worse", durability, years, standing)
            : wording.Say("routes.lasted", durability, years, standing);
    }

    private string? LastsAsAsked(Route route) =>
        route switch
        {
            { Untreated.Heartwood: not null, Reach: ReachVerdict.NotKnown, Enquiry.Life: { } life } => wording.Say(
                "routes.not-known-whether-lasts",
                ("years", Figures.Whole(life.Years))
            ),
            { Trial: { } trial, Enquiry.Life: { } life } when trial.Reach(life) == false => wording.Say(
                "routes.too-short",
                ("years", Figures.Whole(life.Years))
            ),
            _ => null,
        };

    /// <summary>How many pieces are expected to meet the demand.</summary>
    /// <param name="share">Share of pieces, 0 to 1.</param>
    /// <param name="part">The wood that the share is of, where more must be met; null where it is of the whole demand.</param>
    public string Expected(double share, WoodZone? part) =>
        part is { } lesser
            ? wording.Say(
                "routes.expected-of-part",
                ("share", Figures.Certainty(share, wording)),
                ("part", Part(lesser))
            )
            : wording.Say("routes.expected", ("share", Figures.Certainty(share, wording)));

    /// <summary>Sapwood or exposed heartwood, as a part of what must be met.</summary>
    internal string Part(WoodZone part) =>
        wording.Say(part == WoodZone.Sapwood ? "routes.part.sapwood" : "routes.part.heartwood");

    /// <summary>Whether a demand is usually met.</summary>
    public string Say(ReachVerdict reach) =>
        reach switch
        {
            ReachVerdict.Likely => wording.Say("routes.reach.likely"),
            ReachVerdict.NotKnown => wording.Say("routes.reach.not-known"),
            ReachVerdict.Unlikely => wording.Say("routes.reach.unlikely"),
            _ => throw new ArgumentOutOfRangeException(nameof(reach), reach, "Not a verdict."),
        };

    /// <summary>The same, with what is usual where the prediction says otherwise.</summary>
    /// <param name="reach">Whether the demand is met.</param>
    /// <param name="usual">What is usual by treatability and incising alone; null where it is the same.</param>
    public string Reach(ReachVerdict reach, ReachVerdict? usual) =>
        usual is { } against
            ? wording.Say("routes.reach-against-usual", ("reach", Say(reach)), ("usual", Say(against)))
            : Say(reach);

    private string Say(RouteChange change) =>
        change switch
        {
            InciseFaces => wording.Say("routes.incise"),
            DryFirst dry => wording.Say("routes.dry", ("percent", Figures.Digits(dry.MaxPercent, 0))),
            TakeRound { Section: { } section } => wording.Say("routes.use-round-of", ("section", section.Label)),
            TakeRound => wording.Say("routes.use-round"),
            TakeSpecies { Instead: { } instead } other => wording.Say(
                "routes.other-species",
                ("species", other.Species.Name),
                ("instead", instead.Name)
            ),
            TakeSpecies other => wording.Say("routes.some-species", ("species", other.Species.Name)),
            TakeHeartwood durable => wording.Say("routes.durable-heartwood", ("species", durable.Species.Name)),
            ShortenLife shorter => wording.Say("routes.shorter-life", ("years", Figures.Whole(shorter.Life.Years))),
            TakeCodesClass code => wording.Say("routes.codes-class", ("class", code.StatedClass)),
            LowerClass lower => wording.Say(
                "routes.lower-use-class",
                ("design", Design(lower)),
                ("class", lower.UseClass.Label())
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(change), change, "Not a change."),
        };

    private string Design(LowerClass lower) =>
        lower switch
        {
            { UseClass: UseClass.ThreeOne, From: UseClass.Four } => wording.Say(
                "routes.design.and",
                ("design", wording.Say("routes.design.off-the-ground")),
                ("other", wording.Say("routes.design.no-water-stays"))
            ),
            { UseClass: UseClass.ThreeTwo } => wording.Say("routes.design.off-the-ground"),
            { UseClass: UseClass.ThreeOne } => wording.Say("routes.design.no-water-stays"),
            { UseClass: UseClass.Two } => wording.Say("routes.design.under-a-roof"),
            _ => throw new ArgumentOutOfRangeException(nameof(lower), lower, "No design leads to this class."),
        };
}

using Alburnum.Requirements;

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
        return route.IsIncisedToo ? wording.Say("routes.and-incise", ("change", change)) : change;
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
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a route."),
        };

    /// <summary>That a timber is commonly sold for the component.</summary>
    public string Say(CommonTimber sold)
    {
        ArgumentNullException.ThrowIfNull(sold);
        return wording.Say("routes.commonly-sold", ("standing", wording.Say(sold.Provenance.Standing)));
    }

    /// <summary>How long heartwood of its durability class lasted in the ground.</summary>
    public string Say(YearsInGround trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return wording.Say(
            "routes.lasted",
            ("years", RequirementWords.Current.Durability.Years(trial)),
            ("standing", wording.Say(trial.Provenance.Standing))
        );
    }

    /// <summary>How many pieces are expected to meet the demand.</summary>
    /// <param name="share">Share of pieces, 0 to 1.</param>
    public string Expected(double share) =>
        wording.Say("routes.expected", ("share", Figures.Certainty(share, wording)));

    /// <summary>Whether a demand is usually met.</summary>
    public string Say(ReachVerdict reach) =>
        reach switch
        {
            ReachVerdict.Likely => wording.Say("routes.reach.likely"),
            ReachVerdict.NotKnown => wording.Say("routes.reach.not-known"),
            ReachVerdict.Unlikely => wording.Say("routes.reach.unlikely"),
            _ => throw new ArgumentOutOfRangeException(nameof(reach), reach, "Not a verdict."),
        };

    private string Say(RouteChange change) =>
        change switch
        {
            InciseFaces => wording.Say("routes.incise"),
            DryFirst dry => wording.Say("routes.dry", ("percent", Figures.Digits(dry.MaxPercent, 0))),
            TakeRound => wording.Say("routes.use-round"),
            TakeSpecies { Instead: { } instead } other => wording.Say(
                "routes.other-species",
                ("species", other.Species.Name),
                ("instead", instead.Name)
            ),
            TakeSpecies other => wording.Say("routes.some-species", ("species", other.Species.Name)),
            TakeHeartwood durable => wording.Say("routes.durable-heartwood", ("species", durable.Species.Name)),
            ShortenLife shorter => wording.Say("routes.shorter-life", ("years", Figures.Whole(shorter.Life.Years))),
            LowerClass lower => wording.Say(
                "routes.lower-use-class",
                ("design", Design(lower.UseClass)),
                ("class", lower.UseClass.Label())
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(change), change, "Not a change."),
        };

    private string Design(UseClass lower) =>
        lower switch
        {
            UseClass.ThreeTwo => wording.Say("routes.design.off-the-ground"),
            UseClass.ThreeOne => wording.Say("routes.design.no-water-stays"),
            UseClass.Two => wording.Say("routes.design.under-a-roof"),
            _ => throw new ArgumentOutOfRangeException(nameof(lower), lower, "No design leads to this class."),
        };
}

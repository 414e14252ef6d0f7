using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>How deep a rule asks the preservative to be found, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class DepthRuleWords(Wording wording)
{
    /// <summary>The rule as a phrase, for instance "at least 6 mm in the sapwood".</summary>
    public string Say(DepthRule rule) =>
        rule switch
        {
            NoDepth => wording.Say("depths.none"),
            LeastDepth { Coverage: < 1 } least => wording.Say(
                "depths.least-over",
                ("mm", Figures.Digits(least.DepthMm)),
                ("zone", In(least.Zone)),
                ("percent", Percent(least.Coverage))
            ),
            LeastDepth least => wording.Say(
                "depths.least",
                ("mm", Figures.Digits(least.DepthMm)),
                ("zone", In(least.Zone))
            ),
            ShareOfZone { Share: >= 1 } full => wording.Say("depths.full", ("zone", In(full.Zone))),
            ShareOfZone { Zone: WoodZone.Lateral } share => wording.Say(
                "depths.share-of-way",
                ("percent", Percent(share.Share))
            ),
            ShareOfZone share => wording.Say(
                "depths.share",
                ("percent", Percent(share.Share)),
                ("zone", In(share.Zone))
            ),
            UntreatedHeartwoodLimit limit => wording.Say(
                "depths.untreated-heartwood",
                ("area", Percent(limit.AreaShare)),
                ("through", Percent(limit.ThroughShare)),
                ("side", Percent(limit.SideShare))
            ),
            AllOf all => wording.Joined("depths.and", all.Parts.Select(Say)),
            AnyOf any => wording.Joined("depths.or", any.Parts.Select(Say)),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a depth rule."),
        };

    private string In(WoodZone zone) =>
        zone switch
        {
            WoodZone.Lateral => wording.Say("depths.lateral"),
            WoodZone.Sapwood => wording.Say("depths.sapwood"),
            WoodZone.ExposedHeartwood => wording.Say("depths.exposed-heartwood"),
            _ => throw new ArgumentOutOfRangeException(nameof(zone), zone, "Not a zone."),
        };

    private static string Percent(double share) => Figures.Digits(share * 100);
}

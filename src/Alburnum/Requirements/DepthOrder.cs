namespace Alburnum.Requirements;

/// <summary>Which of two depth rules asks for more.</summary>
public static class DepthOrder
{
    /// <summary>True where whatever meets <paramref name="strict"/> is sure to meet <paramref name="loose"/>.</summary>
    /// <remarks>
    /// Cautious: false means "not shown". Full penetration of a zone counts as meeting any depth in it, since a zone thinner
    /// than the depth is judged by its whole.
    /// </remarks>
    public static bool Implies(DepthRule strict, DepthRule loose) =>
        (strict, loose) switch
        {
            (_, NoDepth) => true,
            (_, AllOf all) => all.Parts.All(part => Implies(strict, part)),
            (AnyOf any, _) => any.Parts.All(part => Implies(part, loose)),
            (_, AnyOf any) when any.Parts.Any(part => Implies(strict, part)) => true,
            (AllOf all, _) => all.Parts.Any(part => Implies(part, loose)),
            (LeastDepth a, LeastDepth b) => Covers(a.Zone, b.Zone)
                && a.DepthMm >= b.DepthMm
                && a.Coverage >= b.Coverage,
            (ShareOfZone a, ShareOfZone b) => Covers(a.Zone, b.Zone) && a.Share >= b.Share,
            (ShareOfZone { Share: 1 } a, LeastDepth b) => Covers(a.Zone, b.Zone),
            (UntreatedHeartwoodLimit a, UntreatedHeartwoodLimit b) => a.AreaShare <= b.AreaShare
                && a.ThroughShare <= b.ThroughShare
                && a.SideShare <= b.SideShare,
            _ => false,
        };

    /// <summary>True where it asks something of heartwood that reaches a face.</summary>
    /// <param name="rule">The rule.</param>
    public static bool AsksOfHeartwoodAtFace(DepthRule rule) =>
        rule switch
        {
            LeastDepth { Zone: WoodZone.ExposedHeartwood } or ShareOfZone { Zone: WoodZone.ExposedHeartwood } => true,
            AllOf all => all.Parts.Any(AsksOfHeartwoodAtFace),
            AnyOf any => any.Parts.All(AsksOfHeartwoodAtFace),
            _ => false,
        };

    /// <summary>True where some of it is a limit on the heartwood that may stay untreated.</summary>
    /// <param name="rule">The rule.</param>
    public static bool LimitsUntreatedHeartwood(DepthRule rule) =>
        rule switch
        {
            UntreatedHeartwoodLimit => true,
            AllOf all => all.Parts.Any(LimitsUntreatedHeartwood),
            AnyOf any => any.Parts.Any(LimitsUntreatedHeartwood),
            _ => false,
        };

    /// <summary>What is left of a rule for a piece of which no heartwood reaches a face.</summary>
    /// <param name="rule">The rule.</param>
    public static DepthRule WithoutHeartwoodAtFace(DepthRule rule)
    {
        switch (rule)
        {
            case LeastDepth { Zone: WoodZone.ExposedHeartwood } or ShareOfZone { Zone: WoodZone.ExposedHeartwood }:
                return new NoDepth();
            case AllOf all when AsksOfHeartwoodAtFace(all):
                List<DepthRule> left = [.. all.Parts.Select(WithoutHeartwoodAtFace).Where(part => part is not NoDepth)];
                return left switch
                {
                    [] => new NoDepth(),
                    [var one] => one,
                    _ => new AllOf(left),
                };
            default:
                return rule;
        }
    }

    /// <summary>True where <paramref name="less"/> asks for strictly less than <paramref name="more"/>.</summary>
    public static bool AsksLess(DepthRule less, DepthRule more) => Implies(more, less) && !Implies(less, more);

    private static bool Covers(WoodZone strict, WoodZone loose) => strict == loose || strict == WoodZone.Lateral;
}

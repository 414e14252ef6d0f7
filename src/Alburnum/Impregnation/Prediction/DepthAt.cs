using Alburnum.Requirements;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Depths at places around one predicted piece, held against a depth rule. No uncertainty: one draw is one truth.</summary>
internal static class DepthAt
{
    /// <summary>True where every place that the rule speaks of meets it, or, with coverage, enough of each face.</summary>
    public static bool Meets(DepthRule rule, IReadOnlyList<SectionPosition> places, ReadOnlySpan<double> depthMm)
    {
        switch (rule)
        {
            case NoDepth:
                return true;
            case AllOf all:
                foreach (var part in all.Parts)
                    if (!Meets(part, places, depthMm))
                        return false;
                return true;
            case AnyOf any:
                foreach (var part in any.Parts)
                    if (Meets(part, places, depthMm))
                        return true;
                return false;
            case LeastDepth { Coverage: < 1 } covered:
                return Covers(covered, places, depthMm);
            default:
                for (var i = 0; i < places.Count; i++)
                    if (!MeetsAt(rule, places[i], depthMm[i]))
                        return false;
                return true;
        }
    }

    /// <summary>True where a core taken at one place meets the rule; a core that has nothing of the rule's zone does.</summary>
    public static bool MeetsAt(DepthRule rule, SectionPosition place, double depthMm) =>
        rule switch
        {
            LeastDepth least => !HasZone(least.Zone, place)
                || depthMm >= Math.Min(least.DepthMm, ZoneMm(least.Zone, place)) - 1e-9,
            ShareOfZone share => !HasZone(share.Zone, place)
                || depthMm >= share.Share * ZoneMm(share.Zone, place) - 1e-9,
            AllOf all => all.Parts.All(part => MeetsAt(part, place, depthMm)),
            AnyOf any => any.Parts.Any(part => MeetsAt(part, place, depthMm)),
            // Heartwood may stay untreated: the sapwood may not.
            UntreatedHeartwoodLimit => depthMm >= place.SapwoodMm - 1e-9,
            _ => true,
        };

    /// <summary>True where the rule asks for anything of a core taken at one place.</summary>
    public static bool Asks(DepthRule rule, SectionPosition place) =>
        rule switch
        {
            NoDepth => false,
            LeastDepth least => HasZone(least.Zone, place),
            ShareOfZone share => HasZone(share.Zone, place),
            AllOf all => all.Parts.Any(part => Asks(part, place)),
            AnyOf any => any.Parts.Any(part => Asks(part, place)),
            _ => true,
        };

    private static bool HasZone(WoodZone zone, SectionPosition place) =>
        zone switch
        {
            WoodZone.Sapwood => place.SapwoodMm > 0,
            WoodZone.ExposedHeartwood => place.SapwoodMm <= 0,
            _ => true,
        };

    private static double ZoneMm(WoodZone zone, SectionPosition place) =>
        zone == WoodZone.Sapwood ? place.SapwoodMm : place.WayMm;

    private static bool Covers(LeastDepth rule, IReadOnlyList<SectionPosition> places, ReadOnlySpan<double> depthMm)
    {
        Span<int> asked = stackalloc int[5];
        Span<int> met = stackalloc int[5];
        for (var i = 0; i < places.Count; i++)
        {
            if (!HasZone(rule.Zone, places[i]))
                continue;
            asked[places[i].Face]++;
            if (MeetsAt(rule, places[i], depthMm[i]))
                met[places[i].Face]++;
        }
        for (var face = 1; face <= 4; face++)
            if (met[face] < rule.Coverage * asked[face] - 1e-9)
                return false;
        return true;
    }
}

using Alburnum.Acceptance;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>Which assays speak of which of the retentions that are asked for, and what they tell of it.</summary>
/// <remarks>
/// A retention is that of the analytical zone of its class. An assay that says which zone was cut speaks of that zone alone. One that does not is of the zone that
/// is asked for, where only one is. Where several are, it may be of any of them: less goes deep than stays outside, so that a content that is enough is enough in the
/// shallowest, and one that is too low is too low in the deepest, whichever was cut. It tells nothing else. Where the zone that is asked for is not known, an assay of
/// a zone that is named tells nothing of it. Our own choice.
/// </remarks>
internal sealed class AssayedRetentions
{
    // Zones are cut to the millimetre.
    private const double SameMm = 0.5;

    private readonly IReadOnlyList<Assay> _assays;
    private readonly IReadOnlyList<Assay> _unstated;
    private readonly IReadOnlyList<AnalyticalZone> _zones;
    private readonly bool _mayHeartwoodLieAtFace;

    /// <summary>Sets assays against retentions.</summary>
    public AssayedRetentions(RequiredCase required)
    {
        _assays = required.Enquired.Assays;
        _mayHeartwoodLieAtFace = required.Answer.Trace.AsAnswered.HeartwoodAtFace != false;
        _unstated = [.. _assays.Where(assay => assay.Zone is null)];
        Demands = [.. required.Retentions.Where(demand => !(required.IsClassWithinCode && IsFollowing(demand)))];
        _zones = [.. Demands.Select(demand => demand.Zone).OfType<AnalyticalZone>().DistinctBy(zone => zone.Place)];
    }

    /// <summary>Every retention that is asked for, but one that the code's contains and no assay is of.</summary>
    public IReadOnlyList<RetentionDemand> Demands { get; }

    /// <summary>In how many zones they are asked for, as far as it matters.</summary>
    public ZonesAskedFor Zones =>
        Deciding.Count <= 1 ? ZonesAskedFor.One
        : _zones.Count > 1 ? ZonesAskedFor.Several
        : ZonesAskedFor.NotKnown;

    /// <summary>The retentions that decide: of those of which the same assays tell the same, the greatest.</summary>
    public IReadOnlyList<RetentionAsked> Deciding =>
        [
            .. Demands
                .Select(Of)
                .GroupBy(asked =>
                    (
                        asked.Tell,
                        asked.Gap,
                        NotAssayed: asked.Assays.Count == 0 ? asked.Zone : null,
                        Sets: string.Join(';', asked.OrElse.Prepend(asked.Assays).Select(Numbers))
                    )
                )
                .Select(group => group.MaxBy(asked => asked.KgPerM3)!),
        ];

    /// <summary>The assays that speak of none of the retentions asked for, since they are of other zones; empty where none is asked for.</summary>
    public IEnumerable<Assay> NotCounted =>
        Demands.Count == 0
            ? []
            : _assays.Except(
                Demands.Select(Of).SelectMany(asked => asked.OrElse.Prepend(asked.Assays)).SelectMany(all => all)
            );

    /// <summary>That assays are taken to be of the zone that is asked for though they do not say so, since no other is; null where none is so taken.</summary>
    public ZoneTakenForGranted? TakenForGranted =>
        _unstated.Count == 0 ? null
        : _zones is [{ Name: var only }] ? new(only)
        : NoZoneIsNamed ? new(Zone: null)
        : null;

    /// <summary>Whether assays that do not say which zone was cut are held against retentions in more than one.</summary>
    public bool IsZoneLeftOpen =>
        Demands.Select(Of).Any(asked => asked.Gap is ZoneGap.NotStated or ZoneGap.SomeNotStated);

    /// <summary>One of the retentions, with the assays that are or may be of its zone.</summary>
    public RetentionAsked Of(RetentionDemand demand)
    {
        if (_assays.Count == 0)
            return new(demand.KgPerM3, []) { Zone = demand.Zone?.Name };
        return demand.Zone is { } zone ? In(zone, demand.KgPerM3) : SomewhereOrOther(demand.KgPerM3);
    }

    private RetentionAsked In(AnalyticalZone zone, double kgPerM3)
    {
        Assay[] stated = [.. _assays.Where(assay => assay.Zone is { } cut && Is(cut, zone))];
        var asked = new RetentionAsked(kgPerM3, [.. stated, .. _unstated]) { Zone = zone.Name };
        if (asked.Assays.Count == 0)
            return asked with { Gap = ZoneGap.OthersCut };
        if (_unstated.Count == 0 || _zones.Count == 1)
            return asked;
        return stated.Length > 0
            ? asked with
            {
                Gap = ZoneGap.SomeNotStated,
                OrElse = [stated],
            }
            : asked with
            {
                Gap = ZoneGap.NotStated,
                Tell = OfUnstated(zone),
            };
    }

    private AssaysTell OfUnstated(AnalyticalZone zone) =>
        _zones.All(zone.IsWithin) ? AssaysTell.AtLeast
        : _zones.All(other => other.IsWithin(zone)) ? AssaysTell.AtMost
        : AssaysTell.Nothing;

    private RetentionAsked SomewhereOrOther(double kgPerM3) =>
        NoZoneIsNamed
            ? new(kgPerM3, _assays)
            : new(kgPerM3, _assays) { Gap = ZoneGap.ZoneNotKnown, Tell = AssaysTell.Nothing };

    private bool NoZoneIsNamed => _zones.Count == 0 && _unstated.Count == _assays.Count;

    private string Numbers(IReadOnlyList<Assay> assays) =>
        string.Join(
            ',',
            assays.Select(assay => _assays.Index().First(each => ReferenceEquals(each.Item, assay)).Index)
        );

    // A class that the code's demand contains is judged by itself only where an assay is, or may be, of its zone.
    private bool IsFollowing(RetentionDemand demand) =>
        demand is { By: RetentionDemandedBy.Class, Zone: { } zone }
        && _unstated.Count == 0
        && !_assays.Any(assay => assay.Zone is { } cut && Is(cut, zone));

    // What a zone holds of heartwood besides is nothing where none lies at a face.
    private bool Is(AssayedZone cut, AnalyticalZone zone) =>
        (zone.HeartwoodMm is null || !_mayHeartwoodLieAtFace)
        && (
            cut.DepthMm is { } mm
                ? zone.ThicknessMm is { } thicknessMm && Math.Abs(thicknessMm - mm) < SameMm
                : zone.DepthMm is null
        );
}

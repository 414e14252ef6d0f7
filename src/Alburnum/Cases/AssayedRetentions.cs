using Alburnum.Acceptance;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>Which assays speak of which of the retentions that are asked for.</summary>
/// <remarks>
/// A retention is that of the analytical zone of its class. An assay that says which zone was cut speaks of that zone alone. One that does not is taken for one
/// of the shallowest zone that is asked for: less goes deep than stays outside, so that a sample of a deeper zone does not flatter it. Of a deeper zone it
/// says nothing. Our own choice.
/// </remarks>
internal static class AssayedRetentions
{
    // Zones are cut to the millimetre.
    private const double SameMm = 0.5;

    /// <summary>The retentions asked for, each with the assays of its zone; of those that the same assays speak of, the greatest.</summary>
    public static IReadOnlyList<RetentionAsked> Deciding(RequiredCase required)
    {
        List<Assay> all = [.. required.Enquired.Assays];
        return
        [
            .. required
                .Retentions.Select(demand => Of(demand, required))
                .GroupBy(asked =>
                    (
                        Speaking: string.Join(',', asked.Assays.Select(assay => all.IndexOf(assay))),
                        asked.ZoneNotAssayed?.Zone
                    )
                )
                .Select(group => group.MaxBy(asked => asked.KgPerM3)!),
        ];
    }

    /// <summary>One of the retentions asked for, with the assays of its zone.</summary>
    public static RetentionAsked Of(RetentionDemand demand, RequiredCase required)
    {
        var (zone, assays) = (demand.Zone, required.Enquired.Assays);
        if (zone is null || assays.Count == 0)
            return new(demand.KgPerM3, assays);
        var shallowest = required
            .Retentions.Select(each => each.Zone)
            .OfType<AnalyticalZone>()
            .MinBy(each => each.DepthMm ?? double.PositiveInfinity)!;
        Assay[] speaking = [.. assays.Where(assay => assay.Zone is { } cut ? Is(cut, zone) : Same(zone, shallowest))];
        return new(demand.KgPerM3, speaking)
        {
            ZoneNotAssayed =
                speaking.Length > 0
                    ? null
                    : new(zone.Name, demand.KgPerM3, IsZoneStated: assays.All(assay => assay.Zone is not null)),
        };
    }

    /// <summary>The assays that speak of none of the retentions asked for, since they are of other zones; empty where none is asked for.</summary>
    public static IEnumerable<Assay> NotCounted(RequiredCase required) =>
        required.Retentions.Count == 0
            ? []
            : required.Enquired.Assays.Except(required.Retentions.SelectMany(demand => Of(demand, required).Assays));

    private static bool Is(AssayedZone cut, AnalyticalZone zone) =>
        cut.DepthMm is { } mm
            ? zone.ThicknessMm is { } thicknessMm && Math.Abs(thicknessMm - mm) < SameMm
            : zone is { DepthMm: null, Name: AnalyticalZone.AllSapwood };

    // A zone whose depth follows the sapwood is known by its name alone.
    private static bool Same(AnalyticalZone one, AnalyticalZone other) =>
        (one.FromMm, one.DepthMm) == (other.FromMm, other.DepthMm)
        && (one.DepthMm is not null || one.Name == other.Name);
}

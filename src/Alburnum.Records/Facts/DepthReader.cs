using Alburnum.Facts;
using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads a depth rule and the demand around it.</summary>
internal static class DepthReader
{
    private static readonly (string, WoodZone)[] Zones =
    [
        ("sapwood", WoodZone.Sapwood),
        ("exposed heartwood", WoodZone.ExposedHeartwood),
        ("lateral", WoodZone.Lateral),
    ];

    /// <summary>A named class of penetration, with its own source and standing.</summary>
    public static PenetrationDemand ReadClass(FactRow row) => ReadDemand(row) with { DefinedBy = row.Provenance() };

    /// <summary>Fields <c>name</c>, <c>depth</c> and, where known, <c>zone</c>.</summary>
    public static PenetrationDemand ReadDemand(FactRow row)
    {
        var name = row.Text("name");
        var depth = ReadField(row);
        var zone = row.OptionalRow("zone");
        return new PenetrationDemand(
            name,
            depth,
            zone is null ? null : new Fact<AnalyticalZone>(ReadZone(zone), zone.Provenance()),
            null
        );
    }

    private static AnalyticalZone ReadZone(FactRow zone) =>
        new(zone.Has("depth") ? zone.Quantity("depth", Units.Length, Ranges.DepthMm) : null, zone.Text("inWords"))
        {
            FromMm = zone.Has("from") ? zone.Quantity("from", Units.Length, Ranges.MeasuredDepthMm) : 0,
            HeartwoodMm = zone.Has("heartwood") ? zone.Quantity("heartwood", Units.Length, Ranges.DepthMm) : null,
        };

    private static DepthRule ReadField(FactRow row)
    {
        if (row.IsText("depth"))
        {
            row.Word("depth", [("none", true)]);
            return new NoDepth();
        }
        var rule = row.OptionalRow("depth");
        if (rule is not null)
            return Read(rule);
        row.Refuse("depth", "nothing", "a depth rule, or none");
        return new NoDepth();
    }

    private static DepthRule Read(FactRow rule)
    {
        if (rule.Has("all"))
            return new AllOf(Parts(rule, "all"));
        if (rule.Has("any"))
            return new AnyOf(Parts(rule, "any"));
        if (rule.Has("share"))
            return new ShareOfZone(
                rule.Word("of", Zones),
                rule.Quantity("share", Units.Share, Ranges.CoveragePercent) / 100
            );
        if (rule.Has("untreatedHeartwoodBelow"))
        {
            return new UntreatedHeartwoodLimit(
                rule.Quantity("untreatedHeartwoodBelow", Units.Share, Ranges.CoveragePercent) / 100,
                rule.Quantity("ofTheWayThrough", Units.Share, Ranges.CoveragePercent) / 100,
                rule.Quantity("ofTheSide", Units.Share, Ranges.CoveragePercent) / 100
            );
        }
        var coverage = rule.Has("over") ? rule.Quantity("over", Units.Share, Ranges.CoveragePercent) / 100 : 1;
        return new LeastDepth(rule.Word("in", Zones), rule.Quantity("least", Units.Length, Ranges.DepthMm), coverage);
    }

    private static List<DepthRule> Parts(FactRow rule, string field)
    {
        var parts = new List<DepthRule>();
        foreach (var part in rule.Rows(field))
        {
            parts.Add(Read(part));
        }
        if (parts.Count < 2)
            rule.Refuse(field, "fewer than two parts", "two or more depth rules");
        return parts;
    }
}

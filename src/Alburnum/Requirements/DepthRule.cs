using Alburnum.Facts;

namespace Alburnum.Requirements;

/// <summary>The part of the wood that a rule speaks of.</summary>
public enum WoodZone
{
    /// <summary>The whole piece, sapwood and heartwood alike.</summary>
    Lateral,

    /// <summary>The sapwood only.</summary>
    Sapwood,

    /// <summary>Heartwood that reaches a lateral face.</summary>
    ExposedHeartwood,
}

/// <summary>How deep the preservative must be found. A tree of plain demands, so that any code's wording can be written as data.</summary>
public abstract record DepthRule
{
    private protected DepthRule() { }
}

/// <summary>No depth is required: a surface treatment is enough.</summary>
public sealed record NoDepth : DepthRule;

/// <summary>A least depth in one zone, over at least a share of the faces where that zone lies open.</summary>
public sealed record LeastDepth : DepthRule
{
    /// <summary>Checks depth and coverage.</summary>
    /// <param name="zone">Where the depth counts.</param>
    /// <param name="depthMm">Depth along the inward normal of the face, mm. 0.1 to 1000.</param>
    /// <param name="coverage">Share of the zone's length along each face that must reach the depth. Above 0, at most 1.</param>
    public LeastDepth(WoodZone zone, double depthMm, double coverage = 1)
    {
        Zone = zone;
        DepthMm = Require.Within(depthMm, Ranges.DepthMm);
        Coverage = Require.Share(coverage, Ranges.CoveragePercent);
    }

    /// <summary>Where the depth counts.</summary>
    public WoodZone Zone { get; }

    /// <summary>Depth along the inward normal of the face, mm.</summary>
    public double DepthMm { get; }

    /// <summary>Share of the zone's length along each face that must reach the depth, 0 to 1.</summary>
    public double Coverage { get; }
}

/// <summary>A share of a zone's own depth: 1 for "all the sapwood".</summary>
public sealed record ShareOfZone : DepthRule
{
    /// <summary>Checks the share.</summary>
    /// <param name="zone">The zone whose depth is shared.</param>
    /// <param name="share">Above 0, at most 1.</param>
    public ShareOfZone(WoodZone zone, double share)
    {
        Zone = zone;
        Share = Require.Share(share, Ranges.CoveragePercent);
    }

    /// <summary>The zone whose depth is shared.</summary>
    public WoodZone Zone { get; }

    /// <summary>Share of the zone's depth, 0 to 1.</summary>
    public double Share { get; }
}

/// <summary>Heartwood may stay untreated within limits; all other wood must be reached.</summary>
public sealed record UntreatedHeartwoodLimit : DepthRule
{
    /// <summary>Checks the three shares.</summary>
    /// <param name="areaShare">Untreated heartwood must be under this share of the section's area. Above 0, at most 1.</param>
    /// <param name="throughShare">It may lie no further than this share of the way from face to face. Above 0, at most 1.</param>
    /// <param name="sideShare">It may be no longer than this share of the side it lies along. Above 0, at most 1.</param>
    public UntreatedHeartwoodLimit(double areaShare, double throughShare, double sideShare)
    {
        AreaShare = Require.Share(areaShare, Ranges.CoveragePercent);
        ThroughShare = Require.Share(throughShare, Ranges.CoveragePercent);
        SideShare = Require.Share(sideShare, Ranges.CoveragePercent);
    }

    /// <summary>Share of the section's area that untreated heartwood must stay under, 0 to 1.</summary>
    public double AreaShare { get; }

    /// <summary>Share of the way from face to face that untreated heartwood may extend, 0 to 1.</summary>
    public double ThroughShare { get; }

    /// <summary>Share of the side that untreated heartwood may take up, 0 to 1.</summary>
    public double SideShare { get; }
}

/// <summary>Every part must be met.</summary>
/// <param name="Parts">Two or more demands.</param>
public sealed record AllOf(IReadOnlyList<DepthRule> Parts) : DepthRule
{
    /// <inheritdoc/>
    public bool Equals(AllOf? other) => other is not null && Parts.SequenceEqual(other.Parts);

    /// <inheritdoc/>
    public override int GetHashCode() => Parts.Aggregate(17, HashCode.Combine);
}

/// <summary>One part is enough.</summary>
/// <param name="Parts">Two or more demands.</param>
public sealed record AnyOf(IReadOnlyList<DepthRule> Parts) : DepthRule
{
    /// <inheritdoc/>
    public bool Equals(AnyOf? other) => other is not null && Parts.SequenceEqual(other.Parts);

    /// <inheritdoc/>
    public override int GetHashCode() => Parts.Aggregate(19, HashCode.Combine);
}

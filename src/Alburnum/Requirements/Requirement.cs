namespace Alburnum.Requirements;

/// <summary>What a code of practice demands of one component.</summary>
/// <param name="PenetrationName">The rulebook's own name of the demand, for instance "NP3".</param>
/// <param name="Penetration">How deep the preservative must be found.</param>
/// <param name="Zone">Where retention is assayed; null where the rulebook does not say.</param>
/// <param name="Retention">How much preservative the zone must hold; null where the rulebook does not say.</param>
/// <param name="MoistureMaxPercent">Greatest moisture content before treatment, %; null where the rulebook does not say.</param>
/// <param name="Conditions">Conditions and advice that go with the demand.</param>
public sealed record Requirement(
    string PenetrationName,
    DepthRule Penetration,
    AnalyticalZone? Zone,
    RetentionRule? Retention,
    double? MoistureMaxPercent,
    IReadOnlyList<RequirementCondition> Conditions
)
{
    /// <summary>True where the code recommends this and does not require it.</summary>
    public bool IsRecommended { get; init; }

    /// <summary>Retention as a number: fixed by the code, or the factor times the critical value given; null where neither is known.</summary>
    public PreservativeAmount? RequiredRetention { get; init; }

    /// <summary>Why the rulebook does not say how much preservative the zone must hold; null where it does.</summary>
    public NotCoveredReason? RetentionOpen { get; init; }
}

/// <summary>The part of the section that is cut out and assayed.</summary>
/// <param name="DepthMm">Depth at which the zone ends, mm below the lateral faces; null for the whole sapwood.</param>
/// <param name="Name">The zone as the rulebook names it, for instance "all the sapwood".</param>
public sealed record AnalyticalZone(double? DepthMm, string Name)
{
    /// <summary>How deep it reaches into heartwood that lies at a face besides, mm; null where it does not.</summary>
    public double? HeartwoodMm { get; init; }

    /// <summary>Depth at which the zone begins, mm below the lateral faces; 0 where it begins at the surface.</summary>
    public double FromMm { get; init; }

    /// <summary>How thick the zone is, mm; null for the whole sapwood.</summary>
    public double? ThicknessMm => DepthMm - FromMm;

    /// <summary>True where it neither begins nor ends deeper than another. All the sapwood is taken for deeper than any fixed depth.</summary>
    internal bool IsWithin(AnalyticalZone deep) =>
        FromMm <= deep.FromMm && (DepthMm ?? double.PositiveInfinity) <= (deep.DepthMm ?? double.PositiveInfinity);

    /// <summary>Where it lies, whatever its name. A zone whose depth follows the sapwood is known by its name alone.</summary>
    internal (double, double?, string?) Place => (FromMm, DepthMm, DepthMm is null ? Name : null);
}

/// <summary>Retention as a multiple of the preservative's own critical value for the use class.</summary>
/// <param name="Factor">Multiple of the critical value. Above 0.</param>
public sealed record RetentionRule(double Factor);

namespace Alburnum.Requirements;

/// <summary>What a row of a rulebook speaks about. At most one row of a subject governs, but for advice.</summary>
public enum Subject
{
    /// <summary>The use class of a component.</summary>
    UseClass,

    /// <summary>The usual desired service life of a component.</summary>
    Life,

    /// <summary>The depth of penetration.</summary>
    Penetration,

    /// <summary>The retention.</summary>
    Retention,

    /// <summary>The moisture content before treatment.</summary>
    Moisture,

    /// <summary>The AQL that the penetration of a lot is accepted by.</summary>
    Acceptance,

    /// <summary>Conditions and advice; every row that holds is given.</summary>
    Advice,
}

/// <summary>What a rulebook row demands where its conditions hold.</summary>
public abstract record Demand
{
    private protected Demand() { }
}

/// <summary>The component belongs in this use class.</summary>
/// <param name="Label">The code's own label, for instance "3c".</param>
/// <param name="Classes">Use class; two where the code does not divide class 3 as EN 335 does.</param>
/// <param name="IsCoated">Whether the label speaks of coated timber; null where it does not say.</param>
public sealed record UseClassDemand(string Label, IReadOnlyList<UseClass> Classes, bool? IsCoated) : Demand
{
    /// <inheritdoc/>
    public bool Equals(UseClassDemand? other) =>
        other is not null && Label == other.Label && IsCoated == other.IsCoated && Classes.SequenceEqual(other.Classes);

    /// <inheritdoc/>
    public override int GetHashCode() => Label.GetHashCode(StringComparison.Ordinal);
}

/// <summary>The usual desired service life.</summary>
/// <param name="Life">Years.</param>
public sealed record LifeDemand(DesiredServiceLife Life) : Demand;

/// <summary>A depth of penetration.</summary>
/// <param name="Name">The code's own name of the demand, for instance "NP3".</param>
/// <param name="Depth">How deep.</param>
/// <param name="Zone">Analytical zone; null where the rulebook does not say.</param>
/// <param name="DefinedBy">Source of a named class that the row refers to; null where the row itself spells the depth out.</param>
public sealed record PenetrationDemand(string Name, DepthRule Depth, Fact<AnalyticalZone>? Zone, Provenance? DefinedBy)
    : Demand
{
    /// <summary>True where the code recommends it and does not require it.</summary>
    public bool IsRecommended { get; init; }
}

/// <summary>The code does not allow it.</summary>
/// <param name="Reason">Why, one sentence.</param>
public sealed record Forbidden(string Reason) : Demand;

/// <summary>The code asks for no preservative.</summary>
/// <param name="Reason">Why, one sentence.</param>
public sealed record NoTreatment(string Reason) : Demand;

/// <summary>The code has a demand here, but it is not known to the rulebook.</summary>
/// <param name="Reason">What is known, one sentence.</param>
public sealed record UnknownCell(string Reason) : Demand;

/// <summary>The timber is outside what the code, or its class, is written for.</summary>
/// <param name="Covers">What it does cover, one sentence.</param>
public sealed record OutsideScope(string Covers) : Demand;

/// <summary>A multiple of the preservative's own critical value.</summary>
/// <param name="Factor">Above 0.</param>
public sealed record RetentionFactor(double Factor) : Demand;

/// <summary>A fixed retention for one preservative.</summary>
/// <param name="Amount">The amount in the analytical zone.</param>
public sealed record FixedRetention(PreservativeAmount Amount) : Demand;

/// <summary>Greatest moisture content before treatment.</summary>
/// <param name="MaxPercent">% of the oven-dry mass.</param>
public sealed record MoistureLimit(double MaxPercent) : Demand;

/// <summary>The share of pieces short of the depth that the code still finds acceptable.</summary>
/// <param name="AqlPercent">AQL, per cent. Above 0.</param>
public sealed record AcceptableQuality(double AqlPercent) : Demand;

/// <summary>A condition or piece of advice.</summary>
/// <param name="Sentence">One sentence.</param>
public sealed record Advice(string Sentence) : Demand;

namespace Alburnum.Requirements;

/// <summary>Something that goes with a demand and that whoever meets it must know.</summary>
public abstract record RequirementCondition
{
    private protected RequirementCondition() { }
}

/// <summary>A row of the rulebook adds a condition or advice.</summary>
/// <param name="Row">The row.</param>
public sealed record RowAdvises(Row Row) : RequirementCondition;

/// <summary>The timber is too wet to be treated.</summary>
/// <param name="MoisturePercent">Its moisture content, % of the oven-dry mass.</param>
/// <param name="MaxPercent">Greatest moisture content allowed, %.</param>
public sealed record TooWet(double MoisturePercent, double MaxPercent) : RequirementCondition;

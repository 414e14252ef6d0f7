namespace Alburnum.Assaying;

/// <summary>What a laboratory states a content in.</summary>
public enum ContentUnit
{
    /// <summary>Milligrams in a kilogram of oven-dry wood.</summary>
    MgPerKg,

    /// <summary>Per cent of the oven-dry mass of wood.</summary>
    PercentByMass,

    /// <summary>Kilograms in a cubic metre of the zone.</summary>
    KgPerM3,

    /// <summary>Grams under a square metre of face.</summary>
    GPerM2,
}

/// <summary>One figure on a laboratory's paper.</summary>
/// <param name="Measured">The substance that the figure is of.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Content">The content with its standard uncertainty, in that unit; a detection limit, without one, where nothing was found.</param>
/// <param name="IsBelowDetection">Whether nothing was found down to that limit.</param>
public sealed record ReportedContent(Compound Measured, ContentUnit Unit, Estimate Content, bool IsBelowDetection)
{
    /// <summary>Degrees of freedom of its standard uncertainty, 1 or more; infinite where the laboratory states it.</summary>
    public double DegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Whether anything says how uncertain it is; false: the standard uncertainty is written 0 and means nothing.</summary>
    public bool IsUncertaintyKnown { get; init; } = true;
}

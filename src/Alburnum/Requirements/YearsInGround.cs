namespace Alburnum.Requirements;

/// <summary>Years that untreated heartwood of one durability class lasted in the ground in trials.</summary>
/// <param name="DurabilityClass">Durability class, 1 to 5.</param>
/// <param name="FromYears">Least years; null where only the most is known.</param>
/// <param name="ToYears">Most years; null where it is open.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record YearsInGround(int DurabilityClass, int? FromYears, int? ToYears, Provenance Provenance)
{
    /// <summary>Whether a service life is reached: yes up to the least years, no above the most, otherwise not known.</summary>
    /// <param name="life">The life asked for.</param>
    public bool? Reach(DesiredServiceLife life) =>
        life.Years <= FromYears ? true
        : life.Years > ToYears ? false
        : null;
}

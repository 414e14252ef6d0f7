namespace Alburnum.Penetration;

/// <summary>Bounds on the probability that one demand is met.</summary>
/// <param name="Probability">The bounds.</param>
/// <param name="Arises">False where the piece has nothing of the zone that the demand speaks of.</param>
/// <param name="EvidenceMissing">True where the bounds lie apart because something was not stated or not read.</param>
/// <param name="Reasons">Why.</param>
internal sealed record DemandChance(
    ProbabilityRange Probability,
    bool Arises,
    bool EvidenceMissing,
    IReadOnlyList<Reason> Reasons
)
{
    /// <summary>How far the one depth that decides lies above what is required, mm; null where it does not turn on one depth.</summary>
    public Estimate? MarginMm { get; init; }

    /// <summary>Anything may be true: the evidence says nothing.</summary>
    public static DemandChance Open(params IReadOnlyList<Reason> reasons) =>
        new(new(0, 1), Arises: true, EvidenceMissing: true, reasons);

    /// <summary>Every part that arises must be met.</summary>
    /// <remarks>
    /// The parts share one reading, so their errors lean the same way: the joint probability lies between the product
    /// (independent errors) and the least of the parts (one common error).
    /// </remarks>
    public static DemandChance All(IReadOnlyList<DemandChance> parts) =>
        Join(
            parts,
            arising =>
                ProbabilityRange.Between(
                    arising.Aggregate(1.0, (p, part) => p * part.Probability.Low),
                    arising.Min(part => part.Probability.High)
                ),
            arising => arising.MinBy(part => part.Probability.Low)!
        );

    /// <summary>One part that arises is enough.</summary>
    /// <remarks>Between the greatest of the parts (one common error) and one less the product of the misses.</remarks>
    public static DemandChance Any(IReadOnlyList<DemandChance> parts) =>
        Join(
            parts,
            arising =>
                ProbabilityRange.Between(
                    arising.Max(part => part.Probability.Low),
                    1 - arising.Aggregate(1.0, (p, part) => p * (1 - part.Probability.High))
                ),
            arising => arising.MaxBy(part => part.Probability.Low)!
        );

    private static DemandChance Join(
        IReadOnlyList<DemandChance> parts,
        Func<IReadOnlyList<DemandChance>, ProbabilityRange> bounds,
        Func<IReadOnlyList<DemandChance>, DemandChance> deciding
    )
    {
        var arising = parts.Where(part => part.Arises).ToList();
        Reason[] reasons = [.. parts.SelectMany(part => part.Reasons)];
        if (arising.Count == 0)
            return Open(reasons) with { Arises = false };
        return new(bounds(arising), Arises: true, arising.Any(part => part.EvidenceMissing), reasons)
        {
            MarginMm = deciding(arising).MarginMm,
        };
    }
}

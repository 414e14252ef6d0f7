namespace Alburnum.Penetration;

/// <summary>Bounds on the probability that one demand is met.</summary>
/// <param name="Low">Least probability that the evidence allows.</param>
/// <param name="High">Greatest probability that the evidence allows.</param>
/// <param name="Arises">False where the piece has nothing of the zone that the demand speaks of.</param>
/// <param name="EvidenceMissing">True where the bounds lie apart because something was not stated or not read.</param>
/// <param name="Reasons">Why, one sentence each.</param>
internal sealed record DemandChance(
    double Low,
    double High,
    bool Arises,
    bool EvidenceMissing,
    IReadOnlyList<string> Reasons
)
{
    /// <summary>How far the one depth that decides lies above what is asked for, mm; null where it does not turn on one depth.</summary>
    public Estimate? MarginMm { get; init; }

    /// <summary>Every part that arises must be met.</summary>
    /// <remarks>
    /// The parts share one reading, so their errors lean the same way: the joint probability lies between the product
    /// (independent errors) and the least of the parts (one common error).
    /// </remarks>
    public static DemandChance All(IReadOnlyList<DemandChance> parts) =>
        Join(
            parts,
            arising => (arising.Aggregate(1.0, (p, part) => p * part.Low), arising.Min(part => part.High)),
            arising => arising.MinBy(part => part.Low)!
        );

    /// <summary>One part that arises is enough.</summary>
    /// <remarks>Between the greatest of the parts (one common error) and one less the product of the misses.</remarks>
    public static DemandChance Any(IReadOnlyList<DemandChance> parts) =>
        Join(
            parts,
            arising => (arising.Max(part => part.Low), 1 - arising.Aggregate(1.0, (p, part) => p * (1 - part.High))),
            arising => arising.MaxBy(part => part.Low)!
        );

    private static DemandChance Join(
        IReadOnlyList<DemandChance> parts,
        Func<IReadOnlyList<DemandChance>, (double Low, double High)> bounds,
        Func<IReadOnlyList<DemandChance>, DemandChance> deciding
    )
    {
        var arising = parts.Where(part => part.Arises).ToList();
        string[] reasons = [.. parts.SelectMany(part => part.Reasons)];
        if (arising.Count == 0)
            return new(0, 1, Arises: false, EvidenceMissing: true, reasons);
        var (low, high) = bounds(arising);
        return new(low, high, Arises: true, arising.Any(part => part.EvidenceMissing), reasons)
        {
            MarginMm = deciding(arising).MarginMm,
        };
    }
}

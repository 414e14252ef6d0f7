namespace Alburnum.Requirements;

/// <summary>Whether untreated heartwood lasts as long as is asked.</summary>
/// <param name="Untreated">The verdict on the timber in its use class, against decay.</param>
/// <param name="Durability">Years that heartwood lasted in the ground.</param>
/// <param name="Asked">The life asked for; null where none is.</param>
/// <param name="Usual">The life that the code takes as usual; null where it is not known.</param>
/// <param name="IsInGround">Whether it stands in the ground, so that a trial there speaks against it too.</param>
internal sealed record HeartwoodLife(
    UntreatedTimber Untreated,
    NaturalDurability Durability,
    DesiredServiceLife? Asked,
    DesiredServiceLife? Usual,
    bool IsInGround
)
{
    /// <summary>Of the least durable heartwood of the timber.</summary>
    public ReachVerdict AtWorst => Of(Untreated.Heartwood, Durability.InGround(Untreated.Species));

    /// <summary>Of the timber: not known where its durability is not, where its best lasts and its worst does not, and in salt water, where marine borers decide.</summary>
    public ReachVerdict Reach =>
        Untreated.Heartwood is null ? ReachVerdict.NotKnown
        : AtWorst != ReachVerdict.Unlikely ? AtWorst
        : AtBest != ReachVerdict.Unlikely ? ReachVerdict.NotKnown
        : ReachVerdict.Unlikely;

    private ReachVerdict AtBest => Of(Untreated.HeartwoodAtBest, Durability.InGroundAtBest(Untreated.Species));

    private ReachVerdict Of(DurabilityVerdict? verdict, YearsInGround? trial) =>
        verdict switch
        {
            not (DurabilityVerdict.Enough or DurabilityVerdict.NormallyEnough) => ReachVerdict.Unlikely,
            _ when IsInGround && Asked is { } asked && trial is { } years => years.Reach(asked) switch
            {
                true => ReachVerdict.Likely,
                false => ReachVerdict.Unlikely,
                null => ReachVerdict.NotKnown,
            },
            DurabilityVerdict.Enough when IsWithinWhatIsKnown(trial) => ReachVerdict.Likely,
            _ => ReachVerdict.NotKnown,
        };

    // The table promises no years: it speaks of what the code takes as usual. What lasts in the ground lasts above it too.
    private bool IsWithinWhatIsKnown(YearsInGround? trial) =>
        Asked is not { } asked || asked.Years <= Usual?.Years || trial?.Reach(asked) == true;
}

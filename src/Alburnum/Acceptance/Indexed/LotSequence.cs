namespace Alburnum.Acceptance.Indexed;

/// <summary>One lot of a plant as it was sampled.</summary>
/// <param name="Number">Number of the lot.</param>
/// <param name="Pieces">Pieces in the lot.</param>
/// <param name="Cut">Pieces cut from it.</param>
/// <param name="Failures">Failures found; defects where the plan counts those.</param>
/// <param name="IsReductionAgreed">See <see cref="InspectedLot"/>.</param>
/// <param name="IsSteady">See <see cref="InspectedLot"/>.</param>
/// <param name="BeginsAgain">True where acceptance had stopped, its cause has been put right, and inspection begins again with this lot.</param>
public sealed record SampledLot(
    string Number,
    int Pieces,
    int Cut,
    int Failures,
    bool IsReductionAgreed = false,
    bool IsSteady = true,
    bool BeginsAgain = false
);

/// <summary>What became of one lot, and where the plant stands after it.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Plan">The plan that was in force for it.</param>
/// <param name="Outcome">Accepted or not.</param>
/// <param name="After">Where the plant stands after it.</param>
public sealed record LotStep(SampledLot Lot, IndexedPlan Plan, LotOutcome Outcome, SwitchingState After);

/// <summary>Follows a plant's lots through normal, tightened and reduced inspection.</summary>
/// <param name="Tables">The standard's tables.</param>
/// <param name="Rules">Its switching rules.</param>
/// <param name="Level">Inspection level throughout.</param>
/// <param name="AqlPercent">AQL throughout; one of the tables'.</param>
public sealed record LotSequence(AttributeTables Tables, SwitchingRules Rules, InspectionLevel Level, double AqlPercent)
{
    /// <summary>The plan in force for a lot.</summary>
    public IndexedPlan Plan(SwitchingState before, int pieces) =>
        Tables.Find(pieces, Level, AqlPercent, before.Severity);

    /// <summary>What does not fit about a lot; null where it can be judged.</summary>
    /// <param name="before">Where the plant stood.</param>
    /// <param name="lot">The lot.</param>
    public LotMisfit? Misfit(SwitchingState before, SampledLot lot)
    {
        if (lot.Pieces < Tables.LotSizes[0].From)
            return new LotTooSmall(lot.Pieces, Tables.LotSizes[0].From);
        if (before.IsStopped && !lot.BeginsAgain)
            return new AcceptanceStopped();
        if (!before.IsStopped && lot.BeginsAgain)
            return new AcceptanceNotStopped();
        var plan = Plan(Entering(before, lot), lot.Pieces);
        if (lot.Cut != plan.Plan.SampleSize)
            return new OtherSampleCut(lot.Cut, plan);
        return !plan.CountsDefects && lot.Failures > lot.Cut ? new MoreFailuresThanCut(lot.Failures, lot.Cut) : null;
    }

    /// <summary>What becomes of one more lot.</summary>
    /// <exception cref="ArgumentException">The lot does not fit; see <see cref="Misfit"/>.</exception>
    public LotStep After(SwitchingState before, SampledLot lot)
    {
        if (Misfit(before, lot) is { } misfit)
            throw new ArgumentException($"The lot does not fit: {misfit}.", nameof(lot));
        var standing = Entering(before, lot);
        var plan = Plan(standing, lot.Pieces);
        var outcome = plan.Outcome(lot.Failures);
        return new(
            lot,
            plan,
            outcome,
            Switching.After(standing, new(outcome, lot.IsReductionAgreed, lot.IsSteady), Rules)
        );
    }

    private static SwitchingState Entering(SwitchingState before, SampledLot lot) =>
        lot.BeginsAgain ? Switching.BeginAgain : before;
}

namespace Alburnum.Acceptance.Indexed;

/// <summary>The counts by which a plant moves between normal, tightened and reduced inspection.</summary>
/// <param name="RejectedToTighten">Lots rejected among the last <paramref name="WatchedToTighten"/> that tighten inspection.</param>
/// <param name="WatchedToTighten">Consecutive lots watched for that.</param>
/// <param name="AcceptedToRelax">Consecutive lots accepted that end tightened inspection.</param>
/// <param name="AcceptedToReduce">Consecutive lots accepted on normal inspection that allow reduced inspection.</param>
/// <param name="TightenedToStop">Consecutive lots on tightened inspection after which acceptance stops; null where not counted.</param>
/// <param name="RejectedToStop">Lots rejected on tightened inspection after which acceptance stops; null where not counted.</param>
/// <param name="Source">Where the counts come from.</param>
public sealed record SwitchingRules(
    int RejectedToTighten,
    int WatchedToTighten,
    int AcceptedToRelax,
    int AcceptedToReduce,
    int? TightenedToStop,
    int? RejectedToStop,
    Provenance Source
);

/// <summary>One lot as the switching rules see it.</summary>
/// <param name="Outcome">What became of the lot.</param>
/// <param name="IsReductionAgreed">
/// True where the failures of the last lots stay within the standard's limit number, production is steady, and whoever is
/// responsible agrees to reduced inspection. The table of limit numbers was not at hand, so this is the user's statement.
/// </param>
/// <param name="IsSteady">False where production was interrupted or irregular: ends reduced inspection.</param>
public sealed record InspectedLot(LotOutcome Outcome, bool IsReductionAgreed = false, bool IsSteady = true);

/// <summary>Where a plant stands.</summary>
/// <param name="Severity">Inspection of the next lot.</param>
/// <param name="IsStopped">True where acceptance sampling is to stop until the cause has been put right.</param>
/// <param name="Recent">Acceptances (true) and rejections since the last switch, oldest first, as many as matter.</param>
/// <param name="LotsAtSeverity">Lots inspected since the last switch.</param>
/// <param name="RejectedAtSeverity">Lots rejected since the last switch.</param>
/// <param name="Reason">Why inspection was switched or stopped with the last lot; null where it was not.</param>
public sealed record SwitchingState(
    Severity Severity,
    bool IsStopped,
    IReadOnlyList<bool> Recent,
    int LotsAtSeverity,
    int RejectedAtSeverity,
    SwitchingReason? Reason
)
{
    /// <summary>Every plant begins at normal inspection.</summary>
    public static SwitchingState Beginning { get; } = new(Severity.Normal, false, [], 0, 0, null);

    /// <summary>Inspection that comes next.</summary>
    public NextInspection Next =>
        this switch
        {
            { IsStopped: true } => NextInspection.Stopped,
            { Severity: Severity.Normal } => NextInspection.Normal,
            { Severity: Severity.Tightened } => NextInspection.Tightened,
            { Severity: Severity.Reduced } => NextInspection.Reduced,
            _ => throw new InvalidOperationException($"{Severity} is not a severity."),
        };

    /// <inheritdoc/>
    public bool Equals(SwitchingState? other) =>
        other is not null
        && (Severity, IsStopped, LotsAtSeverity, RejectedAtSeverity, Reason)
            == (other.Severity, other.IsStopped, other.LotsAtSeverity, other.RejectedAtSeverity, other.Reason)
        && Recent.SequenceEqual(other.Recent);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        HashCode.Combine(Severity, IsStopped, LotsAtSeverity, RejectedAtSeverity, Reason);
}

/// <summary>Moves a plant between severities, lot by lot.</summary>
public static class Switching
{
    /// <summary>Where the plant stands after one more lot.</summary>
    /// <exception cref="InvalidOperationException">Acceptance has stopped; it begins again at tightened inspection by decision, not by a lot.</exception>
    public static SwitchingState After(SwitchingState before, InspectedLot lot, SwitchingRules rules)
    {
        if (before.IsStopped)
            throw new InvalidOperationException(
                "Acceptance has stopped: put the cause right, then start again under tightened inspection."
            );
        var accepted = lot.Outcome != LotOutcome.Rejected;
        var kept = Math.Max(rules.WatchedToTighten, Math.Max(rules.AcceptedToRelax, rules.AcceptedToReduce));
        var state = before with
        {
            Recent = [.. before.Recent.Append(accepted).TakeLast(kept)],
            LotsAtSeverity = before.LotsAtSeverity + 1,
            RejectedAtSeverity = before.RejectedAtSeverity + (accepted ? 0 : 1),
            Reason = null,
        };
        return state.Severity switch
        {
            Severity.Normal => AfterNormal(state, lot, rules),
            Severity.Tightened => AfterTightened(state, rules),
            Severity.Reduced => AfterReduced(state, lot),
            _ => throw new ArgumentOutOfRangeException(nameof(before), before.Severity, "Not a severity."),
        };
    }

    /// <summary>Begins again at tightened inspection after a stop.</summary>
    public static SwitchingState BeginAgain { get; } = SwitchingState.Beginning with { Severity = Severity.Tightened };

    private static SwitchingState AfterNormal(SwitchingState state, InspectedLot lot, SwitchingRules rules)
    {
        var watched = state.Recent.TakeLast(rules.WatchedToTighten).ToList();
        var rejected = watched.Count(accepted => !accepted);
        if (rejected >= rules.RejectedToTighten)
            return To(Severity.Tightened, new RejectedAmongLast(rejected, watched.Count));
        return IsRun(state, rules.AcceptedToReduce) && lot is { IsReductionAgreed: true, IsSteady: true }
            ? To(Severity.Reduced, new ReductionAgreed(rules.AcceptedToReduce))
            : state;
    }

    private static SwitchingState AfterTightened(SwitchingState state, SwitchingRules rules)
    {
        if (IsRun(state, rules.AcceptedToRelax))
            return To(Severity.Normal, new AcceptedInARow(rules.AcceptedToRelax));
        if (state.RejectedAtSeverity >= rules.RejectedToStop)
            return Stop(state, new RejectedOnTightened(state.RejectedAtSeverity));
        return state.LotsAtSeverity >= rules.TightenedToStop
            ? Stop(state, new TightenedTooLong(state.LotsAtSeverity))
            : state;
    }

    private static SwitchingState AfterReduced(SwitchingState state, InspectedLot lot) =>
        lot switch
        {
            { Outcome: LotOutcome.Rejected } => To(Severity.Normal, new RejectedOnReduced()),
            { Outcome: LotOutcome.AcceptedInGap } => To(Severity.Normal, new CountInGap()),
            { IsSteady: false } => To(Severity.Normal, new ProductionIrregular()),
            _ => state,
        };

    private static bool IsRun(SwitchingState state, int length) =>
        state.Recent.Count >= length && state.Recent.TakeLast(length).All(accepted => accepted);

    private static SwitchingState To(Severity severity, SwitchingReason reason) =>
        SwitchingState.Beginning with
        {
            Severity = severity,
            Reason = reason,
        };

    private static SwitchingState Stop(SwitchingState state, SwitchingReason reason) =>
        state with
        {
            IsStopped = true,
            Reason = reason,
        };
}

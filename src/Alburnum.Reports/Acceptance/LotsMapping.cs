using Alburnum.Acceptance.Indexed;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a plant's lots down.</summary>
public static class LotsMapping
{
    /// <summary>The lots as a document.</summary>
    public static LotsDocument Of(PlantLots lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        var next = lots.Standing.IsStopped
            ? "Acceptance has stopped: mend the cause, then begin again at tightened inspection (begins_again)."
            : $"The next lot is under {lots.Standing.Severity.InWords()} inspection.";
        return new()
        {
            Standard = lots.Sequence.Tables.Source.Document,
            SwitchingStanding = lots.Sequence.Rules.Source.Standing,
            Level = lots.Sequence.Level,
            Aql = lots.Sequence.AqlPercent,
            Lots = [.. lots.Steps.Select(Entry)],
            Next = Next(lots.Standing),
            InWords = $"{lots.Accepted} of {lots.Steps.Count} lots accepted. {next}",
        };
    }

    private static LotEntry Entry(LotStep step) =>
        new()
        {
            Lot = step.Lot.Number,
            Pieces = step.Lot.Pieces,
            Severity = step.Plan.Severity,
            Letter = step.Plan.UsedLetter,
            Cut = step.Lot.Cut,
            MayFail = step.Plan.Plan.AcceptanceNumber,
            Failures = step.Lot.Failures,
            Outcome = step.Outcome,
            Next = Next(step.After),
            Because = step.After.Reason is { } reason ? ReasonWords.English.Say(reason) : null,
        };

    private static NextInspection Next(SwitchingState state) =>
        state switch
        {
            { IsStopped: true } => NextInspection.Stopped,
            { Severity: Severity.Normal } => NextInspection.Normal,
            { Severity: Severity.Tightened } => NextInspection.Tightened,
            { Severity: Severity.Reduced } => NextInspection.Reduced,
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a severity."),
        };
}

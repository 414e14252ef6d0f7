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
        return new()
        {
            Standard = lots.Sequence.Tables.Source.Document,
            SwitchingStanding = lots.Sequence.Rules.Source.Standing,
            Level = lots.Sequence.Level,
            Aql = lots.Sequence.AqlPercent,
            Lots = [.. lots.Steps.Select(Entry)],
            Next = lots.Standing.Next,
            InWords = LotWords.Current.After(lots.Accepted, lots.Steps.Count, lots.Standing.Next),
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
            Next = step.After.Next,
            Because = step.After.Reason is { } reason ? ReasonWords.Current.Say(reason) : null,
        };
}

using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Tables;
using Alburnum.Reports.Words;

namespace Alburnum.Cli.Acceptance;

/// <summary>Makes the sheet of a plant's lots.</summary>
internal static class LotsSheet
{
    public const string Stopped = "stopped";

    public static LotsDocument Of(TableText text, LotSequence sequence)
    {
        var steps = LotTable.Follow(text, sequence);
        var standing = steps[^1].After;
        var accepted = steps.Count(step => step.Outcome != LotOutcome.Rejected);
        var next = standing.IsStopped
            ? "Acceptance has stopped: mend the cause, then begin again at tightened inspection (begins_again)."
            : $"The next lot is under {standing.Severity.InWords()} inspection.";
        return new(
            sequence.Tables.Source.Document,
            sequence.Rules.Source.Standing.InWords(),
            sequence.Level.InWords(),
            sequence.AqlPercent,
            [.. steps.Select(Entry)],
            Standing(standing),
            $"{accepted} of {steps.Count} lots accepted. {next}"
        );
    }

    private static LotEntry Entry(LotStep step) =>
        new(
            step.Lot.Number,
            step.Lot.Pieces,
            step.Plan.Severity.InWords(),
            step.Plan.UsedLetter,
            step.Lot.Cut,
            step.Plan.Plan.AcceptanceNumber,
            step.Lot.Failures,
            step.Outcome switch
            {
                LotOutcome.Accepted => "accepted",
                LotOutcome.AcceptedInGap => "accepted in the gap",
                LotOutcome.Rejected => "not accepted",
                _ => throw new ArgumentOutOfRangeException(nameof(step), step.Outcome, "Not an outcome."),
            },
            Standing(step.After),
            step.After.Reason is { } reason ? ReasonWords.English.Say(reason) : null
        );

    private static string Standing(SwitchingState state) => state.IsStopped ? Stopped : state.Severity.InWords();
}

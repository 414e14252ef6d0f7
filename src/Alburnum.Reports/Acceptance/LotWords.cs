using Alburnum.Acceptance.Indexed;

namespace Alburnum.Reports.Acceptance;

/// <summary>How lots and their inspection are written for people.</summary>
public static class LotWords
{
    /// <summary>"accepted", "accepted in the gap" or "not accepted".</summary>
    public static string InWords(this LotOutcome outcome) =>
        outcome switch
        {
            LotOutcome.Accepted => "accepted",
            LotOutcome.AcceptedInGap => "accepted in the gap",
            LotOutcome.Rejected => "not accepted",
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not an outcome."),
        };

    /// <summary>"normal", "tightened", "reduced" or "stopped".</summary>
    public static string InWords(this NextInspection next) =>
        next switch
        {
            NextInspection.Normal => "normal",
            NextInspection.Tightened => "tightened",
            NextInspection.Reduced => "reduced",
            NextInspection.Stopped => "stopped",
            _ => throw new ArgumentOutOfRangeException(nameof(next), next, "Not an inspection."),
        };
}

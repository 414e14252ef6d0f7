using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;

namespace Alburnum.Reports.Words;

/// <summary>Lots and their inspection, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class LotWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static LotWords Current => new(Wording.Current);

    /// <summary>"accepted", "accepted in the gap" or "not accepted".</summary>
    public string Say(LotOutcome outcome) =>
        outcome switch
        {
            LotOutcome.Accepted => wording.Say("lots.accepted"),
            LotOutcome.AcceptedInGap => wording.Say("lots.accepted-in-gap"),
            LotOutcome.Rejected => wording.Say("lots.not-accepted"),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "Not an outcome."),
        };

    /// <summary>"normal", "tightened", "reduced" or "stopped".</summary>
    public string Say(NextInspection next) =>
        next switch
        {
            NextInspection.Normal => wording.Say("acceptance.normal"),
            NextInspection.Tightened => wording.Say("acceptance.tightened"),
            NextInspection.Reduced => wording.Say("acceptance.reduced"),
            NextInspection.Stopped => wording.Say("lots.stopped"),
            _ => throw new ArgumentOutOfRangeException(nameof(next), next, "Not an inspection."),
        };

    /// <summary>By what the lots were inspected.</summary>
    /// <param name="standard">The standard.</param>
    /// <param name="level">Inspection level.</param>
    /// <param name="aqlPercent">AQL.</param>
    /// <param name="switching">How far the switching rules may be relied on.</param>
    public string InspectedBy(string standard, InspectionLevel level, double aqlPercent, Standing switching) =>
        wording.Say(
            "lots.inspected-by",
            ("standard", standard),
            ("level", level.Key()),
            ("aql", Figures.Digits(aqlPercent, 6)),
            ("standing", wording.Say(switching))
        );

    /// <summary>Where a plant stands after its lots.</summary>
    /// <param name="accepted">Lots accepted.</param>
    /// <param name="lots">Lots inspected.</param>
    /// <param name="next">Inspection of the next lot.</param>
    public string After(int accepted, int lots, NextInspection next) =>
        next == NextInspection.Stopped
            ? wording.Say("lots.standing-stopped", ("accepted", Figures.Whole(accepted)), ("lots", Figures.Whole(lots)))
            : wording.Say(
                "lots.standing",
                ("accepted", Figures.Whole(accepted)),
                ("lots", Figures.Whole(lots)),
                ("next", Say(next))
            );

    /// <summary>That only the latest lots are shown.</summary>
    /// <param name="shown">Lots shown.</param>
    /// <param name="lots">Lots inspected.</param>
    /// <param name="option">What shows them all, as the reader writes it.</param>
    public string Latest(int shown, int lots, string option) =>
        wording.Say("lots.latest", ("shown", Figures.Whole(shown)), ("lots", Figures.Whole(lots)), ("option", option));

    /// <summary>Why inspection was switched with a lot.</summary>
    /// <param name="lot">Number of the lot.</param>
    /// <param name="next">Inspection after it.</param>
    /// <param name="because">Why, as a clause.</param>
    public string Switched(string lot, NextInspection next, string because) =>
        wording.Say("lots.switched", ("lot", lot), ("next", Say(next)), ("because", because));
}

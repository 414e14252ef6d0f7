using Alburnum.Acceptance.Indexed;

namespace Alburnum.Reports.Words;

/// <summary>Why inspection is switched or stopped, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class SwitchingWords(Wording wording)
{
    /// <summary>The clause of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no words are known for.</exception>
    public string Say(SwitchingReason reason) =>
        reason switch
        {
            RejectedAmongLast rejected => wording.Say(
                "switching.rejected-among-last",
                ("rejected", Figures.Whole(rejected.Rejected)),
                ("watched", Figures.Whole(rejected.Watched))
            ),
            AcceptedInARow accepted => wording.Say("switching.accepted-in-a-row", Lots(accepted.Lots)),
            ReductionAgreed agreed => wording.Say("switching.reduction-agreed", Lots(agreed.Lots)),
            RejectedOnTightened rejected => wording.Say("switching.rejected-on-tightened", Lots(rejected.Lots)),
            TightenedTooLong tightened => wording.Say("switching.tightened-too-long", Lots(tightened.Lots)),
            RejectedOnReduced => wording.Say("switching.rejected-on-reduced"),
            CountInGap => wording.Say("switching.count-in-gap"),
            ProductionIrregular => wording.Say("switching.production-irregular"),
            _ => throw ReasonWords.Unknown(reason),
        };

    private static (string, string) Lots(int lots) => ("lots", Figures.Whole(lots));
}

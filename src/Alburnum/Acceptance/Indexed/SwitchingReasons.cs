using Alburnum.Penetration;

namespace Alburnum.Acceptance.Indexed;

/// <summary>Why inspection was switched or stopped.</summary>
public abstract record SwitchingReason : Reason
{
    private protected SwitchingReason() { }
}

/// <summary>Too many of the last lots were rejected: inspection is tightened.</summary>
/// <param name="Rejected">Lots rejected.</param>
/// <param name="Watched">Of so many last lots.</param>
public sealed record RejectedAmongLast(int Rejected, int Watched) : SwitchingReason;

/// <summary>A run of accepted lots ends tightened inspection.</summary>
/// <param name="Lots">Consecutive lots accepted.</param>
public sealed record AcceptedInARow(int Lots) : SwitchingReason;

/// <summary>A run of accepted lots, and an agreement, reduce inspection.</summary>
/// <param name="Lots">Consecutive lots accepted.</param>
public sealed record ReductionAgreed(int Lots) : SwitchingReason;

/// <summary>Too many lots were rejected on tightened inspection: acceptance stops.</summary>
/// <param name="Lots">Lots rejected.</param>
public sealed record RejectedOnTightened(int Lots) : SwitchingReason;

/// <summary>Tightened inspection has lasted too long: acceptance stops.</summary>
/// <param name="Lots">Consecutive lots on tightened inspection.</param>
public sealed record TightenedTooLong(int Lots) : SwitchingReason;

/// <summary>A lot was rejected on reduced inspection, which ends it.</summary>
public sealed record RejectedOnReduced : SwitchingReason;

/// <summary>A count between the acceptance and the rejection number ends reduced inspection.</summary>
public sealed record CountInGap : SwitchingReason;

/// <summary>Irregular production ends reduced inspection.</summary>
public sealed record ProductionIrregular : SwitchingReason;

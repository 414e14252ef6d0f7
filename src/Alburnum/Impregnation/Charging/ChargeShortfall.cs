namespace Alburnum.Impregnation.Charging;

/// <summary>Why a charge cannot be planned to what is asked.</summary>
public abstract record ChargeShortfall
{
    private protected ChargeShortfall() { }
}

/// <summary>Too few cores reach the depth, even with the longest pressure period tried.</summary>
public sealed record DepthTooSeldom : ChargeShortfall;

/// <summary>The zone takes so little that its solution would have to be stronger than the label, or any solution, allows.</summary>
/// <param name="NeededPercent">Strength needed, % of product by mass; infinite where the zone takes nothing.</param>
/// <param name="MostPercent">Greatest strength.</param>
/// <param name="IsOfLabel">True where the label sets it, false where no solution holds more.</param>
public sealed record StrengthTooHigh(double NeededPercent, double MostPercent, bool IsOfLabel) : ChargeShortfall;

/// <summary>What the zone takes is known too badly to choose a strength by.</summary>
/// <param name="ZoneLPerM3">Solution expected in it, L to the m³ of zone.</param>
public sealed record ZoneTooUncertain(Estimate ZoneLPerM3) : ChargeShortfall;

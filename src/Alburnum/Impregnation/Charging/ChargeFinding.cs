namespace Alburnum.Impregnation.Charging;

/// <summary>What the readings of a charge say of each other.</summary>
public abstract record ChargeFinding;

/// <summary>Tank and scales agree within their uncertainty.</summary>
public sealed record TankAndWeightAgree : ChargeFinding;

/// <summary>The tank lost more than the timber gained.</summary>
/// <param name="Litres">How much more, L. Above 0.</param>
public sealed record TankLostMore(double Litres) : ChargeFinding;

/// <summary>The timber gained more than the tank lost.</summary>
/// <param name="Litres">How much more, L. Above 0.</param>
public sealed record TimberGainedMore(double Litres) : ChargeFinding;

/// <summary>The timber was not weighed before and after: nothing checks the tank.</summary>
public sealed record NotWeighed : ChargeFinding;

/// <summary>More was kept than was in the timber at peak pressure.</summary>
public sealed record KeptMoreThanAtPeak : ChargeFinding;

/// <summary>The solution lost strength.</summary>
/// <param name="Percent">How much of it, %. Above 0.</param>
public sealed record SolutionLostStrength(double Percent) : ChargeFinding;

/// <summary>The solution gained strength.</summary>
/// <param name="Percent">How much of it, %. Above 0.</param>
public sealed record SolutionGainedStrength(double Percent) : ChargeFinding;

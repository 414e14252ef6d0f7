using Alburnum.Facts;

namespace Alburnum.Impregnation.Fixing;

/// <summary>The rate of fixation in the main zone, measured at one strength of the solution.</summary>
/// <param name="StrengthPercent">Strength, % by mass.</param>
/// <param name="PerHour">Pre-exponential factor, 1/h.</param>
/// <param name="KJPerMol">Activation energy, kJ/mol.</param>
public sealed record FixationRate(double StrengthPercent, double PerHour, double KJPerMol);

/// <summary>How fast a preservative fixes in wood that stays wet, by strength and temperature.</summary>
/// <remarks>
/// Two zones (Kazi and Cooper 2000): a first one that ends at the same share whatever the temperature, and a main one of the first order, k = A·e^(−E/RT).
/// Between the strengths that were measured the logarithm of k is drawn straight; outside them, and outside the temperatures, nothing is said.
/// </remarks>
public sealed record FixationLaw
{
    // kJ/(mol K).
    private const double GasConstant = 8.314462618e-3;
    private const double KelvinAtZero = 273.15;

    /// <summary>Key of the preservative.</summary>
    public required string Preservative { get; init; }

    /// <summary>Wood that it was measured in.</summary>
    public required string Wood { get; init; }

    /// <summary>What is counted as fixed.</summary>
    public required string Counts { get; init; }

    /// <summary>Share fixed at the end of the first zone, above 0, below 1.</summary>
    public required double FirstShare { get; init; }

    /// <summary>Hours that the first zone takes at <see cref="FirstCelsius"/>.</summary>
    public required double FirstHours { get; init; }

    /// <summary>Temperature of those hours, °C.</summary>
    public required double FirstCelsius { get; init; }

    /// <summary>Activation energy of the first zone, kJ/mol.</summary>
    public required double FirstKJPerMol { get; init; }

    /// <summary>Strength that the first zone was measured at, % by mass.</summary>
    public required double FirstStrengthPercent { get; init; }

    /// <summary>Rates of the main zone, their strengths rising. One or more.</summary>
    public required IReadOnlyList<FixationRate> Rates { get; init; }

    /// <summary>Temperatures that it was measured at, °C.</summary>
    public required NumberRange Celsius { get; init; }

    /// <summary>Who says so.</summary>
    public required Provenance Provenance { get; init; }

    /// <summary>Strengths that it speaks of, % by mass.</summary>
    public NumberRange StrengthPercent => NumberRange.Within(Rates[0].StrengthPercent, Rates[^1].StrengthPercent, "%");

    /// <summary>Hours that the first zone takes.</summary>
    /// <param name="celsius">Temperature of the wood, °C, within <see cref="Celsius"/>.</param>
    public double FirstZoneHours(double celsius) =>
        FirstHours
        * Math.Exp(
            FirstKJPerMol / GasConstant * (1 / Kelvin(Require.Within(celsius, Celsius)) - 1 / Kelvin(FirstCelsius))
        );

    /// <summary>Rate of the main zone, 1/h.</summary>
    /// <param name="strengthPercent">Strength of the solution, %, within <see cref="StrengthPercent"/>.</param>
    /// <param name="celsius">Temperature of the wood, °C, within <see cref="Celsius"/>.</param>
    public double RatePerHour(double strengthPercent, double celsius)
    {
        Require.Within(strengthPercent, StrengthPercent);
        Require.Within(celsius, Celsius);
        var upper = Rates.Index().First(rate => rate.Item.StrengthPercent >= strengthPercent).Index;
        var (low, high) = (Rates[Math.Max(0, upper - 1)], Rates[upper]);
        var between =
            high.StrengthPercent > low.StrengthPercent
                ? (strengthPercent - low.StrengthPercent) / (high.StrengthPercent - low.StrengthPercent)
                : 0;
        return Math.Exp((1 - between) * Math.Log(At(low, celsius)) + between * Math.Log(At(high, celsius)));
    }

    /// <summary>Share that has fixed; null while the first zone lasts, whose course is not known.</summary>
    /// <param name="strengthPercent">Strength of the solution, %, within <see cref="StrengthPercent"/>.</param>
    /// <param name="celsius">Temperature of the wood, °C, within <see cref="Celsius"/>.</param>
    /// <param name="hours">Hours since treatment at that temperature, 0 or more.</param>
    public double? ShareAfter(double strengthPercent, double celsius, double hours)
    {
        var main = Require.InRange(hours, 0, double.MaxValue, "h") - FirstZoneHours(celsius);
        return main < 0 ? null : 1 - (1 - FirstShare) * Math.Exp(-RatePerHour(strengthPercent, celsius) * main);
    }

    /// <summary>Hours until a share has fixed.</summary>
    /// <param name="strengthPercent">Strength of the solution, %, within <see cref="StrengthPercent"/>.</param>
    /// <param name="celsius">Temperature of the wood, °C, within <see cref="Celsius"/>.</param>
    /// <param name="share">The share, from <see cref="FirstShare"/> to below 1.</param>
    public double HoursTo(double strengthPercent, double celsius, double share) =>
        FirstZoneHours(celsius)
        + Math.Log((1 - FirstShare) / (1 - Require.InRange(share, FirstShare, 1 - 1e-9, "(share)")))
            / RatePerHour(strengthPercent, celsius);

    private static double At(FixationRate rate, double celsius) =>
        rate.PerHour * Math.Exp(-rate.KJPerMol / (GasConstant * Kelvin(celsius)));

    private static double Kelvin(double celsius) => celsius + KelvinAtZero;
}

namespace Alburnum.Impregnation.Diffusing;

/// <summary>Fixation of a chromium–copper–arsenic solution in red pine: how long the wood must be kept from the rain.</summary>
/// <remarks>
/// Kazi and Cooper, Wood and Fiber Science 32 (2000): a first zone that ends at 47 % of the chromium reduced, then first order
/// with k = A·exp(−Ea/RT). For a 1 % solution A = 2.7e13 1/h, Ea = 87.6 kJ/mol; first zone Ea = 37.8 kJ/mol, 4.5 h at 4 °C.
/// Other species differ; low humidity slows it. No such figures were found for copper–amine products.
/// </remarks>
public static class ChromiumFixation
{
    private const double GasConstant = 8.314;
    private const double AtZoneStart = 0.47;

    /// <summary>Rate of the main zone, 1/h.</summary>
    /// <param name="celsius">Temperature of the wood, °C. 0 to 100.</param>
    public static double RatePerHour(double celsius) => 2.7e13 * Math.Exp(-87_600 / (GasConstant * Kelvin(celsius)));

    /// <summary>Length of the first zone, h.</summary>
    /// <param name="celsius">Temperature of the wood, °C. 0 to 100.</param>
    public static double FirstZoneHours(double celsius) =>
        4.5 * Math.Exp(37_800 / GasConstant * (1 / Kelvin(celsius) - 1 / Kelvin(4)));

    /// <summary>Hours of the main zone until a share of the chromium is reduced.</summary>
    /// <param name="celsius">Temperature of the wood, °C. 0 to 100.</param>
    /// <param name="share">0.47 to below 1.</param>
    public static double MainZoneHours(double celsius, double share)
    {
        Require.InRange(share, AtZoneStart, 1 - 1e-9, "(share)");
        return Math.Log((1 - AtZoneStart) / (1 - share)) / RatePerHour(celsius);
    }

    private static double Kelvin(double celsius) => 273.15 + Require.InRange(celsius, 0, 100, "°C");
}

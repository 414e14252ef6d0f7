namespace Alburnum.Impregnation.Diffusing;

/// <summary>Moisture content that wood comes to in air of a temperature and humidity.</summary>
/// <remarks>Two-hydrate Hailwood–Horrobin form with the SI coefficients of Simpson (FPL-RN-268, 1998); no hysteresis, any species.</remarks>
public static class EquilibriumMoisture
{
    /// <summary>Equilibrium moisture content, %.</summary>
    /// <param name="celsius">Air temperature, °C. −5 to 100.</param>
    /// <param name="relativeHumidity">Relative humidity, 0 to 1.</param>
    public static double Percent(double celsius, double relativeHumidity)
    {
        var t = Require.InRange(celsius, -5, 100, "°C");
        var h = Require.InRange(relativeHumidity, 0, 1, "(share)");
        var w = 349 + 1.29 * t + 0.0135 * t * t;
        var kh = (0.805 + 0.000736 * t - 0.00000273 * t * t) * h;
        var k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
        var k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
        var hydrates = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
        return 1800 / w * (kh / (1 - kh) + hydrates);
    }
}

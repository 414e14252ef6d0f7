using System.Globalization;

namespace Alburnum;

/// <summary>Figures as reasons are written with them.</summary>
internal static class Figures
{
    /// <summary>A share or probability in per cent. Never rounds a doubt away: what is not certain is not written as 0 or 100 %.</summary>
    public static string Percent(double share) =>
        share switch
        {
            > 0 and < 0.0005 => "under 0.1 %",
            >= 0.9995 and < 1 => "over 99.9 %",
            _ => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %",
        };

    /// <summary>A length, to hundredths of a millimetre.</summary>
    public static string Mm(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    /// <summary>A retention.</summary>
    public static string KgPerM3(double retention) =>
        retention.ToString("0.###", CultureInfo.InvariantCulture) + " kg/m³";
}

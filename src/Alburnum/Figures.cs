using System.Globalization;

namespace Alburnum;

/// <summary>Figures as reasons are written with them.</summary>
public static class Figures
{
    /// <summary>A share in per cent. What is not all or nothing is not rounded to 0 or 100 %.</summary>
    /// <param name="share">0 to 1.</param>
    public static string Percent(double share) =>
        share switch
        {
            > 0 and < 0.0005 => "under 0.1 %",
            >= 0.9995 and < 1 => "over 99.9 %",
            _ => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %",
        };

    /// <summary>A probability in per cent. No measurement is certain, so none is written as 0 or 100 %.</summary>
    /// <param name="probability">0 to 1.</param>
    public static string Certainty(double probability) => Percent(Math.Clamp(probability, 1e-9, 1 - 1e-9));

    /// <summary>A count with its noun: "1 piece", "2 pieces".</summary>
    public static string Counted(int count, string noun) =>
        $"{count.ToString(CultureInfo.InvariantCulture)} {noun}{(count == 1 ? "" : "s")}";

    /// <summary>A length, to hundredths of a millimetre.</summary>
    public static string Mm(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture) + " mm";

    /// <summary>A retention.</summary>
    public static string KgPerM3(double retention) =>
        retention.ToString("0.###", CultureInfo.InvariantCulture) + " kg/m³";
}

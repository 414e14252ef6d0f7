using System.Globalization;

namespace Alburnum.Reports.Sheets;

/// <summary>Numbers as people read them: rounded by their uncertainty, with their unit.</summary>
public static class Say
{
    /// <summary>A value with its standard uncertainty, both rounded to the uncertainty's first significant digit (second where it is 1).</summary>
    /// <remarks>The usual rounding of measured values, JCGM 100:2008, 7.2.6.</remarks>
    public static string Measured(double value, double standardUncertainty, string unit)
    {
        var decimals = Decimals(standardUncertainty);
        return $"{Number(value, decimals)} ± {Number(standardUncertainty, decimals)} {unit}";
    }

    /// <summary>A probability in words that do not claim too much: "97 %", "over 99 %", "under 1 %".</summary>
    public static string Probability(double? probability) =>
        probability switch
        {
            null => "not determined",
            > 0.99 => "over 99 %",
            < 0.01 => "under 1 %",
            { } p => Percent(p),
        };

    /// <summary>A share as whole per cent; what is not all or nothing is not rounded to 0 or 100 %.</summary>
    public static string Percent(double share) =>
        share switch
        {
            > 0 and < 0.005 => "under 1 %",
            >= 0.995 and < 1 => "over 99 %",
            _ => $"{Number(share * 100, 0)} %",
        };

    /// <summary>A number without needless digits.</summary>
    public static string Number(double value, int decimals) =>
        Math.Round(value, decimals).ToString($"F{decimals}", CultureInfo.InvariantCulture);

    private static int Decimals(double standardUncertainty)
    {
        if (standardUncertainty <= 0)
            return 1;
        var exponent = (int)Math.Floor(Math.Log10(standardUncertainty));
        var leading = standardUncertainty / Math.Pow(10, exponent);
        return Math.Clamp(leading < 2 ? 1 - exponent : -exponent, 0, 2);
    }
}

using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Assaying;

namespace Alburnum.Records.Assays;

/// <summary>A figure as laboratories write it, such as "1850 ± 60 mg/kg Cu", "1.9; 2.1; 2.0 ± 0.05 % m/m CuO", "3.2 ± 0.4 (k=2) kg/m3 B" or "&lt; 5 mg/kg As".</summary>
public sealed partial record ContentText
{
    private const double KgPerM3InPcf = 0.45359237 / 0.028316846592;

    // Every way to write a unit, the one it stands for, and what one of it is in that unit.
    private static readonly (string Written, ContentUnit Unit, double InUnit)[] Units =
    [
        ("mg/kg", ContentUnit.MgPerKg, 1),
        ("ppm", ContentUnit.MgPerKg, 1),
        ("g/kg", ContentUnit.MgPerKg, 1000),
        ("% m/m", ContentUnit.PercentByMass, 1),
        ("% w/w", ContentUnit.PercentByMass, 1),
        ("%", ContentUnit.PercentByMass, 1),
        ("kg/m3", ContentUnit.KgPerM3, 1),
        ("kg/m³", ContentUnit.KgPerM3, 1),
        ("pcf", ContentUnit.KgPerM3, KgPerM3InPcf),
        ("g/m2", ContentUnit.GPerM2, 1),
        ("g/m²", ContentUnit.GPerM2, 1),
    ];

    private ContentText(ReportedContent content, int subSamples) => (Content, SubSamples) = (content, subSamples);

    /// <summary>What may be written, for messages.</summary>
    public const string Expected =
        "content with its standard uncertainty, unit (mg/kg, % m/m, kg/m3, g/m2 or pcf) and substance, such as \"1850 ± 60 mg/kg Cu\"; \"< 5 mg/kg Cu\" below detection; \"1850; 1900; 1790 mg/kg Cu\" for sub-samples";

    /// <summary>The figure.</summary>
    public ReportedContent Content { get; }

    /// <summary>Analyses that it is the mean of.</summary>
    public int SubSamples { get; }

    /// <summary>Reads a figure; null where the text is none.</summary>
    /// <param name="text">As written.</param>
    /// <param name="substances">Substances by name.</param>
    public static ContentText? Read(string text, Substances substances)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(substances);
        var match = Written().Match(text.Trim());
        if (!match.Success || substances.Find(match.Groups["substance"].Value) is not { } measured)
            return null;
        var (_, unit, inUnit) = Array.Find(Units, each => each.Written == match.Groups["unit"].Value);
        double[] values = [.. match.Groups["value"].Captures.Select(value => Number(value) * inUnit)];
        var u = match.Groups["u"].Success ? Number(match.Groups["u"]) * inUnit / Coverage(match) : 0;
        var isBelow = match.Groups["below"].Success;
        var isStated = match.Groups["u"].Success;
        if (isBelow ? isStated || values is not [> 0] : !isStated && values.Length < 2)
            return null;
        var mean = values.Average();
        var most = unit switch
        {
            ContentUnit.MgPerKg => 1e6,
            ContentUnit.PercentByMass => 100,
            ContentUnit.KgPerM3 => 1000,
            _ => 1e6,
        };
        return Math.Max(mean, u) > most
            ? null
            : new(new(measured, unit, new(mean, Math.Sqrt(u * u + Scatter(values, mean))), isBelow), values.Length);
    }

    /// <summary>A density with its standard uncertainty, kg/m³; null where the text is none.</summary>
    internal static Estimate? ReadDensity(string text)
    {
        var match = Density().Match(text.Trim());
        return match.Success ? new(Number(match.Groups["value"]), Number(match.Groups["u"]) / Coverage(match)) : null;
    }

    // Of the mean of sub-samples: s²/n (JCGM 100, 4.2.3).
    private static double Scatter(double[] values, double mean) =>
        values.Length > 1
            ? values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1) / values.Length
            : 0;

    // An expanded uncertainty is divided by the coverage factor that is written with it.
    private static double Coverage(Match match) => match.Groups["k"].Success ? Number(match.Groups["k"]) : 1;

    private static double Number(Capture digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<below><)?\s*(?<value>[0-9]{1,9}(\.[0-9]{1,17})?)(\s*;\s*(?<value>[0-9]{1,9}(\.[0-9]{1,17})?)){0,99}"
            + @"(\s*(±|\+-|\+/-)\s*(?<u>[0-9]{1,9}(\.[0-9]{1,17})?)(\s*\(\s*k\s*=\s*(?<k>[1-4](\.[0-9]{1,3})?)\s*\))?)?"
            + @"\s*(?<unit>mg/kg|ppm|g/kg|% m/m|% w/w|%|kg/m3|kg/m³|pcf|g/m2|g/m²)\s+(?<substance>.{1,60})$",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Written();

    [GeneratedRegex(
        @"^(?<value>[0-9]{1,4}(\.[0-9]{1,6})?)\s*(±|\+-|\+/-)\s*(?<u>[0-9]{1,4}(\.[0-9]{1,6})?)(\s*\(\s*k\s*=\s*(?<k>[1-4](\.[0-9]{1,3})?)\s*\))?(\s*kg/m(3|³))?$",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Density();
}

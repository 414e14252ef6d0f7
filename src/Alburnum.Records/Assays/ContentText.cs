using System.Text.RegularExpressions;
using Alburnum.Assaying;
using Alburnum.Facts;
using Alburnum.Measures;
using Alburnum.Requirements;

namespace Alburnum.Records.Assays;

/// <summary>A figure as laboratories write it, such as "1850 ± 120 (k=2) mg/kg Cu", "0,18 ± 6 % (k=2) % m/m Cu", "1.9; 2.1; 2.0 % m/m CuO", "3.2 ± 0.4 (k=2) kg/m3 B" or "&lt; 5 mg/kg As".</summary>
public sealed partial record ContentText
{
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
        ("pcf", ContentUnit.KgPerM3, PreservativeAmount.KgPerM3InPcf),
        ("g/m2", ContentUnit.GPerM2, 1),
        ("g/m²", ContentUnit.GPerM2, 1),
    ];

    private ContentText(ReportedContent content, int subSamples) => (Content, SubSamples) = (content, subSamples);

    private const string AnyExpected =
        "content with its uncertainty and coverage factor, unit (mg/kg, % m/m, kg/m3, g/m2 or pcf) and substance, such as \"1850 ± 120 (k=2) mg/kg Cu\"; \"< 5 mg/kg Cu\" below detection; \"1850; 1900; 1790 mg/kg Cu\" for sub-samples";

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
        if (StatedUncertainty.Fault(match) is not null || Lacks(match) is not null)
            return null;
        var mean = values.Average();
        var stated = StatedUncertainty.Of(match, mean / inUnit) * inUnit;
        var most = unit switch
        {
            ContentUnit.MgPerKg => 1e6,
            ContentUnit.PercentByMass => 100,
            ContentUnit.KgPerM3 => 1000,
            _ => 1e6,
        };
        if (Math.Max(mean, stated ?? 0) > most)
            return null;
        var u = EvaluatedUncertainty.Combine(
            EvaluatedUncertainty.Known(stated ?? 0),
            EvaluatedUncertainty.OfMean(values)
        );
        return new(
            new(measured, unit, new(mean, u.U), match.Groups["below"].Success)
            {
                DegreesOfFreedom = u.DegreesOfFreedom,
                IsUncertaintyKnown = stated is not null || values.Length > 1 || match.Groups["below"].Success,
            },
            values.Length
        );
    }

    /// <summary>What was expected in place of a text that is no figure, for messages.</summary>
    /// <param name="text">As written.</param>
    /// <param name="substances">Substances by name.</param>
    public static string Expected(string text, Substances substances)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(substances);
        var match = Written().Match(text.Trim());
        return !match.Success && NotDetected().IsMatch(text.Trim())
                ? "the limit of detection, as the laboratory states it, such as \"< 5 mg/kg Cu\": not detected alone does not say how much there may be"
            : !match.Success && TwoWays().IsMatch(text)
                ? "no comma before three digits, which may divide thousands or be a decimal comma: 1850 or 1.850"
            : !match.Success ? AnyExpected
            : substances.Find(match.Groups["substance"].Value) is null
                ? "a substance by its formula, or by a name known here, such as CuO or boric acid"
            : Lacks(match) ?? StatedUncertainty.Fault(match) ?? AnyExpected;
    }

    // A limit is one number above 0 and has no uncertainty of its own.
    private static string? Lacks(Match match) =>
        match.Groups["below"].Success
        && (match.Groups["u"].Success || match.Groups["value"].Captures.Count > 1 || Number(match.Groups["value"]) == 0)
            ? AnyExpected
            : null;

    /// <summary>A density of the zone, kg/m³, with or without its uncertainty; null where the text is none.</summary>
    internal static StatedZoneDensity? ReadDensity(string text)
    {
        var match = Density().Match(text.Trim());
        if (!match.Success || StatedUncertainty.Fault(match) is not null)
            return null;
        var value = Number(match.Groups["value"]);
        var u = StatedUncertainty.Of(match, value);
        return Ranges.DensityKgPerM3.Holds(value)
            ? new(new(value, u ?? 0)) { IsUncertaintyKnown = u is not null }
            : null;
    }

    private static double Number(Capture digits) => StatedUncertainty.Number(digits);

    [GeneratedRegex(
        @"^(?<below><)?\s*(?<value>"
            + StatedUncertainty.Digits
            + @")(\s*;\s*(?<value>"
            + StatedUncertainty.Digits
            + ")){0,99}"
            + StatedUncertainty.Pattern
            + @"\s*(?<unit>mg/kg|ppm|g/kg|% m/m|% w/w|%|kg/m3|kg/m³|pcf|g/m2|g/m²)\s+(?<substance>.{1,60})$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Written();

    [GeneratedRegex(
        @"^(?<value>" + StatedUncertainty.Digits + ")" + StatedUncertainty.Pattern + @"(\s*kg/m(3|³))?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Density();

    [GeneratedRegex(
        @"^(n\.?\s?[dn]\.?|not detected|<\s*lo[dq])(\s|$)",
        RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex NotDetected();

    [GeneratedRegex(
        @"(^|[\s<;±-])[1-9][0-9]{0,2}(,[0-9]{3})+(?![0-9])",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex TwoWays();
}

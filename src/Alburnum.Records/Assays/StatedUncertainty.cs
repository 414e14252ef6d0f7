using System.Globalization;
using System.Text.RegularExpressions;

namespace Alburnum.Records.Assays;

/// <summary>The ± of a laboratory, such as "± 0.4 (k=2)" or "± 6 % (k=2)": an expanded uncertainty with the coverage factor that makes it a standard one.</summary>
internal static class StatedUncertainty
{
    /// <summary>A number with a decimal point or comma, for patterns that hold it. A comma before three digits may divide thousands and is none, save behind a single 0.</summary>
    internal const string Digits = @"([0-9]{1,9}(\.[0-9]{1,17}|,([0-9]{1,2}|[0-9]{4,17}))?|0,[0-9]{3})";

    /// <summary>How it is written, for patterns that hold it.</summary>
    internal const string Pattern =
        @"(\s*(±|\+-|\+/-)\s*(?<u>"
        + Digits
        + @")(?<relative>\s*%)?(\s*\(\s*k\s*=\s*(?<k>[1-4]([.,][0-9]{1,3})?)\s*\))?)?";

    /// <summary>What was expected of a figure that has none where it is held against a demand, for messages.</summary>
    internal const string Missing =
        "an uncertainty, such as \"± 0.4 (k=2)\": without one a figure cannot be held against a demand; ask the laboratory for it";

    /// <summary>Standard uncertainty of a text that matched; null where none is written.</summary>
    /// <param name="match">The text.</param>
    /// <param name="value">The value that it is of, in the unit written.</param>
    internal static double? Of(Match match, double value) =>
        !match.Groups["u"].Success ? null
        : match.Groups["relative"].Success ? Number(match.Groups["u"]) / 100 * value / Number(match.Groups["k"])
        : Number(match.Groups["u"]) / Number(match.Groups["k"]);

    /// <summary>What was expected of an uncertainty that cannot be used, for messages; null where it can, or where none is written.</summary>
    internal static string? Fault(Match match) =>
        !match.Groups["u"].Success ? null
        : Number(match.Groups["u"]) == 0 ? "an uncertainty above 0: no analysis is exact"
        : !match.Groups["k"].Success
            ? "the coverage factor k of the ±, as the laboratory states it, such as \"± 0.4 (k=2)\"; k=1 where ± is the standard uncertainty"
        : null;

    /// <summary>A number that matched <see cref="Digits"/>.</summary>
    internal static double Number(Capture digits) =>
        double.Parse(digits.Value.Replace(',', '.'), CultureInfo.InvariantCulture);
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace Alburnum.Records.Assays;

/// <summary>The ± of a laboratory, such as "± 0.4 (k=2)": an expanded uncertainty with the coverage factor that makes it a standard one.</summary>
internal static class StatedUncertainty
{
    /// <summary>How it is written, for patterns that hold it.</summary>
    internal const string Pattern =
        @"(\s*(±|\+-|\+/-)\s*(?<u>[0-9]{1,9}(\.[0-9]{1,17})?)(\s*\(\s*k\s*=\s*(?<k>[1-4](\.[0-9]{1,3})?)\s*\))?)?";

    /// <summary>What was expected of a figure that has none, for messages.</summary>
    internal const string Missing =
        "an uncertainty, such as \"± 0.4 (k=2)\": without one a figure cannot be held against a demand; ask the laboratory for it";

    /// <summary>Standard uncertainty of a text that matched; null where none is written.</summary>
    internal static double? Of(Match match) =>
        match.Groups["u"].Success ? Number(match.Groups["u"]) / Number(match.Groups["k"]) : null;

    /// <summary>What was expected of an uncertainty that cannot be used, for messages; null where it can, or where none is written.</summary>
    internal static string? Fault(Match match) =>
        !match.Groups["u"].Success ? null
        : Number(match.Groups["u"]) == 0 ? "an uncertainty above 0: no analysis is exact"
        : !match.Groups["k"].Success
            ? "the coverage factor k of the ±, as the laboratory states it, such as \"± 0.4 (k=2)\"; k=1 where ± is the standard uncertainty"
        : null;

    private static double Number(Capture digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);
}

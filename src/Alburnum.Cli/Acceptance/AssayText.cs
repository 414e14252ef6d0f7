using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Acceptance;

namespace Alburnum.Cli.Acceptance;

/// <summary>Reads an assay as written on a laboratory's paper: "14.2 ± 0.4" or "&lt; 0.5", kg/m³.</summary>
internal static partial class AssayText
{
    public const string Expected =
        "kg/m³ with its standard uncertainty, such as \"14.2 ± 0.4\", or \"< 0.5\" below detection";

    public static Assay Read(string text)
    {
        var match = Written().Match(text.Trim());
        if (!match.Success)
            throw Options.Refused("--assay", text, Expected);
        var value = double.Parse(match.Groups["value"].Value, CultureInfo.InvariantCulture);
        if (match.Groups["below"].Success)
            return value > 0 ? new BelowDetection(value) : throw Options.Refused("--assay", text, Expected);
        return match.Groups["u"].Success
            ? new MeasuredAssay(new(value, double.Parse(match.Groups["u"].Value, CultureInfo.InvariantCulture)))
            : throw Options.Refused("--assay", text, Expected);
    }

    [GeneratedRegex(
        @"^(?<below><)?\s*(?<value>\d{1,4}(\.\d{1,4})?)(\s*(±|\+-|\+/-)\s*(?<u>\d{1,4}(\.\d{1,4})?))?(\s*kg/m(3|³))?$",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Written();
}

using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Alburnum.Timber;

/// <summary>Reads a section as people write it.</summary>
public static partial class SectionText
{
    /// <summary>What may be written, for messages.</summary>
    public const string Expected = "a size such as \"100 x 75 mm\" or \"round 120 mm\", each side 1 to 2000 mm";

    private const double MmInInch = 25.4;

    /// <summary>Reads "100x75", "100 × 75 mm", "4 x 4 in", "round 120" or "⌀ 120 mm". Millimetres where no unit is written.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out Section? section)
    {
        section = null;
        var match = Written().Match(text.Trim());
        if (!match.Success)
            return false;
        var factor = match.Groups["unit"].Value == "in" ? MmInInch : 1;
        var first = Mm(match.Groups["first"].Value, factor);
        double? second = match.Groups["second"].Success ? Mm(match.Groups["second"].Value, factor) : null;
        var isRound = match.Groups["round"].Success;
        if (!IsSide(first) || (second is { } other && !IsSide(other)) || isRound == second.HasValue)
            return false;
        section = second is { } height ? new RectangularSection(first, height) : new RoundSection(first);
        return true;
    }

    private static double Mm(string digits, double factor) =>
        Math.Round(double.Parse(digits, CultureInfo.InvariantCulture) * factor, 6);

    private static bool IsSide(double mm) => mm is >= 1 and <= 2000;

    [GeneratedRegex(
        @"^(?<round>round|diameter|⌀|ø)?\s*(?<first>\d{1,4}(\.\d{1,3})?)(\s*[x×X]\s*(?<second>\d{1,4}(\.\d{1,3})?))?\s*(?<unit>mm|in)?$",
        RegexOptions.ExplicitCapture
    )]
    private static partial Regex Written();
}

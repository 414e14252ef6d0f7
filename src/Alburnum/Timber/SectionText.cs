using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Facts;

namespace Alburnum.Timber;

/// <summary>Reads a section as people write it: the one way, wherever a section is written.</summary>
public static partial class SectionText
{
    /// <summary>What may be written, for messages.</summary>
    public static string Expected { get; } =
        $"a size such as \"100 x 75 mm\", \"round 120 mm\", \"half round 120 mm\" or \"quartered 120 mm\", each size {Ranges.SectionMm.InWords}";

    private const double MmInInch = 25.4;

    /// <summary>Reads "100x75", "100 × 75 mm", "4 x 4 in", "round 120", "⌀ 120 mm", "half round 120" or "quartered 120".</summary>
    /// <remarks>Millimetres where no unit is written. Half-round and quartered pieces go by the diameter of the round they were sawn from.</remarks>
    public static bool TryParse(string text, [NotNullWhen(true)] out Section? section)
    {
        ArgumentNullException.ThrowIfNull(text);
        section = null;
        var match = Written().Match(text.Trim());
        if (!match.Success)
            return false;
        var factor = string.Equals(match.Groups["unit"].Value, "in", StringComparison.OrdinalIgnoreCase) ? MmInInch : 1;
        var first = Mm(match.Groups["first"].Value, factor);
        double? second = match.Groups["second"] is { Success: true } other ? Mm(other.Value, factor) : null;
        var shape = match.Groups["shape"].Value;
        if (
            !Ranges.SectionMm.Holds(first)
            || (second is { } size && !Ranges.SectionMm.Holds(size))
            || shape.Length > 0 == second.HasValue
        )
            return false;
        section =
            second is { } height ? new RectangularSection(first, height)
            : shape.StartsWith("half", StringComparison.OrdinalIgnoreCase) ? new HalfRoundSection(first)
            : shape.StartsWith("quarter", StringComparison.OrdinalIgnoreCase) ? new QuarteredSection(first)
            : new RoundSection(first);
        return true;
    }

    private static double Mm(string digits, double factor) =>
        Math.Round(double.Parse(digits, CultureInfo.InvariantCulture) * factor, 6);

    [GeneratedRegex(
        @"^(?<shape>((half|quarter(ed)?)[ -]?)?(round|diameter|⌀|ø)|quarter(ed)?)?\s*(?<first>[0-9]{1,4}(\.[0-9]{1,3})?)(\s*[x×]\s*(?<second>[0-9]{1,4}(\.[0-9]{1,3})?))?\s*(?<unit>mm|in)?$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Written();
}

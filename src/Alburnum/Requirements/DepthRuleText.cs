using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Facts;

namespace Alburnum.Requirements;

/// <summary>Reads a depth rule as people write it: a class by name, or plain demands joined by "and" or "or".</summary>
public static partial class DepthRuleText
{
    /// <summary>What may be written, for messages.</summary>
    public const string Expected =
        "a penetration class (NP3), or requirements such as \"6 mm sapwood\", \"6 mm exposed heartwood over 75 %\", "
        + "\"full sapwood\", \"90 % sapwood\", joined by \"and\" or \"or\"";

    private const double MmInInch = 25.4;

    /// <summary>The rule; null where the text is none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="classes">Penetration classes by name.</param>
    public static DepthRule? Read(string text, IReadOnlyDictionary<string, PenetrationDemand> classes)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(classes);
        if (classes.TryGetValue(text.Trim(), out var known))
            return known.Depth;
        if (text.Trim() == "none")
            return new NoDepth();
        var alternatives = Joined(
            text,
            Or(),
            part => Joined(part, And(), Part, parts => new AllOf(parts)),
            parts => new AnyOf(parts)
        );
        return alternatives;
    }

    private static DepthRule? Joined(
        string text,
        Regex joint,
        Func<string, DepthRule?> read,
        Func<IReadOnlyList<DepthRule>, DepthRule> join
    )
    {
        var parts = joint.Split(text).Select(read).ToList();
        if (parts.Contains(null))
            return null;
        return parts.Count == 1 ? parts[0] : join([.. parts.OfType<DepthRule>()]);
    }

    private static DepthRule? Part(string text)
    {
        var match = Demand().Match(text.Trim());
        if (!match.Success)
            return null;
        var zone = match.Groups["zone"].Value switch
        {
            "sapwood" => WoodZone.Sapwood,
            "exposed heartwood" => WoodZone.ExposedHeartwood,
            _ => WoodZone.Lateral,
        };
        if (match.Groups["full"].Success)
            return new ShareOfZone(zone, 1);
        var number = Number(match.Groups["number"]);
        if (match.Groups["unit"].Value == "%")
            return number is > 0 and <= 100 ? new ShareOfZone(zone, number / 100) : null;
        var over = match.Groups["over"].Success ? Number(match.Groups["over"]) : 100;
        var mm = Math.Round(number * (match.Groups["unit"].Value == "in" ? MmInInch : 1), 6);
        return Ranges.DepthMm.Holds(mm) && Ranges.CoveragePercent.Holds(over)
            ? new LeastDepth(zone, mm, over / 100)
            : null;
    }

    private static double Number(Group digits) => double.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\s+or\s+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Or();

    [GeneratedRegex(@"\s+and\s+|\s*\+\s*", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex And();

    [GeneratedRegex(
        @"^((?<full>full)|(?<number>[0-9]{1,4}(\.[0-9]{1,3})?)\s*(?<unit>mm|in|%))(\s+(of\s+|in\s+)?(the\s+)?(?<zone>sapwood|exposed heartwood|lateral))?(\s+over\s+(?<over>[0-9]{1,3}(\.[0-9]{1,2})?)\s*%)?$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Demand();
}

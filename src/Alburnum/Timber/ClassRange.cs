using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Alburnum.Timber;

/// <summary>One class or a range of classes on a scale from 1 (best) to 5, as EN 350 prints them: "4", "3-4", "2v".</summary>
public readonly record struct ClassRange
{
    /// <summary>Checks both ends.</summary>
    /// <param name="low">Lowest class, 1 to 5.</param>
    /// <param name="high">Highest class, from <paramref name="low"/> to 5.</param>
    /// <param name="isVariable">The species is marked as unusually variable.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is outside the scale, or the ends are crossed.</exception>
    public ClassRange(int low, int high, bool isVariable = false)
    {
        Low = Require.InRange(low, 1, 5, "(class)");
        High = Require.InRange(high, low, 5, "(class)");
        IsVariable = isVariable;
    }

    /// <summary>Lowest class of the range.</summary>
    public int Low { get; }

    /// <summary>Highest class of the range: the one a careful reader plans with.</summary>
    public int High { get; }

    /// <summary>Marked as unusually variable ("v").</summary>
    public bool IsVariable { get; }

    /// <summary>As printed: "3", "3-4", "3-4v".</summary>
    public string Label => (Low == High ? Digit(Low) : $"{Digit(Low)}-{Digit(High)}") + (IsVariable ? "v" : "");

    /// <summary>Reads "3", "3-4" or "3-4v".</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out ClassRange range)
    {
        range = default;
        if (string.IsNullOrEmpty(text))
            return false;
        var isVariable = text.EndsWith('v');
        var ends = (isVariable ? text[..^1] : text).Split('-');
        if (
            ends.Length > 2
            || !ends.All(end => end.Length == 1 && end[0] is >= '1' and <= '5')
            || ends[^1][0] < ends[0][0]
        )
            return false;
        range = new ClassRange(ends[0][0] - '0', ends[^1][0] - '0', isVariable);
        return true;
    }

    private static string Digit(int value) => value.ToString(CultureInfo.InvariantCulture);
}

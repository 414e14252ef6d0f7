using Alburnum.Facts;

namespace Alburnum.Requirements;

/// <summary>Use class by exposure, as in EN 335:2013 (class 3 in its two parts).</summary>
public enum UseClass
{
    /// <summary>Indoors, dry.</summary>
    One,

    /// <summary>Under cover, occasional wetting or condensation.</summary>
    Two,

    /// <summary>Outdoors above ground; water does not stay.</summary>
    ThreeOne,

    /// <summary>Outdoors above ground; water may stay.</summary>
    ThreeTwo,

    /// <summary>In contact with ground or fresh water.</summary>
    Four,

    /// <summary>In salt water.</summary>
    Five,
}

/// <summary>How long the client expects a component to serve, in whole years. 1 to 200.</summary>
/// <remarks>Immutable. <c>default</c> is 0 years and is refused by every rulebook.</remarks>
public readonly record struct DesiredServiceLife
{
    /// <summary>Checks the range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1 to 200 years.</exception>
    public DesiredServiceLife(int years) => Years = (int)Require.Within(years, Ranges.LifeYears);

    /// <summary>Whole years.</summary>
    public int Years { get; }
}

/// <summary>How use classes are written.</summary>
public static class UseClassWords
{
    private static readonly string[] Labels = ["1", "2", "3.1", "3.2", "4", "5"];

    private static readonly string[] Prefixes = ["use class", "class", "uc"];

    /// <summary>"1", "2", "3.1", "3.2", "4" or "5".</summary>
    public static string Label(this UseClass useClass) => Labels[(int)useClass];

    /// <summary>Reads a class as people write it ("4", "UC4", "use class 4"), with what its label says of a coating: the British 3c and 3u, which no other class has. Null where it is none.</summary>
    /// <param name="label">The class as it is written.</param>
    public static UseClassDemand? Read(string label)
    {
        ArgumentNullException.ThrowIfNull(label);
        var bare = Bare(label);
        bool? isCoated = bare switch
        {
            "3c" => true,
            "3u" => false,
            _ => null,
        };
        return Parse(isCoated is null ? bare : bare[..1]) is { Count: > 0 } classes
            ? new(label, classes, isCoated)
            : null;
    }

    private static string Bare(string label)
    {
        var text = label.Trim().ToLowerInvariant();
        var prefix = Array.Find(Prefixes, each => text.StartsWith(each, StringComparison.Ordinal));
        return prefix is null ? text : text[prefix.Length..].TrimStart();
    }

    /// <summary>Reads "1" to "5", "3.1", "3.2"; "3" stands for both parts of class 3. Empty where it is none of these.</summary>
    public static IReadOnlyList<UseClass> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (string.Equals(text, "3", StringComparison.Ordinal))
            return [UseClass.ThreeOne, UseClass.ThreeTwo];
        var index = Array.IndexOf(Labels, text);
        return index < 0 ? [] : [(UseClass)index];
    }
}

namespace Alburnum.Requirements;

/// <summary>What is known of one field: nothing, some words, or a number that lies in a range.</summary>
public readonly record struct Known
{
    private Known(IReadOnlyList<string>? words, bool anyWillDo, double low, double high)
    {
        IsKnown = true;
        Words = words;
        AnyWillDo = anyWillDo;
        Low = low;
        High = high;
    }

    /// <summary>False where nothing is known; the default.</summary>
    public bool IsKnown { get; }

    /// <summary>Words that hold; empty where none does, null where nothing is known or a number is.</summary>
    public IReadOnlyList<string>? Words { get; }

    /// <summary>True where all words hold at once (groups of a species); false where one of them does, which one is open.</summary>
    public bool AnyWillDo { get; }

    /// <summary>Least value that the number may have.</summary>
    public double Low { get; }

    /// <summary>Greatest value that the number may have.</summary>
    public double High { get; }

    /// <summary>One word.</summary>
    public static Known Word(string word) => new([word], anyWillDo: false, 0, 0);

    /// <summary>"yes" or "no"; nothing for null.</summary>
    public static Known YesNo(bool? value) => value is null ? default : Word(value.Value ? "yes" : "no");

    /// <summary>One of some words, which one is open; "none" where there are none.</summary>
    public static Known OneOfThese(IReadOnlyList<string> words) => new(words, anyWillDo: false, 0, 0);

    /// <summary>All of some words at once.</summary>
    public static Known AllOfThese(IReadOnlyList<string> words) => new(words, anyWillDo: true, 0, 0);

    /// <summary>A number that lies in a range.</summary>
    public static Known Number(double low, double high) => new(null, anyWillDo: false, low, high);

    /// <summary>A number; nothing for null.</summary>
    public static Known Number(double? value) => value is null ? default : Number(value.Value, value.Value);
}

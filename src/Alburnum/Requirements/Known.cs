using System.Globalization;

namespace Alburnum.Requirements;

/// <summary>What is known of one field: nothing, some words, or a number that lies in a range.</summary>
internal readonly struct Known
{
    private Known(IReadOnlyList<string> words, bool anyWillDo, double low, double high)
    {
        IsKnown = true;
        Words = words;
        AnyWillDo = anyWillDo;
        Low = low;
        High = high;
    }

    /// <summary>False where nothing is known; the default.</summary>
    public bool IsKnown { get; }

    /// <summary>Words that hold.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>True where all words hold at once (groups of a species); false where one of them does, which one is open.</summary>
    public bool AnyWillDo { get; }

    /// <summary>Least value that the number may have.</summary>
    public double Low { get; }

    /// <summary>Greatest value that the number may have.</summary>
    public double High { get; }

    /// <summary>What is known, in words.</summary>
    public string InWords
    {
        get
        {
            if (!IsKnown)
                return "not known";
            if (Words is not null)
                return Words.Count == 0 ? "none" : string.Join(AnyWillDo ? ", " : " or ", Words);
            return Low.Equals(High) ? Digits(Low) : $"{Digits(Low)} to {Digits(High)}";
        }
    }

    public static Known Word(string word) => new([word], anyWillDo: false, 0, 0);

    public static Known YesNo(bool? value) => value is null ? default : Word(value.Value ? "yes" : "no");

    public static Known OneOfThese(IReadOnlyList<string> words) => new(words, anyWillDo: false, 0, 0);

    public static Known AllOfThese(IReadOnlyList<string> words) => new(words, anyWillDo: true, 0, 0);

    public static Known Number(double low, double high) => new(null!, anyWillDo: false, low, high);

    public static Known Number(double? value) => value is null ? default : Number(value.Value, value.Value);

    private static string Digits(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

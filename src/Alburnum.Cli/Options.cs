using System.Globalization;

namespace Alburnum.Cli;

/// <summary>Checks options; what is wrong is refused in the words of any other input.</summary>
internal static class Options
{
    public static InputRefusedException Refused(string option, string found, string expected) =>
        new(new InputProblem(option, 0, "", "", found, expected));

    /// <summary>Refuses the first option that was given where it has no meaning: passing it over would hide that.</summary>
    public static void RefuseGiven(string expected, params (string Option, bool IsGiven)[] options)
    {
        foreach (var (option, isGiven) in options)
            if (isGiven)
                throw Refused(option, "a value", expected);
    }

    /// <summary>A number that must be given, in a range.</summary>
    public static double Number(string option, double? value, double low, double high, string unit) =>
        OptionalNumber(option, value, low, high, unit)
        ?? throw Refused(option, "nothing", $"a number, {Range(low, high, unit)}");

    /// <summary>A number in a range; null where it is not given.</summary>
    public static double? OptionalNumber(string option, double? value, double low, double high, string unit) =>
        value is { } given && !(given >= low && given <= high)
            ? throw Refused(option, Digits(given), Range(low, high, unit))
            : value;

    /// <summary>A whole number that must be given, in a range.</summary>
    public static int Whole(string option, int? value, int low, int high, string unit) =>
        OptionalWhole(option, value, low, high, unit)
        ?? throw Refused(option, "nothing", $"a whole number, {Range(low, high, unit)}");

    /// <summary>A whole number in a range; null where it is not given.</summary>
    public static int? OptionalWhole(string option, int? value, int low, int high, string unit) =>
        value is { } given && (given < low || given > high)
            ? throw Refused(option, given.ToString(CultureInfo.InvariantCulture), Range(low, high, unit))
            : value;

    private static string Range(double low, double high, string unit) =>
        $"{Digits(low)} to {Digits(high)} {unit}".TrimEnd();

    public static string Digits(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}

using System.Globalization;
using Alburnum.Facts;

namespace Alburnum.Cli;

/// <summary>Checks options; what is wrong is refused in the words of any other input.</summary>
internal static class Options
{
    /// <summary>The option that prints the whole result, where the terminal shows a part of it.</summary>
    public const string Json = "--json";

    public static InputRefusedException Refused(string option, string found, string expected) =>
        new(new InputProblem(option, 0, "", "", found, expected));

    /// <summary>A number that must be given, in a range.</summary>
    public static double Number(string option, double? value, NumberRange range) =>
        OptionalNumber(option, value, range)
        ?? throw Refused(option, "nothing", range.IsWhole ? range.InWords : $"a number, {range.InWords}");

    /// <summary>A number in a range; null where it is not given.</summary>
    public static double? OptionalNumber(string option, double? value, NumberRange range) =>
        value is { } given && !range.Holds(given) ? throw Refused(option, Digits(given), range.InWords) : value;

    /// <summary>A whole number that must be given, in a range.</summary>
    public static int Whole(string option, int? value, NumberRange range) => (int)Number(option, value, range);

    /// <summary>A whole number in a range; null where it is not given.</summary>
    public static int? OptionalWhole(string option, int? value, NumberRange range) =>
        (int?)OptionalNumber(option, value, range);

    public static string Digits(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}

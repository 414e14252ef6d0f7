using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Checks options; what is wrong is refused in the words of any other input.</summary>
internal static class Options
{
    /// <summary>The option that prints the whole result, where the terminal shows a part of it.</summary>
    public const string Json = "--json";

    public static InputRefusedException Refused(string option, string found, string expected) =>
        new(new InputProblem(option, 0, "", "", found, expected));

    /// <summary>Refuses the first option that was given where it has no meaning: passing it over would hide that.</summary>
    public static void RefuseGiven(string expected, params (AskedField Field, string? Given)[] options)
    {
        foreach (var (field, given) in options)
            if (given is not null)
                throw field.Refused(file: null, given, expected);
    }

    /// <summary>The timber that the options of a command name.</summary>
    public static Enquiry Timber(CommandSettings settings, FactLibrary facts)
    {
        var problems = new List<InputProblem>();
        var timber = EnquiryReader.ReadTimber(new OptionFields(settings, problems), facts);
        return problems.Count == 0 ? timber : throw new InputRefusedException(problems);
    }

    /// <summary>A number that must be given, in the field's range.</summary>
    public static double Number(AskedField field, double? value) => Number(field.Option, value, field.Range!);

    /// <summary>A number in the field's range; null where it is not given.</summary>
    public static double? OptionalNumber(AskedField field, double? value) =>
        OptionalNumber(field.Option, value, field.Range!);

    /// <summary>A whole number that must be given, in the field's range.</summary>
    public static int Whole(AskedField field, int? value) => (int)Number(field, value);

    /// <summary>A whole number in the field's range; null where it is not given.</summary>
    public static int? OptionalWhole(AskedField field, int? value) => (int?)OptionalNumber(field, value);

    /// <summary>One of some words.</summary>
    /// <exception cref="InputRefusedException">It is none of them.</exception>
    public static T Word<T>(AskedField field, string text, Func<string, T?> read)
        where T : struct => read(text) ?? throw field.Refused(file: null, text, field.Expected);

    /// <summary>A number that must be given, in a range.</summary>
    public static double Number(string option, double? value, NumberRange range) =>
        OptionalNumber(option, value, range)
        ?? throw Refused(option, "nothing", range.IsWhole ? range.InWords : $"a number, {range.InWords}");

    /// <summary>A number in a range; null where it is not given.</summary>
    public static double? OptionalNumber(string option, double? value, NumberRange range) =>
        value is { } given && !range.Holds(given)
            ? throw Refused(option, InputProblem.Number(given), range.InWords)
            : value;

    /// <summary>A whole number that must be given, in a range.</summary>
    public static int Whole(string option, int? value, NumberRange range) => (int)Number(option, value, range);

    /// <summary>A whole number in a range; null where it is not given.</summary>
    public static int? OptionalWhole(string option, int? value, NumberRange range) =>
        (int?)OptionalNumber(option, value, range);
}

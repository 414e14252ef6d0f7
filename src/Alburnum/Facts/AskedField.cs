using System.Globalization;

namespace Alburnum.Facts;

/// <summary>One thing that is asked of a person: its one name, as each place writes it, and what may be written.</summary>
/// <remarks>The same list serves the readers, the help of the options and the tables in the docs.</remarks>
public sealed record AskedField
{
    /// <summary>What follows where a field is left out that may not be.</summary>
    public const string MustBeThere = "required";

    private const string NotKnown = "not known";

    // How a name ends in the unit of its numbers.
    private static readonly (string Unit, string Ending)[] Units =
    [
        ("%", "Percent"),
        ("mm", "Mm"),
        ("kg/m³", "KgPerM3"),
        ("°C", "Celsius"),
        ("L/kg", "LPerKg"),
        ("g/kg", "GPerKg"),
        ("years", "Years"),
    ];

    private readonly string _expected = "";

    /// <summary>Name in a file, for instance "useClass". It ends in the unit where a bare number is written.</summary>
    public required string Key { get; init; }

    /// <summary>Name as an option, for instance "--use-class", without a unit; the word in the usage of a command where it is an argument.</summary>
    public string Option
    {
        get => field ?? OptionOf(WithoutUnit);
        init;
    }

    /// <summary>Name as a column of a table, for instance "use_class"; it ends in the unit of its numbers.</summary>
    public string Column => Parts(WithoutUnit + Ending, '_');

    /// <summary>What it is, in one line, for help, forms and docs.</summary>
    public required string Help { get; init; }

    /// <summary>Examples of what may be written.</summary>
    public required string Examples { get; init; }

    /// <summary>The few words that may be written, for a form to choose from; empty where anything else may.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>What is taken where it is left out; empty where nothing is.</summary>
    public string Default { get; init; } = "";

    /// <summary>The default of a field that is a number, in the unit of its range.</summary>
    /// <exception cref="FormatException">The field has no default, or one in words.</exception>
    public double DefaultNumber => double.Parse(Default, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>What follows where it is left out: its default, or what stays open.</summary>
    public string LeftOut
    {
        get => Default.Length > 0 ? Default : field;
        init;
    } = NotKnown;

    /// <summary>Numbers allowed; null where it is no number.</summary>
    public NumberRange? Range { get; init; }

    /// <summary>What may be written, for messages.</summary>
    public string Expected
    {
        get => Range?.InWords ?? _expected;
        init => _expected = value;
    }

    /// <summary>What it is, with its unit or examples.</summary>
    public string InOneLine =>
        Help
        + (
            Range is { Unit: "mm" or "kg/m³" } ? $", {Range.Unit}"
            : Range is null && Examples.Length > 0 ? $" ({Examples})"
            : ""
        );

    /// <summary>What follows where it is left out, in words to go behind the line; empty where nothing does.</summary>
    public string LeftOutInWords =>
        Default.Length > 0 ? $"default: {Default}"
        : LeftOut is MustBeThere or NotKnown ? ""
        : $"if left out: {LeftOut}";

    /// <summary>A question that is answered by yes or no.</summary>
    /// <param name="key">Its name in a file.</param>
    /// <param name="help">What it is, in one line.</param>
    public static AskedField YesNo(string key, string help) =>
        new()
        {
            Key = key,
            Help = help,
            Examples = "yes, no",
            Expected = "yes or no",
            Choices = ["yes", "no"],
        };

    /// <summary>The option of a name: that of "leaveOut" is "--leave-out".</summary>
    public static string OptionOf(string name) => "--" + Parts(name, '-');

    /// <summary>What the field is called where it was written.</summary>
    /// <param name="file">File that it was written in; null for an option.</param>
    public string NameIn(string? file) => file is null ? Option : Key;

    /// <summary>Refuses what the field says, by its name where it was written.</summary>
    /// <param name="file">File that it was written in; null for an option.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    public InputRefusedException Refused(string? file, string found, string expected) =>
        new(
            file is null
                ? new InputProblem(Option, 0, "", "", found, expected)
                : new InputProblem(file, 0, "", Key, found, expected)
        );

    /// <summary>The number, where it is one of those allowed.</summary>
    /// <param name="value">The number.</param>
    /// <param name="file">File that it was written in; null for an option.</param>
    /// <exception cref="InputRefusedException">It is not.</exception>
    public double InRange(double value, string? file) =>
        Range is not { } range || range.Holds(value)
            ? value
            : throw Refused(file, InputProblem.Number(value), range.InWords);

    /// <summary>The same where nothing may have been said.</summary>
    public double? InRange(double? value, string? file) => value is { } given ? InRange(given, file) : null;

    private string Ending => Array.Find(Units, known => known.Unit == Range?.Unit).Ending ?? "";

    private string WithoutUnit => Key.EndsWith(Ending, StringComparison.Ordinal) ? Key[..^Ending.Length] : Key;

    private static string Parts(string name, char between) =>
        string.Concat(name.Select(c => char.IsUpper(c) ? $"{between}{char.ToLowerInvariant(c)}" : $"{c}"));
}

/// <summary>Numbers that a field allows.</summary>
/// <param name="Low">Lowest number allowed.</param>
/// <param name="High">Highest number allowed.</param>
/// <param name="Unit">Unit of both; it may be written behind the number or left out.</param>
/// <param name="IsWhole">Whether only whole numbers will do.</param>
public sealed record NumberRange(double Low, double High, string Unit, bool IsWhole)
{
    /// <summary>Any number between two.</summary>
    /// <param name="low">Lowest number allowed.</param>
    /// <param name="high">Highest number allowed.</param>
    /// <param name="unit">Unit of both.</param>
    public static NumberRange Within(double low, double high, string unit) => new(low, high, unit, IsWhole: false);

    /// <summary>Any whole number between two.</summary>
    /// <param name="low">Lowest number allowed.</param>
    /// <param name="high">Highest number allowed.</param>
    /// <param name="unit">What is counted.</param>
    public static NumberRange Whole(int low, int high, string unit) => new(low, high, unit, IsWhole: true);

    /// <summary>Whether a number is one of these.</summary>
    public bool Holds(double value) =>
        value >= Low && value <= High && (!IsWhole || value.Equals(Math.Truncate(value)));

    /// <summary>For instance "a whole number, 1 to 200 years" or "0 to 250 %".</summary>
    public string InWords =>
        IsWhole
            ? string.Create(CultureInfo.InvariantCulture, $"a whole number, {Low} to {High} {Unit}").TrimEnd()
            : string.Create(CultureInfo.InvariantCulture, $"{Low} to {High} {Unit}").TrimEnd();

    /// <summary>The number written; null where it is none, or not one of these.</summary>
    public double? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var digits = text.EndsWith(Unit, StringComparison.Ordinal) ? text[..^Unit.Length].TrimEnd() : text;
        var style = IsWhole ? NumberStyles.None : NumberStyles.AllowDecimalPoint;
        return
            double.TryParse(digits, style, CultureInfo.InvariantCulture, out var value) && value >= Low && value <= High
            ? value
            : null;
    }
}

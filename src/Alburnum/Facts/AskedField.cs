using System.Globalization;

namespace Alburnum.Facts;

/// <summary>One thing that is asked of a person: its name in each place where it can be written, and what may be written.</summary>
/// <remarks>The same list serves the readers, the help of the options and the tables in the docs.</remarks>
public sealed record AskedField
{
    /// <summary>What follows where a field is left out that may not be.</summary>
    public const string MustBeThere = "required";

    private readonly string _expected = "";

    /// <summary>Name in a file, for instance "useClass".</summary>
    public required string Key { get; init; }

    /// <summary>Name as an option, for instance "--use-class"; empty where it is none.</summary>
    public string Option { get; init; } = "";

    /// <summary>Name as a column of a table, for instance "use_class"; empty where it is none.</summary>
    public string Column { get; init; } = "";

    /// <summary>What it is, in one line, for help, forms and docs.</summary>
    public required string Help { get; init; }

    /// <summary>Examples of what may be written.</summary>
    public required string Examples { get; init; }

    /// <summary>What follows where it is left out.</summary>
    public string LeftOut { get; init; } = "not known";

    /// <summary>Numbers allowed; null where it is no number.</summary>
    public NumberRange? Range { get; init; }

    /// <summary>What may be written, for messages.</summary>
    public string Expected
    {
        get => Range?.InWords ?? _expected;
        init => _expected = value;
    }
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

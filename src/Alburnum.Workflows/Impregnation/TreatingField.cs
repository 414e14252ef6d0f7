using System.Globalization;
using Alburnum.Facts;
using Alburnum.Records.Charges;

namespace Alburnum.Workflows.Impregnation;

/// <summary>One thing that is said of timber to be treated: what it is called as an option and in a charge file, and the numbers allowed.</summary>
/// <param name="Option">Name as an option, for instance "--moisture".</param>
/// <param name="Range">Numbers allowed; null where it is no number.</param>
/// <param name="Key">Name in a charge file, for instance "moisture"; empty where a charge file does not say it.</param>
public sealed record TreatingField(string Option, NumberRange? Range = null, string Key = "")
{
    /// <summary>Size of the pieces.</summary>
    public static TreatingField Section { get; } = InBoth("SECTION", ChargeFields.Section);

    /// <summary>Width of the sapwood.</summary>
    public static TreatingField Sapwood { get; } = InBoth("--sapwood", ChargeFields.Sapwood);

    /// <summary>Diameter of the log under bark.</summary>
    public static TreatingField LogDiameter { get; } = new("--log-diameter", NumberRange.Within(10, 4000, "mm"));

    /// <summary>Radius of the heartwood around the pith.</summary>
    public static TreatingField HeartRadius { get; } = InBoth("--heart-radius", ChargeFields.HeartRadius);

    /// <summary>The pith, from the middle of the section.</summary>
    public static TreatingField Pith { get; } = new("--pith", NumberRange.Within(-2000, 2000, "mm"));

    /// <summary>Where in the log the piece was sawn.</summary>
    public static TreatingField Position { get; } = InBoth("--position", ChargeFields.Position);

    /// <summary>Sapwood or heartwood throughout.</summary>
    public static TreatingField All { get; } = InBoth("--all", ChargeFields.All);

    /// <summary>Moisture content before treatment.</summary>
    public static TreatingField Moisture { get; } = InBoth("--moisture", ChargeFields.Moisture);

    /// <summary>Density at 12 % moisture.</summary>
    public static TreatingField Density { get; } = new("--density", Ranges.DensityKgPerM3);

    /// <summary>Name of the schedule.</summary>
    public static TreatingField Schedule { get; } = InBoth("--schedule", ChargeFields.Schedule);

    /// <summary>Peak pressure in place of the schedule's.</summary>
    public static TreatingField Pressure { get; } = new("--pressure", Ranges.PressureKPa);

    /// <summary>Time at peak pressure in place of the schedule's.</summary>
    public static TreatingField Minutes { get; } = new("--minutes", NumberRange.Within(0.1, 1e5, "min"));

    /// <summary>Temperature of the solution.</summary>
    public static TreatingField Temperature { get; } = new("--temperature", Ranges.SolutionCelsius);

    /// <summary>Name of the incising pattern.</summary>
    public static TreatingField Incising { get; } = InBoth("--incise", ChargeFields.Incising);

    /// <summary>Required depth; at most to the middle of the piece.</summary>
    public static TreatingField Depth { get; } = InBoth("--depth", ChargeFields.Depth);

    /// <summary>Where the depth counts.</summary>
    public static TreatingField Zone { get; } = new("--in");

    /// <summary>All the sapwood must be penetrated.</summary>
    public static TreatingField WholeSapwood { get; } = new("--whole-sapwood");

    /// <summary>Depth of the analytical zone.</summary>
    public static TreatingField ZoneDepth { get; } = InBoth("--zone-depth", ChargeFields.ZoneDepth);

    /// <summary>Strength of the solution.</summary>
    public static TreatingField Strength { get; } = new("--strength", Ranges.StrengthPercent);

    /// <summary>Sampling plan.</summary>
    public static TreatingField Plan { get; } = new("--plan");

    private static TreatingField InBoth(string option, AskedField inFile) => new(option, inFile.Range, inFile.Key);

    /// <summary>What the field is called where it was written.</summary>
    /// <param name="file">Charge file that it was written in; null for an option.</param>
    public string NameIn(string? file) => file is null || Key.Length == 0 ? Option : Key;

    /// <summary>Refuses what the field says, by its name where it was written.</summary>
    /// <param name="file">Charge file that it was written in; null for an option.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    public InputRefusedException Refused(string? file, string found, string expected) =>
        new(
            file is null
                ? new InputProblem(Option, 0, "", "", found, expected)
                : new InputProblem(file, 0, "", NameIn(file), found, expected)
        );

    /// <summary>The number, where it is one of those allowed.</summary>
    /// <param name="value">The number.</param>
    /// <param name="file">Charge file that it was written in; null for an option.</param>
    /// <exception cref="InputRefusedException">It is not.</exception>
    internal double InRange(double value, string? file) =>
        Range is not { } range || range.Holds(value)
            ? value
            : throw Refused(file, value.ToString("0.###", CultureInfo.InvariantCulture), range.InWords);

    /// <summary>The same where nothing may have been said.</summary>
    internal double? InRange(double? value, string? file) => value is { } given ? InRange(given, file) : null;
}

using Alburnum.Facts;

namespace Alburnum.Records.Facts;

/// <summary>What a question about fixation may say.</summary>
public static class FixationFields
{
    /// <summary>What the timber is treated with.</summary>
    public static AskedField Preservative { get; } =
        HandlingFields.Preservative with
        {
            Option = "PRESERVATIVE",
            LeftOut = AskedField.MustBeThere,
        };

    /// <summary>Strength of the solution, % by mass.</summary>
    public static AskedField Strength { get; } =
        new()
        {
            Key = "strengthPercent",
            Help = "Strength of the solution, % by mass, as it was measured for fixation",
            Examples = "2",
            Range = Ranges.StrengthPercent,
            LeftOut = "each strength that was measured",
        };

    /// <summary>Temperature of the wood, °C.</summary>
    public static AskedField Temperature { get; } =
        new()
        {
            Key = "temperature",
            Help = "Temperature of the wood while it fixes, °C",
            Examples = "10",
            Range = Ranges.SolutionCelsius,
            Default = "15",
        };

    /// <summary>Hours since treatment.</summary>
    public static AskedField Hours { get; } =
        new()
        {
            Key = "hours",
            Help = "Hours since treatment",
            Examples = "72",
            Range = Ranges.FixationHours,
            LeftOut = "only the hours to 90, 95 and 99 % are given",
        };
}

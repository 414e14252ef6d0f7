using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Charges;

/// <summary>What can be said of timber and how it is treated, as options, in a charge file or under <c>prediction</c> and <c>charge</c> of a case: one name, one range for each.</summary>
public static class TreatmentFields
{
    /// <summary>The timber.</summary>
    public static AskedField Species { get; } =
        EnquiryFields.Species with
        {
            Option = "SPECIES",
            LeftOut = AskedField.MustBeThere,
        };

    /// <summary>Nominal section of the pieces.</summary>
    public static AskedField Section { get; } =
        EnquiryFields.Section with
        {
            Option = "SECTION",
            LeftOut = AskedField.MustBeThere,
        };

    /// <summary>Width of the sapwood, mm.</summary>
    public static AskedField Sapwood { get; } =
        new()
        {
            Key = "sapwoodMm",
            Help = "Width of the sapwood",
            Examples = "30",
            Range = Ranges.SapwoodMm,
            Default = "the middle of the species' band",
        };

    /// <summary>Diameter of the log under bark, mm.</summary>
    public static AskedField LogDiameter { get; } =
        new()
        {
            Key = "logDiameterMm",
            Help = "Diameter of the log under bark",
            Examples = "240",
            Range = Ranges.LogDiameterMm,
            Default = "the smallest that holds the piece",
        };

    /// <summary>Radius of the heartwood around the pith, mm.</summary>
    public static AskedField HeartwoodRadius { get; } =
        new()
        {
            Key = "heartwoodRadiusMm",
            Help = "Radius of the heartwood around the pith",
            Examples = "45",
            Range = Ranges.HeartwoodRadiusMm,
            LeftOut = "follows from the sapwood",
        };

    /// <summary>The pith, from the middle of the section, mm to the right and up.</summary>
    public static AskedField Pith { get; } =
        new()
        {
            Key = "pith",
            Help = "Position of the pith from the middle of the section, mm to the right and up",
            Examples = "-20,15",
            Range = Ranges.PithMm,
            Default = "the middle",
        };

    /// <summary>Where in the log the pieces were sawn.</summary>
    public static AskedField Position { get; } =
        new()
        {
            Key = "position",
            Help = "Where in the log the pieces were sawn",
            Examples = "boxed, side",
            Expected = TreatedWoodText.PositionsExpected,
            Default = "boxed; hardwood quartered",
        };

    /// <summary>Wood of one kind throughout.</summary>
    public static AskedField All { get; } =
        new()
        {
            Key = "all",
            Help = "Wood of one kind throughout",
            Examples = "sapwood, heartwood",
            Expected = TreatedWoodText.ThroughoutExpected,
            LeftOut = "the log decides",
        };

    /// <summary>Moisture content before treatment, %.</summary>
    public static AskedField Moisture { get; } = EnquiryFields.Moisture with { LeftOut = AskedField.MustBeThere };

    /// <summary>Density at 12 % moisture, kg/m³.</summary>
    public static AskedField Density { get; } =
        new()
        {
            Key = "densityKgPerM3",
            Help = "Density at 12 % moisture",
            Examples = "520",
            Range = Ranges.DensityKgPerM3,
            Default = "the species' own",
        };

    /// <summary>Name of the schedule.</summary>
    public static AskedField Schedule { get; } =
        new()
        {
            Key = "schedule",
            Help = "Schedule by name",
            Examples = "full cell",
            Expected = "a schedule",
            Default = "full cell",
        };

    /// <summary>Peak pressure in place of the schedule's, kPa absolute.</summary>
    public static AskedField Pressure { get; } =
        new()
        {
            Key = "pressure",
            Help = "Peak pressure, kPa absolute",
            Examples = "1200",
            Range = Ranges.PressureKPa,
            Default = "the schedule's",
        };

    /// <summary>Time at peak pressure in place of the schedule's, min.</summary>
    public static AskedField Minutes { get; } =
        new()
        {
            Key = "minutes",
            Help = "Minutes at peak pressure",
            Examples = "120",
            Range = Ranges.PressureMinutes,
            Default = "the schedule's",
        };

    /// <summary>Temperature of the solution, °C.</summary>
    public static AskedField Temperature { get; } =
        new()
        {
            Key = "temperature",
            Help = "Temperature of the solution, °C",
            Examples = "20",
            Range = Ranges.SolutionCelsius,
            Default = "20",
        };

    /// <summary>Temperature of the wood before treatment, °C.</summary>
    public static AskedField WoodTemperature { get; } =
        new()
        {
            Key = "woodTemperature",
            Help = "Temperature of the wood before treatment, °C",
            Examples = "20",
            Range = Ranges.SolutionCelsius,
            Default = "20",
        };

    /// <summary>Name of the incising pattern.</summary>
    public static AskedField Incising { get; } =
        new()
        {
            Key = "incising",
            Help = "Incising pattern by name",
            Examples = "usual",
            Expected = "an incising pattern",
            LeftOut = "not incised",
        };

    /// <summary>Required depth, mm; at most to the middle of the piece.</summary>
    public static AskedField Depth { get; } =
        new()
        {
            Key = "depthMm",
            Help = "Required depth",
            Examples = "20",
            Range = Ranges.DepthMm,
            LeftOut = AskedField.MustBeThere,
        };

    /// <summary>Where the depth counts.</summary>
    public static AskedField Zone { get; } =
        new()
        {
            Key = "in",
            Help = "Where the depth is required",
            Examples = "lateral, sapwood, heartwood",
            Expected = "lateral, sapwood or heartwood",
            Default = "lateral",
        };

    /// <summary>All the sapwood must be penetrated.</summary>
    public static AskedField WholeSapwood { get; } =
        new()
        {
            Key = "wholeSapwood",
            Help = "Require all the sapwood to be penetrated",
            Examples = "",
            LeftOut = "the depth decides",
        };

    /// <summary>Depth of the analytical zone, mm.</summary>
    public static AskedField ZoneDepth { get; } =
        new()
        {
            Key = "zoneDepthMm",
            Help = "Depth of the analytical zone",
            Examples = "20",
            Range = Ranges.DepthMm,
            Default = "the required depth",
        };

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public static AskedField Retention { get; } =
        new()
        {
            Key = "retentionKgPerM3",
            Help = "Product required in the analytical zone",
            Examples = "6",
            Range = Ranges.RetentionKgPerM3,
            LeftOut = AskedField.MustBeThere,
        };

    /// <summary>Strength of the solution, % of product by mass.</summary>
    public static AskedField Strength { get; } =
        new()
        {
            Key = "strengthPercent",
            Help = "Strength of the solution, % of product by mass",
            Examples = "2.5",
            Range = Ranges.StrengthPercent,
            LeftOut = "no retention is predicted",
        };

    /// <summary>Distribution coefficient of the product, L/kg.</summary>
    public static AskedField Sorption { get; } =
        new()
        {
            Key = "sorptionLPerKg",
            Help =
                "Litres of solution whose product a kilogram of oven-dry wood takes up into its walls at small strength",
            Examples = "0.5",
            Range = Ranges.SorptionLPerKg,
            LeftOut = "not known: bounds are given",
        };

    /// <summary>Most product that the walls take up, g/kg.</summary>
    public static AskedField SorptionMost { get; } =
        new()
        {
            Key = "sorptionMostGPerKg",
            Help = "Most product that the walls take up, g per kg of oven-dry wood; alone: taken on contact and kept",
            Examples = "8",
            Range = Ranges.SorptionMostGPerKg,
            LeftOut = "no limit is known",
        };

    /// <summary>Sampling plan.</summary>
    public static AskedField Plan { get; } =
        new()
        {
            Key = "plan",
            Help = "Sampling plan: cores and acceptance number",
            Examples = "20,2",
            Expected = "cores and acceptance number, such as 20,2",
            LeftOut = "no charge is judged",
        };
}

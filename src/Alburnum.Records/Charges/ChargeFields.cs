using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Records.Charges;

/// <summary>The fields of a charge file, in the order in which they are listed to people.</summary>
public static class ChargeFields
{
    /// <summary>What the charge is.</summary>
    public static AskedField Name { get; } =
        Text("name", "What the charge is", "orchard posts, charge 12", "a text", AskedField.MustBeThere);

    /// <summary>The timber.</summary>
    public static AskedField Species { get; } =
        Text("species", "Species by its common or botanical name", "Scots pine", "a species", AskedField.MustBeThere);

    /// <summary>Width of the sapwood, mm.</summary>
    public static AskedField Sapwood { get; } =
        Number("sapwoodMm", "Width of the sapwood", "30", Ranges.SapwoodMm, "the middle of the species' band");

    /// <summary>Radius of the heartwood around the pith, mm.</summary>
    public static AskedField HeartRadius { get; } =
        Number(
            "heartRadiusMm",
            "Radius of the heartwood, with the pith in the middle",
            "45",
            Ranges.SapwoodMm,
            "follows from the sapwood"
        );

    /// <summary>Where in the log the pieces were sawn.</summary>
    public static AskedField Position { get; } =
        Text(
            "position",
            "Where in the log the pieces were sawn",
            "boxed, side",
            TreatedWoodText.PositionsExpected,
            "boxed"
        );

    /// <summary>Wood of one kind throughout.</summary>
    public static AskedField All { get; } =
        Text(
            "all",
            "Wood of one kind throughout",
            "sapwood, heartwood",
            TreatedWoodText.ThroughoutExpected,
            "the log decides"
        );

    /// <summary>Moisture content now, %.</summary>
    public static AskedField Moisture { get; } =
        Number(
            "moisture",
            "Moisture content now, % of the oven-dry mass",
            "26 %",
            Ranges.MoisturePercent,
            AskedField.MustBeThere
        );

    /// <summary>Moisture content allowed before treatment, %.</summary>
    public static AskedField MoistureLimit { get; } =
        Number(
            "moistureLimit",
            "Moisture content allowed before treatment",
            "28 %",
            Ranges.MoisturePercent,
            "no drying time"
        );

    /// <summary>Temperature of the air in which the timber would dry, °C.</summary>
    public static AskedField DryingTemperature { get; } =
        Number("dryingCelsius", "Temperature of the air it would dry in", "20", Ranges.AirCelsius, "20");

    /// <summary>Relative humidity of that air, %.</summary>
    public static AskedField DryingHumidity { get; } =
        Number("dryingHumidityPercent", "Relative humidity of that air", "65", NumberRange.Within(5, 99, "%"), "65");

    /// <summary>Name of the schedule.</summary>
    public static AskedField Schedule { get; } =
        Text("schedule", "Schedule by name", "full cell", "a schedule", "full cell");

    /// <summary>Name of the incising pattern.</summary>
    public static AskedField Incising { get; } =
        Text("incising", "Incising pattern by name", "usual", "an incising pattern", "not incised");

    /// <summary>Required depth, mm.</summary>
    public static AskedField Depth { get; } =
        Number("depthMm", "Required depth", "20", Ranges.DepthMm, AskedField.MustBeThere);

    /// <summary>Depth of the analytical zone, mm.</summary>
    public static AskedField ZoneDepth { get; } =
        Number("zoneMm", "Depth of the analytical zone", "20", Ranges.DepthMm, "the required depth");

    /// <summary>Product required in the analytical zone, kg/m³.</summary>
    public static AskedField Retention { get; } =
        Number(
            "retentionKgPerM3",
            "Product required in the analytical zone",
            "6",
            Ranges.RetentionKgPerM3,
            AskedField.MustBeThere
        );

    /// <summary>Density of the working solution, kg/m³.</summary>
    public static AskedField SolutionDensity { get; } =
        Number(
            "solutionDensityKgPerM3",
            "Density of the working solution",
            "1005",
            NumberRange.Within(600, 1600, "kg/m³"),
            AskedField.MustBeThere
        );

    /// <summary>Size of the pieces in one row of <c>pieces</c>.</summary>
    public static AskedField Section { get; } =
        Text("section", "Nominal section", "75x75, round 120", SectionText.Expected, AskedField.MustBeThere);

    /// <summary>Length of the pieces in one row of <c>pieces</c>, mm.</summary>
    public static AskedField Length { get; } =
        Number("lengthMm", "Length", "1800", NumberRange.Within(50, 30_000, "mm"), AskedField.MustBeThere);

    /// <summary>Number of pieces in one row of <c>pieces</c>.</summary>
    public static AskedField Count { get; } = Number("count", "How many", "200", Ranges.Pieces, AskedField.MustBeThere);

    /// <summary>Solution in the tank before flooding, L.</summary>
    public static AskedField TankBefore { get; } =
        Volume("tankBeforeL", "Solution in the tank before flooding", "9000", AskedField.MustBeThere);

    /// <summary>Solution in the tank at the end of the pressure period, L.</summary>
    public static AskedField TankAtPeak { get; } =
        Volume("tankAtPeakL", "The same at the end of the pressure period", "3300", "no gross uptake");

    /// <summary>Free volume of the vessel around the timber, L.</summary>
    public static AskedField VesselFree { get; } =
        Volume("vesselFreeL", "Free volume of the vessel around the timber", "4600", "no gross uptake");

    /// <summary>Solution in the tank after the drip was pumped back, L.</summary>
    public static AskedField TankAfter { get; } =
        Volume("tankAfterL", "Solution in the tank after the drip was pumped back", "8060", AskedField.MustBeThere);

    /// <summary>Standard uncertainty of one tank reading, L.</summary>
    public static AskedField TankUncertainty { get; } =
        Number(
            "tankUncertaintyL",
            "Standard uncertainty of one tank reading",
            "15",
            NumberRange.Within(0, 1e5, "L"),
            "10"
        );

    /// <summary>Weight of the timber before, kg.</summary>
    public static AskedField WeightBefore { get; } = Weight("weightBeforeKg", "Weight of the timber before", "1120");

    /// <summary>Weight of the timber after, kg.</summary>
    public static AskedField WeightAfter { get; } = Weight("weightAfterKg", "Weight of the timber after", "2030");

    /// <summary>Standard uncertainty of one weighing, kg.</summary>
    public static AskedField WeightUncertainty { get; } =
        Number(
            "weightUncertaintyKg",
            "Standard uncertainty of one weighing",
            "10",
            NumberRange.Within(0, 1e5, "kg"),
            "10"
        );

    /// <summary>Strength of the solution before, % of product by mass.</summary>
    public static AskedField StrengthBefore { get; } =
        Number(
            "strengthBeforePercent",
            "Strength of the solution before, % of product by mass",
            "2.0",
            Ranges.StrengthPercent,
            AskedField.MustBeThere
        );

    /// <summary>Strength of the solution after, % of product by mass.</summary>
    public static AskedField StrengthAfter { get; } =
        Number("strengthAfterPercent", "The same after", "1.95", Ranges.StrengthPercent, "as before");

    /// <summary>What is said of the charge itself.</summary>
    public static IReadOnlyList<AskedField> OfCharge { get; } =
    [
        Name,
        Species,
        Sapwood,
        HeartRadius,
        Position,
        All,
        Moisture,
        MoistureLimit,
        DryingTemperature,
        DryingHumidity,
        Schedule,
        Incising,
        Depth,
        ZoneDepth,
        Retention,
        SolutionDensity,
    ];

    /// <summary>What the block <c>prediction</c> of a case says: how the timber lies in its log, how wet it is and how it is treated.</summary>
    public static IReadOnlyList<AskedField> OfPrediction { get; } =
    [Sapwood, HeartRadius, Position, All, Moisture, Schedule, Incising];

    /// <summary>What each row of <c>pieces</c> says.</summary>
    public static IReadOnlyList<AskedField> OfPieces { get; } = [Section, Length, Count];

    /// <summary>What is read at the vessel, under <c>readings</c>.</summary>
    public static IReadOnlyList<AskedField> OfReadings { get; } =
    [
        TankBefore,
        TankAtPeak,
        VesselFree,
        TankAfter,
        TankUncertainty,
        WeightBefore,
        WeightAfter,
        WeightUncertainty,
        StrengthBefore,
        StrengthAfter,
    ];

    /// <summary>What a case may say under <c>prediction</c>, with what follows there where it is left out.</summary>
    internal static IReadOnlyList<AskedField> OfCasePrediction => [.. OfPrediction.Select(InCase)];

    /// <summary>What a case may say under <c>charge</c>, likewise.</summary>
    internal static IReadOnlyList<AskedField> OfCaseCharge => [.. OfCharge.Select(InCase)];

    /// <summary>What each row of <c>pieces</c> under <c>charge</c> says, likewise.</summary>
    internal static IReadOnlyList<AskedField> OfCasePieces => [.. OfPieces.Select(InCase)];

    private static AskedField InCase(AskedField field) =>
        field.Key switch
        {
            "name" => field with { LeftOut = "the title of the case" },
            "species" => field with { LeftOut = "the species of the case" },
            "sapwoodMm" => field with
            {
                LeftOut = $"`statedSapwood` where the piece is round, otherwise {field.LeftOut}",
            },
            "moisture" => field with { LeftOut = "`moisture` of the case; one of the two is required" },
            "incising" => field with { LeftOut = "not incised; required with `incised: yes`" },
            "depthMm" => field with { LeftOut = "what the code requires; must be given where it requires no depth" },
            "zoneMm" => field with { LeftOut = $"the zone of the code, otherwise {field.LeftOut}" },
            "retentionKgPerM3" => field with
            {
                LeftOut = "what contract or code requires; must be given where neither gives a figure",
            },
            "section" => field with { LeftOut = "the section of the case" },
            "count" => field with { LeftOut = "the batch, if it is the only row" },
            _ => field,
        };

    private static AskedField Text(string key, string help, string examples, string expected, string leftOut) =>
        new()
        {
            Key = key,
            Help = help,
            Examples = examples,
            Expected = expected,
            LeftOut = leftOut,
        };

    private static AskedField Number(string key, string help, string example, NumberRange range, string leftOut) =>
        new()
        {
            Key = key,
            Help = help,
            Examples = example,
            Range = range,
            LeftOut = leftOut,
        };

    private static AskedField Volume(string key, string help, string example, string leftOut) =>
        Number(key, help, example, NumberRange.Within(0, 1e7, "L"), leftOut);

    private static AskedField Weight(string key, string help, string example) =>
        Number(key, help, example, NumberRange.Within(0, 1e7, "kg"), "tank alone");
}

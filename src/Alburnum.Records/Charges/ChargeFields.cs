using Alburnum.Facts;

namespace Alburnum.Records.Charges;

/// <summary>The fields of a charge file beside those of its timber, and all of them in the order in which they are listed to people.</summary>
public static class ChargeFields
{
    /// <summary>What the charge is.</summary>
    public static AskedField Name { get; } =
        Text("name", "What the charge is", "orchard posts, charge 12", "a text", AskedField.MustBeThere);

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
        Usual("dryingCelsius", "Temperature of the air it would dry in", "20", Ranges.AirCelsius, "20");

    /// <summary>Relative humidity of that air, %.</summary>
    public static AskedField DryingHumidity { get; } =
        Usual("dryingHumidityPercent", "Relative humidity of that air", "65", Ranges.HumidityPercent, "65");

    /// <summary>Density of the working solution, kg/m³.</summary>
    public static AskedField SolutionDensity { get; } =
        Number(
            "solutionDensityKgPerM3",
            "Density of the working solution",
            "1005",
            Ranges.SolutionDensityKgPerM3,
            AskedField.MustBeThere
        );

    /// <summary>Greatest strength of the working solution that the label allows, % of product by mass.</summary>
    public static AskedField StrengthMost { get; } =
        Number(
            "strengthMostPercent",
            "Greatest strength that the label allows, % of product by mass",
            "4",
            Ranges.StrengthPercent,
            "no limit is known"
        );

    /// <summary>Solution in the tank before the charge, L.</summary>
    public static AskedField Tank { get; } =
        Volume("tankL", "Solution in the tank before the charge", "9000", "the strength after the charge stays open");

    /// <summary>Length of the pieces in one row of <c>pieces</c>, mm.</summary>
    public static AskedField Length { get; } =
        Number("lengthMm", "Length", "1800", Ranges.LengthMm, AskedField.MustBeThere);

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
        Usual("tankUncertaintyL", "Standard uncertainty of one tank reading", "15", Ranges.TankUncertaintyL, "10");

    /// <summary>Weight of the timber before, kg.</summary>
    public static AskedField WeightBefore { get; } = Weight("weightBeforeKg", "Weight of the timber before", "1120");

    /// <summary>Weight of the timber after, kg.</summary>
    public static AskedField WeightAfter { get; } = Weight("weightAfterKg", "Weight of the timber after", "2030");

    /// <summary>Standard uncertainty of one weighing, kg.</summary>
    public static AskedField WeightUncertainty { get; } =
        Usual("weightUncertaintyKg", "Standard uncertainty of one weighing", "10", Ranges.WeightUncertaintyKg, "10");

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

    /// <summary>Standard uncertainty of one strength, % of product by mass.</summary>
    public static AskedField StrengthUncertainty { get; } =
        Usual(
            "strengthUncertaintyPercent",
            "Standard uncertainty of one strength, % of product by mass",
            "0.01",
            Ranges.StrengthUncertaintyPercent,
            "0.02"
        );

    /// <summary>Standard uncertainty of the solution's density, kg/m³.</summary>
    public static AskedField SolutionDensityUncertainty { get; } =
        Usual(
            "solutionDensityUncertaintyKgPerM3",
            "Standard uncertainty of the density of the solution",
            "1",
            Ranges.SolutionDensityUncertaintyKgPerM3,
            "1"
        );

    /// <summary>Standard uncertainty of the timber's volume, % of it.</summary>
    public static AskedField VolumeUncertainty { get; } =
        Usual(
            "volumeUncertaintyPercent",
            "Standard uncertainty of the volume of the timber, % of it",
            "1",
            Ranges.VolumeUncertaintyPercent,
            "1"
        );

    /// <summary>What is said of the charge itself.</summary>
    public static IReadOnlyList<AskedField> OfCharge { get; } =
    [
        Name,
        TreatmentFields.Species,
        TreatmentFields.Sapwood,
        TreatmentFields.HeartwoodRadius,
        TreatmentFields.Position,
        TreatmentFields.All,
        TreatmentFields.Density,
        TreatmentFields.Moisture,
        MoistureLimit,
        DryingTemperature,
        DryingHumidity,
        TreatmentFields.Schedule,
        TreatmentFields.Incising,
        TreatmentFields.Depth,
        TreatmentFields.ZoneDepth,
        TreatmentFields.Retention,
        SolutionDensity,
        StrengthMost,
        TreatmentFields.Sorption,
        TreatmentFields.SorptionMost,
        Tank,
    ];

    /// <summary>What the block <c>prediction</c> of a case says: how the timber lies in its log, how wet it is and how it is treated.</summary>
    public static IReadOnlyList<AskedField> OfPrediction { get; } =
    [
        TreatmentFields.Sapwood,
        TreatmentFields.HeartwoodRadius,
        TreatmentFields.Position,
        TreatmentFields.All,
        TreatmentFields.Density,
        TreatmentFields.Moisture,
        TreatmentFields.Schedule,
        TreatmentFields.Incising,
    ];

    /// <summary>What each row of <c>pieces</c> says.</summary>
    public static IReadOnlyList<AskedField> OfPieces { get; } = [TreatmentFields.Section, Length, Count];

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
        StrengthUncertainty,
        SolutionDensityUncertainty,
        VolumeUncertainty,
    ];

    /// <summary>What a case may say under <c>prediction</c>, with what follows there where it is left out.</summary>
    internal static IReadOnlyList<AskedField> OfCasePrediction => [.. OfPrediction.Select(InCase)];

    /// <summary>What a case may say under <c>charge</c>, likewise.</summary>
    internal static IReadOnlyList<AskedField> OfCaseCharge => [.. OfCharge.Select(InCase)];

    /// <summary>What each row of <c>pieces</c> under <c>charge</c> says, likewise.</summary>
    internal static IReadOnlyList<AskedField> OfCasePieces => [.. OfPieces.Select(InCase)];

    private static AskedField InCase(AskedField field) =>
        LeftOutInCase(field) is { } leftOut ? field with { Default = "", LeftOut = leftOut } : field;

    private static string? LeftOutInCase(AskedField field) =>
        field.Key switch
        {
            "name" => "the title of the case",
            "species" => "the species of the case",
            "sapwoodMm" => $"`statedSapwood` where the piece is round, otherwise {field.LeftOut}",
            "moisture" => "`moisture` of the case; one of the two is required",
            "incising" => "not incised; required with `incised: yes`",
            "depthMm" => "what the code requires; must be given where it requires no depth",
            "zoneDepthMm" => $"the zone of the code, otherwise {field.LeftOut}",
            "retentionKgPerM3" => "what contract or code requires; must be given where neither gives a figure",
            "section" => "the section of the case",
            "count" => "the batch, if it is the only row",
            _ => null,
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

    private static AskedField Usual(string key, string help, string example, NumberRange range, string usual) =>
        Number(key, help, example, range, leftOut: "") with
        {
            Default = usual,
        };

    private static AskedField Volume(string key, string help, string example, string leftOut) =>
        Number(key, help, example, Ranges.TankL, leftOut);

    private static AskedField Weight(string key, string help, string example) =>
        Number(key, help, example, Ranges.ChargeKg, "tank alone");
}

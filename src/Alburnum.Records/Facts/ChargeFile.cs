using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>One size of piece in a charge.</summary>
/// <param name="Section">Size.</param>
/// <param name="LengthMm">Length, mm.</param>
/// <param name="Count">How many.</param>
public sealed record ChargePieces(Section Section, double LengthMm, int Count);

/// <summary>A charge as a treater writes it down.</summary>
/// <param name="Name">What the charge is.</param>
/// <param name="Species">Species, by any name.</param>
/// <param name="Pieces">What is on the bogie.</param>
/// <param name="HeartRadiusMm">Radius of the heartwood, mm; null where not said.</param>
/// <param name="SapwoodMm">Width of the sapwood, mm; null where not said.</param>
/// <param name="Position">Where in the log it was sawn; null where not said.</param>
/// <param name="All">Wood of one kind throughout; null where not said.</param>
/// <param name="MoisturePercent">Moisture content now, %.</param>
/// <param name="MoistureLimitPercent">Moisture content allowed before treatment, %; null where none is set.</param>
/// <param name="DryingCelsius">Temperature of the air the timber would dry in, °C.</param>
/// <param name="DryingHumidity">Relative humidity of that air, 0 to 1.</param>
/// <param name="Schedule">Name of the schedule.</param>
/// <param name="Incising">Name of the incising pattern; null where the timber is plain.</param>
/// <param name="DepthMm">Depth asked for, mm; also the analytical zone's where that is not said.</param>
/// <param name="ZoneMm">Depth of the analytical zone, mm; null to take the depth asked for.</param>
/// <param name="RetentionKgPerM3">Product required in the zone, kg/m³.</param>
/// <param name="SolutionDensityKgPerM3">Density of the working solution, kg/m³.</param>
/// <param name="Readings">What was read afterwards; null before the charge is run.</param>
public sealed record ChargeOrder(
    string Name,
    string Species,
    IReadOnlyList<ChargePieces> Pieces,
    double? HeartRadiusMm,
    double? SapwoodMm,
    SawingPosition? Position,
    WoodThroughout? All,
    double MoisturePercent,
    double? MoistureLimitPercent,
    double DryingCelsius,
    double DryingHumidity,
    string Schedule,
    string? Incising,
    double DepthMm,
    double? ZoneMm,
    double RetentionKgPerM3,
    double SolutionDensityKgPerM3,
    Func<double, ChargeReadings>? Readings
);

/// <summary>Reads a charge's file.</summary>
public static class ChargeFile
{
    /// <summary>The charge, or every problem in the file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static ChargeOrder Read(string path)
    {
        if (!File.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "no such file", "a charge file"));
        var problems = new List<InputProblem>();
        ChargeOrder? order = null;
        FactFile.Read(path, Path.GetFileName(path), problems, root => order = Order(root));
        return problems.Count == 0 ? order! : throw new InputRefusedException(problems);
    }

    private static ChargeOrder Order(FactRow root)
    {
        var pieces = new List<ChargePieces>();
        foreach (var row in root.Rows("pieces"))
        {
            var (text, lengthMm, count) = (
                row.Text("section"),
                row.Number("lengthMm", 50, 30_000),
                row.Whole("count", 1, 1_000_000)
            );
            if (SectionText.TryParse(text, out var section))
                pieces.Add(new(section, lengthMm, count));
            else if (text.Length > 0)
                row.Refuse("section", text, SectionText.Expected);
        }
        var density = root.Number("solutionDensityKgPerM3", 600, 1600);
        return new ChargeOrder(
            root.Text("name"),
            root.Text("species"),
            pieces,
            Optional(root, "heartRadiusMm", 0, 2000),
            Optional(root, "sapwoodMm", 0, 2000),
            root.Has("position")
                ? root.Word(
                    "position",
                    [
                        ("boxed", SawingPosition.Boxed),
                        ("halved", SawingPosition.Halved),
                        ("quartered", SawingPosition.Quartered),
                    ]
                )
                : null,
            root.Has("all")
                ? root.Word("all", [("sapwood", WoodThroughout.Sapwood), ("heartwood", WoodThroughout.Heartwood)])
                : null,
            root.Number("moisturePercent", 5, 200),
            Optional(root, "moistureLimitPercent", 5, 200),
            Optional(root, "dryingCelsius", 0, 90) ?? 20,
            (Optional(root, "dryingHumidityPercent", 5, 99) ?? 65) / 100,
            root.Has("schedule") ? root.Text("schedule") : "full cell",
            root.Has("incising") ? root.Text("incising") : null,
            root.Number("depthMm", 0.1, 1000),
            Optional(root, "zoneMm", 0.1, 1000),
            root.Number("retentionKgPerM3", 0.001, 1000),
            density,
            Readings(root, density)
        );
    }

    private static Func<double, ChargeReadings>? Readings(FactRow root, double density)
    {
        var row = root.OptionalRow("readings");
        if (row is null)
            return null;
        var before = row.Number("tankBeforeL", 0, 1e7);
        var peak = Optional(row, "tankAtPeakL", 0, 1e7);
        var free = Optional(row, "vesselFreeL", 0, 1e7);
        var after = row.Number("tankAfterL", 0, 1e7);
        var tankU = Optional(row, "tankUncertaintyL", 0, 1e5) ?? 10;
        var weightBefore = Optional(row, "weightBeforeKg", 0, 1e7);
        var weightAfter = Optional(row, "weightAfterKg", 0, 1e7);
        var weightU = Optional(row, "weightUncertaintyKg", 0, 1e5) ?? 10;
        var strength = row.Number("strengthBeforePercent", 0.01, 100);
        var strengthAfter = Optional(row, "strengthAfterPercent", 0.01, 100);
        return volume => new ChargeReadings
        {
            VolumeM3 = volume,
            TankBeforeL = before,
            TankAtPeakL = peak,
            VesselFreeL = free,
            TankAfterL = after,
            TankStandardUncertaintyL = tankU,
            WeightBeforeKg = weightBefore,
            WeightAfterKg = weightAfter,
            WeightStandardUncertaintyKg = weightU,
            StrengthBeforePercent = strength,
            StrengthAfterPercent = strengthAfter,
            SolutionDensityKgPerM3 = density,
        };
    }

    private static double? Optional(FactRow row, string field, double low, double high) =>
        row.Has(field) ? row.Number(field, low, high) : null;
}

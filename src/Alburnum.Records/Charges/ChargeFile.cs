using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Charging;
using Alburnum.Records.Facts;
using Alburnum.Timber;
using Fields = Alburnum.Records.Charges.ChargeFields;

namespace Alburnum.Records.Charges;

/// <summary>Reads a charge's file. Its fields are described in docs/how-to/plan-a-charge.md.</summary>
public static class ChargeFile
{
    private const string UsualSchedule = "full cell";
    private const double UsualDryingCelsius = 20;
    private const double UsualDryingHumidityPercent = 65;
    private const double UsualUncertainty = 10;

    /// <summary>The charge, or every problem in the file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="facts">Species, schedules and incising patterns that it may name.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public static ChargeOrder Read(string path, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (!File.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "no such file", "a charge file"));
        var name = Path.GetFileName(path);
        var problems = new List<InputProblem>();
        ChargeOrder? order = null;
        FactFile.Read(path, name, problems, root => order = Order(root, name, facts, problems));
        return problems.Count == 0 && order is not null ? order : throw new InputRefusedException(problems);
    }

    private static ChargeOrder? Order(FactRow root, string file, FactLibrary facts, List<InputProblem> problems)
    {
        var fields = FieldsOf(root, Fields.OfCharge);
        var species = fields.Named(Fields.Species, facts.Species.Find);
        var library = facts.Impregnation;
        var rows = root.Rows("pieces");
        if (rows.Count == 0 && root.Has("pieces"))
            root.Refuse("pieces", "no row", "one size of piece or more");
        var order = new ChargeOrder
        {
            File = file,
            Name = fields.Text(Fields.Name) ?? "",
            Species = species!,
            Pieces = [.. rows.Select(PiecesOf).OfType<ChargePieces>()],
            HeartRadiusMm = fields.Number(Fields.HeartRadius),
            SapwoodMm = fields.Number(Fields.Sapwood),
            Position = fields.Read(Fields.Position, PositionOf),
            All = fields.Read(Fields.All, AllOf),
            MoisturePercent = Needed(fields, Fields.Moisture),
            MoistureLimitPercent = fields.Number(Fields.MoistureLimit),
            DryingCelsius = fields.Number(Fields.DryingTemperature) ?? UsualDryingCelsius,
            DryingHumidity = (fields.Number(Fields.DryingHumidity) ?? UsualDryingHumidityPercent) / 100,
            Schedule = OneOf(fields, Fields.Schedule, library.Schedules.Select(row => row.Value.Name)) ?? UsualSchedule,
            Incising = OneOf(fields, Fields.Incising, library.Patterns.Select(row => row.Name)),
            DepthMm = Needed(fields, Fields.Depth),
            ZoneMm = fields.Number(Fields.ZoneDepth),
            RetentionKgPerM3 = Needed(fields, Fields.Retention),
            SolutionDensityKgPerM3 = Needed(fields, Fields.SolutionDensity),
        };
        if (root.OptionalRow("readings") is { } row)
            order = order with { Readings = ReadingsOf(row, order, problems) };
        return species is null ? null : order;
    }

    private static ChargePieces? PiecesOf(FactRow row)
    {
        var fields = FieldsOf(row, Fields.OfPieces);
        var section = fields.Part(Fields.Section, text => SectionText.TryParse(text, out var section) ? section : null);
        var (lengthMm, count) = (Needed(fields, Fields.Length), Needed(fields, Fields.Count));
        return section is null ? null : new(section, lengthMm, (int)count);
    }

    private static ChargeReadings ReadingsOf(FactRow row, ChargeOrder order, List<InputProblem> problems)
    {
        var fields = FieldsOf(row, Fields.OfReadings);
        var before = problems.Count;
        var readings = new ChargeReadings
        {
            VolumeM3 = order.VolumeM3,
            TankBeforeL = Needed(fields, Fields.TankBefore),
            TankAtPeakL = fields.Number(Fields.TankAtPeak),
            VesselFreeL = fields.Number(Fields.VesselFree),
            TankAfterL = Needed(fields, Fields.TankAfter),
            TankStandardUncertaintyL = fields.Number(Fields.TankUncertainty) ?? UsualUncertainty,
            WeightBeforeKg = fields.Number(Fields.WeightBefore),
            WeightAfterKg = fields.Number(Fields.WeightAfter),
            WeightStandardUncertaintyKg = fields.Number(Fields.WeightUncertainty) ?? UsualUncertainty,
            StrengthBeforePercent = Needed(fields, Fields.StrengthBefore),
            StrengthAfterPercent = fields.Number(Fields.StrengthAfter),
            SolutionDensityKgPerM3 = order.SolutionDensityKgPerM3,
        };
        // Readings are held against each other once each of them can be read.
        if (problems.Count == before && order.Pieces.Count > 0)
            foreach (var problem in ChargeAccount.Problems(readings))
                row.Refuse(problem.Field, problem.Found, problem.Expected);
        return readings;
    }

    private static RowFields FieldsOf(FactRow row, IReadOnlyList<AskedField> fields) =>
        new(row, [.. fields.Where(field => field.LeftOut == AskedField.MustBeThere)]);

    // The lowest number allowed stands in for one that was refused, so that all problems are found at once.
    private static double Needed(IFields fields, AskedField field) => fields.Number(field) ?? field.Range!.Low;

    /// <summary>A name from a list, refused with the list where it is not on it.</summary>
    private static string? OneOf(IFields fields, AskedField field, IEnumerable<string> names)
    {
        if (fields.Text(field) is not { } written)
            return null;
        var all = names.ToList();
        if (all.Find(name => string.Equals(name, written, StringComparison.OrdinalIgnoreCase)) is { } found)
            return found;
        fields.Refuse(field, written, string.Join(", ", all));
        return null;
    }

    private static SawingPosition? PositionOf(string text) =>
        text switch
        {
            "boxed" => SawingPosition.Boxed,
            "halved" => SawingPosition.Halved,
            "quartered" => SawingPosition.Quartered,
            _ => null,
        };

    private static WoodThroughout? AllOf(string text) =>
        text switch
        {
            "sapwood" => WoodThroughout.Sapwood,
            "heartwood" => WoodThroughout.Heartwood,
            _ => null,
        };
}

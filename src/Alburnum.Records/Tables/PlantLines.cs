using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Timber;
using static Alburnum.Records.Tables.PlantTable;

namespace Alburnum.Records.Tables;

/// <summary>Reads the lines of a plant's history one after another, and holds each against those before it.</summary>
/// <param name="sections">Opens a file of measured sections; null where it cannot be had, which is noted.</param>
internal sealed class PlantLines(Func<string, IReadOnlyList<MeasuredSection>?> sections)
{
    // Less is none: nothing can be learned from it.
    private static readonly NumberRange Uptake = Ranges.UptakeLPerM3 with { Low = 1 };
    private static readonly NumberRange Volume = NumberRange.Within(0.001, 10_000, "m³");
    private static readonly NumberRange Face = NumberRange.Whole(1, 4, "");

    private readonly Dictionary<string, PlantRow> _treated = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PlantRow> _uptakes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(TableLine Line, TankRow Read)>> _tanks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<MeasuredSection>?> _files = new(StringComparer.Ordinal);

    private (DateOnly Day, int Line)? _latest;

    /// <summary>What one line says: a row, or one for each place of the sections that it names.</summary>
    public IReadOnlyList<PlantRow> Read(TableLine line)
    {
        var wood = line.Text(WoodColumn);
        if (wood is not ("" or "sapwood" or "heartwood"))
            line.Refuse(WoodColumn, $"\"{wood}\"", "sapwood or heartwood");
        var row = new PlantRow
        {
            Charge = line.RequiredText(ChargeColumn),
            Piece = line.Text(DepthColumn).Length > 0 ? line.RequiredText(PieceColumn) : "",
            IsHeartwood = wood == "heartwood",
            DepthMm = line.OptionalNumber(DepthColumn, Ranges.MeasuredDepthMm),
            WayMm = line.OptionalNumber(WayColumn, Ranges.DepthMm),
            Place = PlaceOf(line),
            UptakeLPerM3 = line.OptionalNumber(UptakeColumn, Uptake),
            Tank = TankOf(line),
            Zone = ZoneOf(line),
            Section = SectionOf(line),
            Schedule = line.Text(TreatmentFields.Schedule.Column),
            PressureMinutes = line.OptionalNumber(TreatmentFields.Minutes.Column, TreatmentFields.Minutes.Range!),
            MoisturePercent = line.OptionalNumber(TreatmentFields.Moisture.Column, TreatmentFields.Moisture.Range!),
            Line = line.Line,
        };
        if (row.DepthMm > row.WayMm)
            line.Refuse(
                DepthColumn,
                $"\"{line.Text(DepthColumn)}\"",
                $"at most {WayColumn}, where the wood of that kind ends"
            );
        if (
            Array.TrueForAll(
                [DepthColumn, ReadingsColumn, UptakeColumn, TankColumn, RetentionColumn],
                column => line.Text(column).Length == 0
            )
        )
            line.Refuse(
                DepthColumn,
                "nothing",
                $"a depth with its piece, {ReadingsColumn} of measured sections, {UptakeColumn} of the charge, {TankColumn} with {AtColumn}, or {RetentionColumn} of a zone"
            );
        // A charge stands where its first line does; what came later of it may stand below.
        if (!_treated.ContainsKey(row.Charge))
            line.DayInOrder(DateColumn, ref _latest);
        IsOneTreatment(line, row);
        IsOneUptake(line, row);
        return line.Text(ReadingsColumn) is { Length: > 0 } file ? [row, .. OfSections(line, row, file)] : [row];
    }

    /// <summary>Refuses a tank that was read once in a charge: only differences tell anything.</summary>
    public void RefuseLoneReadings()
    {
        foreach (var (charge, readings) in _tanks)
            if (readings is [var (line, _)])
                line.Refuse(
                    TankColumn,
                    $"one reading of charge {charge}",
                    "two or more while the wood lies in the solution: what they differ by went into the wood"
                );
    }

    private IEnumerable<PlantRow> OfSections(TableLine line, PlantRow row, string file)
    {
        if (!_files.TryGetValue(file, out var read))
            _files.Add(file, read = sections(file));
        if (read is null)
            return [];
        if (row.DepthMm is not null)
            line.Refuse(DepthColumn, $"\"{line.Text(DepthColumn)}\"", $"nothing beside {ReadingsColumn}");
        var wanted = line.Text(PieceColumn);
        var chosen = read.Where(section => wanted.Length == 0 || section.Piece == wanted).ToList();
        if (chosen.Count == 0)
            line.Refuse(
                PieceColumn,
                $"\"{wanted}\"",
                $"one of {file}: {string.Join(", ", read.Select(section => section.Piece))}"
            );
        return chosen.SelectMany(section =>
            section.Places.Select(place =>
                row with
                {
                    // Charges may have photographs of the same name.
                    Piece = $"{file} {section.Piece}",
                    Place = (place.Face, place.AlongMm),
                    DepthMm = place.DepthMm,
                    IsHeartwood = place.SapwoodMm is { } sapwood ? sapwood <= 0 : row.IsHeartwood,
                    // Beyond the sapwood the depth says what heartwood lets through: it fills its sapwood.
                    WayMm =
                        place.SapwoodMm is > 0 and var way && way < section.Section.ThicknessMm / 2 ? way : row.WayMm,
                    Section = row.Section ?? section.Section,
                    UptakeLPerM3 = null,
                    Tank = null,
                    Zone = null,
                }
            )
        );
    }

    private static (int Face, double AlongMm)? PlaceOf(TableLine line)
    {
        var (face, position) = (
            line.OptionalNumber(FaceColumn, Face),
            line.OptionalNumber(PositionColumn, Ranges.PositionMm)
        );
        if (position is null && face is not null)
            line.Refuse(PositionColumn, "nothing", "where along the face the depth was read, mm");
        return position is { } along ? ((int)(face ?? 1), along) : null;
    }

    private TankRow? TankOf(TableLine line)
    {
        if (!HasAll(line, [AtColumn, TankColumn, TimberColumn]))
            return null;
        var read = new TankRow(
            line.Number(AtColumn, Ranges.StepMinutes),
            line.Number(TankColumn, Ranges.TankL),
            line.OptionalNumber(ChargeFields.TankUncertainty.Column, ChargeFields.TankUncertainty.Range!)
                ?? ChargeFields.TankUncertainty.DefaultNumber,
            line.Number(TimberColumn, Volume)
        );
        var charge = line.Text(ChargeColumn);
        if (!_tanks.TryGetValue(charge, out var readings))
            _tanks.Add(charge, readings = []);
        foreach (var (before, other) in readings)
        {
            if (other.AtMinutes == read.AtMinutes)
                line.Refuse(
                    AtColumn,
                    $"\"{line.Text(AtColumn)}\", already on line {before.Line}",
                    "each moment of a charge once"
                );
            if (other.TimberM3 != read.TimberM3)
                line.Refuse(
                    TimberColumn,
                    $"\"{line.Text(TimberColumn)}\"",
                    $"{InputProblem.Number(other.TimberM3)}, as on line {before.Line}: a charge has one volume"
                );
        }
        if (
            readings.Find(other => Math.Abs(other.Read.TankL - read.TankL) > Uptake.High * read.TimberM3) is
            { Line: { } far }
        )
            line.Refuse(
                TankColumn,
                $"\"{line.Text(TankColumn)}\"",
                $"within {InputProblem.Number(Uptake.High * read.TimberM3)} L, the volume of the timber, of line {far.Line}"
            );
        readings.Add((line, read));
        return read;
    }

    private static ZoneRow? ZoneOf(TableLine line)
    {
        if (!HasAll(line, [FromColumn, ToColumn, RetentionColumn]))
            return null;
        var zone = new ZoneRow(
            line.Number(FromColumn, Ranges.MeasuredDepthMm),
            line.Number(ToColumn, Ranges.DepthMm),
            line.Number(RetentionColumn, Ranges.MeasuredRetentionKgPerM3),
            line.OptionalNumber(RetentionUColumn, Ranges.MeasuredRetentionKgPerM3) ?? 0,
            line.OptionalNumber(TreatmentFields.Strength.Column, TreatmentFields.Strength.Range!)
        );
        if (zone.ToMm <= zone.FromMm)
            line.Refuse(ToColumn, $"\"{line.Text(ToColumn)}\"", $"more than {FromColumn}, where the zone begins");
        return zone;
    }

    // What belongs together stands together.
    private static bool HasAll(TableLine line, string[] columns)
    {
        string[] missing = [.. columns.Where(column => line.Text(column).Length == 0)];
        if (missing.Length == 0)
            return true;
        if (missing.Length < columns.Length)
            line.Refuse(missing[0], "nothing", $"{string.Join(", ", columns)} together");
        return false;
    }

    private void IsOneUptake(TableLine line, PlantRow row)
    {
        if (row.UptakeLPerM3 is not { } uptake || _uptakes.TryAdd(row.Charge, row))
            return;
        if (_uptakes[row.Charge] is { UptakeLPerM3: var before, Line: var at } && before != uptake)
            line.Refuse(
                UptakeColumn,
                $"\"{line.Text(UptakeColumn)}\"",
                $"{InputProblem.Number(before!.Value)}, as on line {at}: a charge has one uptake"
            );
    }

    // What was done to the vessel was done to the whole charge.
    private void IsOneTreatment(TableLine line, PlantRow row)
    {
        if (_treated.TryAdd(row.Charge, row))
            return;
        var first = _treated[row.Charge];
        foreach (
            var (field, isSame) in new[]
            {
                (
                    TreatmentFields.Schedule,
                    string.Equals(row.Schedule, first.Schedule, StringComparison.OrdinalIgnoreCase)
                ),
                (TreatmentFields.Minutes, row.PressureMinutes == first.PressureMinutes),
            }
        )
            if (!isSame)
                line.Refuse(
                    field.Column,
                    $"\"{line.Text(field.Column)}\"",
                    $"the same as on line {first.Line}: a charge has one treatment"
                );
    }

    private static Section? SectionOf(TableLine line)
    {
        var text = line.Text(TreatmentFields.Section.Column);
        if (text.Length == 0)
            return null;
        if (SectionText.TryParse(text, out var section))
            return section;
        line.Refuse(TreatmentFields.Section.Column, $"\"{text}\"", SectionText.Expected);
        return null;
    }
}

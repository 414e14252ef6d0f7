using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>One line of a plant's history: a depth measured on a piece of a charge, the charge's uptake, or both.</summary>
public sealed record PlantRow
{
    /// <summary>The charge.</summary>
    public required string Charge { get; init; }

    /// <summary>The piece within it; empty where no depth stands here.</summary>
    public string Piece { get; init; } = "";

    /// <summary>True where the depth was read in heartwood.</summary>
    public bool IsHeartwood { get; init; }

    /// <summary>Depth, mm; 0 where nothing was reached, null where none was measured.</summary>
    public double? DepthMm { get; init; }

    /// <summary>Depth at which the wood of that kind, or half the piece, ends, mm; null to take half the thickness.</summary>
    public double? WayMm { get; init; }

    /// <summary>Net uptake of the charge, L/m³; null where it does not stand here.</summary>
    public double? UptakeLPerM3 { get; init; }

    /// <summary>Section of the piece, or of the charge's pieces; null to take the one asked about.</summary>
    public Section? Section { get; init; }

    /// <summary>Schedule of the charge; empty to take the one asked about.</summary>
    public string Schedule { get; init; } = "";

    /// <summary>Minutes at peak pressure; null to take those of the schedule.</summary>
    public double? PressureMinutes { get; init; }

    /// <summary>Moisture content before treatment, %; null to take the one asked about.</summary>
    public double? MoisturePercent { get; init; }

    /// <summary>Line of the table, from 1.</summary>
    public required int Line { get; init; }
}

/// <summary>What a plant measured of its own charges.</summary>
/// <param name="File">The table that it was read from.</param>
/// <param name="Rows">Each line, oldest charge first; one or more.</param>
public sealed record PlantRecord(string File, IReadOnlyList<PlantRow> Rows)
{
    /// <summary>Refuses a line that does not fit what is asked.</summary>
    /// <param name="row">The line.</param>
    /// <param name="column">Column that is wrong.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    public InputRefusedException Refused(PlantRow row, string column, string found, string expected)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new(new InputProblem(File, row.Line, "", column, found, expected));
    }
}

/// <summary>Reads what a plant measured of its own charges, oldest first: <c>charge</c>, with <c>piece</c> and <c>depth_mm</c>, or <c>uptake_l_per_m3</c>, and how it was treated where that differs.</summary>
public static class PlantTable
{
    /// <summary>Column of the charge.</summary>
    public const string ChargeColumn = "charge";

    /// <summary>Column of the depths.</summary>
    public const string DepthColumn = "depth_mm";

    /// <summary>Column of the uptakes.</summary>
    public const string UptakeColumn = "uptake_l_per_m3";

    private const string PieceColumn = "piece";
    private const string ZoneColumn = "zone";
    private const string WayColumn = "way_mm";

    // Less is none: nothing can be learned from it.
    private static readonly NumberRange Uptake = Ranges.UptakeLPerM3 with { Low = 1 };

    private static readonly string[] Optional =
    [
        PieceColumn,
        DepthColumn,
        ZoneColumn,
        WayColumn,
        UptakeColumn,
        TreatmentFields.Section.Column,
        TreatmentFields.Schedule.Column,
        TreatmentFields.Minutes.Column,
        TreatmentFields.Moisture.Column,
        "date",
    ];

    /// <summary>Every line of the file.</summary>
    /// <param name="path">Path of the file, CSV or .xlsx.</param>
    /// <exception cref="InputRefusedException">The file is missing, empty or says something that cannot be.</exception>
    public static PlantRecord Read(string path)
    {
        List<InputProblem> problems = [];
        var table = Table.Open(path, null);
        Dictionary<string, PlantRow> treated = new(StringComparer.Ordinal);
        Dictionary<string, PlantRow> uptakes = new(StringComparer.Ordinal);
        var rows = TableLine.ReadAll(
            table,
            [ChargeColumn],
            Optional,
            problems,
            line => Row(line, treated, uptakes),
            "charges"
        );
        return problems.Count == 0 ? new(table.Name, rows) : throw new InputRefusedException(problems);
    }

    private static PlantRow Row(
        TableLine line,
        Dictionary<string, PlantRow> treated,
        Dictionary<string, PlantRow> uptakes
    )
    {
        var zone = line.Text(ZoneColumn);
        if (zone is not ("" or "sapwood" or "heartwood"))
            line.Refuse(ZoneColumn, $"\"{zone}\"", "sapwood or heartwood");
        var (depth, way) = (
            line.OptionalNumber(DepthColumn, Ranges.MeasuredDepthMm),
            line.OptionalNumber(WayColumn, Ranges.DepthMm)
        );
        if (depth > way)
            line.Refuse(
                DepthColumn,
                $"\"{line.Text(DepthColumn)}\"",
                $"at most {WayColumn}, where the wood of that kind ends"
            );
        var row = new PlantRow
        {
            Charge = line.RequiredText(ChargeColumn),
            Piece = line.Text(DepthColumn).Length > 0 ? line.RequiredText(PieceColumn) : "",
            IsHeartwood = zone == "heartwood",
            DepthMm = depth,
            WayMm = way,
            UptakeLPerM3 = line.OptionalNumber(UptakeColumn, Uptake),
            Section = SectionOf(line),
            Schedule = line.Text(TreatmentFields.Schedule.Column),
            PressureMinutes = line.OptionalNumber(TreatmentFields.Minutes.Column, TreatmentFields.Minutes.Range!),
            MoisturePercent = line.OptionalNumber(TreatmentFields.Moisture.Column, TreatmentFields.Moisture.Range!),
            Line = line.Line,
        };
        if (line.Text(DepthColumn).Length == 0 && line.Text(UptakeColumn).Length == 0)
            line.Refuse(DepthColumn, "nothing", $"a depth with its piece, or {UptakeColumn} of the charge");
        IsOneTreatment(line, row, treated);
        if (row.UptakeLPerM3 is { } uptake && !uptakes.TryAdd(row.Charge, row))
            if (uptakes[row.Charge] is { UptakeLPerM3: var before, Line: var at } && before != uptake)
                line.Refuse(
                    UptakeColumn,
                    $"\"{line.Text(UptakeColumn)}\"",
                    $"{InputProblem.Number(before!.Value)}, as on line {at}: a charge has one uptake"
                );
        return row;
    }

    // What was done to the vessel was done to the whole charge.
    private static void IsOneTreatment(TableLine line, PlantRow row, Dictionary<string, PlantRow> treated)
    {
        if (treated.TryAdd(row.Charge, row))
            return;
        var first = treated[row.Charge];
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

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

    /// <summary>Where on a measured section the depth was read; null where it is a depth by itself.</summary>
    public (int Face, double AlongMm)? Place { get; init; }

    /// <summary>What the tank read while the wood lay in the solution; null where it does not stand here.</summary>
    public TankRow? Tank { get; init; }

    /// <summary>The assay of a zone; null where it does not stand here.</summary>
    public ZoneRow? Zone { get; init; }

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

/// <summary>What the tank read at a moment.</summary>
/// <param name="AtMinutes">Since the schedule began, min.</param>
/// <param name="TankL">Solution in the tank, L.</param>
/// <param name="UncertaintyL">Standard uncertainty of the reading, L.</param>
/// <param name="TimberM3">Timber of the charge, m³.</param>
public sealed record TankRow(double AtMinutes, double TankL, double UncertaintyL, double TimberM3);

/// <summary>What an assay found in one zone of a charge's pieces.</summary>
/// <param name="FromMm">Where the zone begins, mm from the face.</param>
/// <param name="ToMm">Where it ends, mm.</param>
/// <param name="KgPerM3">Product, kg per m³ of the zone.</param>
/// <param name="UKgPerM3">Its standard uncertainty, kg/m³; 0 where the laboratory states none.</param>
/// <param name="StrengthPercent">Strength of the charge's solution, % of product by mass; null to take the one asked about.</param>
public sealed record ZoneRow(double FromMm, double ToMm, double KgPerM3, double UKgPerM3, double? StrengthPercent);

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

/// <summary>
/// Reads what a plant measured of its own charges, oldest first: <c>charge</c>, with <c>piece</c> and <c>depth_mm</c>, <c>readings</c> of measured sections, <c>uptake_l_per_m3</c>,
/// <c>at_minutes</c> and <c>tank_l</c>, or <c>from_mm</c>, <c>to_mm</c> and <c>retention_kg_per_m3</c>, and how it was treated where that differs.
/// </summary>
public static class PlantTable
{
    /// <summary>Column of the charge.</summary>
    public const string ChargeColumn = "charge";

    /// <summary>Column of the depths.</summary>
    public const string DepthColumn = "depth_mm";

    /// <summary>Column of the uptakes.</summary>
    public const string UptakeColumn = "uptake_l_per_m3";

    /// <summary>Column of the moments at which the tank was read.</summary>
    public const string AtColumn = "at_minutes";

    /// <summary>Column of what the tank read.</summary>
    public const string TankColumn = "tank_l";

    /// <summary>Column of where a zone begins.</summary>
    public const string FromColumn = "from_mm";

    /// <summary>Column of where a zone ends.</summary>
    public const string ToColumn = "to_mm";

    /// <summary>Column of what the laboratory found in a zone.</summary>
    public const string RetentionColumn = "retention_kg_per_m3";

    internal const string DateColumn = "date";
    internal const string PieceColumn = "piece";
    internal const string WoodColumn = "zone";
    internal const string WayColumn = "way_mm";
    internal const string FaceColumn = "face";
    internal const string PositionColumn = "position_mm";
    internal const string ReadingsColumn = "readings";
    internal const string TimberColumn = "timber_m3";
    internal const string RetentionUColumn = "u_kg_per_m3";

    private static readonly string[] Optional =
    [
        PieceColumn,
        DepthColumn,
        WoodColumn,
        WayColumn,
        FaceColumn,
        PositionColumn,
        ReadingsColumn,
        UptakeColumn,
        AtColumn,
        TankColumn,
        ChargeFields.TankUncertainty.Column,
        TimberColumn,
        FromColumn,
        ToColumn,
        RetentionColumn,
        RetentionUColumn,
        TreatmentFields.Strength.Column,
        TreatmentFields.Section.Column,
        TreatmentFields.Schedule.Column,
        TreatmentFields.Minutes.Column,
        TreatmentFields.Moisture.Column,
        DateColumn,
    ];

    /// <summary>Every line of the file. Files that it names lie beside it.</summary>
    /// <param name="path">Path of the file, CSV or .xlsx.</param>
    /// <exception cref="InputRefusedException">The file is missing, empty or says something that cannot be.</exception>
    public static PlantRecord Read(string path)
    {
        var folder = Path.GetDirectoryName(path) ?? "";
        List<InputProblem> problems = [];
        var record = Read(
            Table.Open(path, null),
            file =>
            {
                var beside = Path.Combine(folder, file);
                return MeasuredSections.Read(beside, PlainFile.Bytes(beside, beside, MeasuredSections.Expected));
            },
            problems
        );
        return problems.Count == 0 ? record : throw new InputRefusedException(problems);
    }

    /// <summary>Every line of a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="sections">Opens a file of measured sections; null where it cannot be had, which is noted.</param>
    /// <param name="problems">Gains what is wrong.</param>
    /// <returns>Not to be used where problems were noted.</returns>
    internal static PlantRecord Read(
        Table table,
        Func<string, IReadOnlyList<MeasuredSection>?> sections,
        List<InputProblem> problems
    )
    {
        PlantLines lines = new(sections);
        var rows = TableLine.ReadAll(table, [ChargeColumn], Optional, problems, lines.Read, "charges");
        lines.RefuseLoneReadings();
        return new(table.Name, [.. rows.SelectMany(row => row)]);
    }
}

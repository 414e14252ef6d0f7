using Alburnum.Facts;

namespace Alburnum.Records.Tables;

/// <summary>One depth measured on a piece of a plant's own charge.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="Piece">The piece within it.</param>
/// <param name="IsHeartwood">True where the depth was read in heartwood.</param>
/// <param name="DepthMm">Depth, mm; 0 where nothing was reached.</param>
/// <param name="WayMm">Depth at which the wood of that kind, or half the piece, ends, mm; null to take half the thickness.</param>
/// <param name="Schedule">Schedule of the charge; empty to take the one asked about.</param>
/// <param name="Line">Line of the table, from 1.</param>
public sealed record DepthRecord(
    string Charge,
    string Piece,
    bool IsHeartwood,
    double DepthMm,
    double? WayMm,
    string Schedule,
    int Line
);

/// <summary>Depths measured on a plant's own charges.</summary>
/// <param name="File">The table that they were read from.</param>
/// <param name="Records">Each depth; one or more.</param>
public sealed record PlantDepths(string File, IReadOnlyList<DepthRecord> Records)
{
    /// <summary>Refuses a depth that does not fit what is asked.</summary>
    /// <param name="record">The depth.</param>
    /// <param name="column">Column that is wrong.</param>
    /// <param name="found">What stands there.</param>
    /// <param name="expected">What should stand there.</param>
    public InputRefusedException Refused(DepthRecord record, string column, string found, string expected)
    {
        ArgumentNullException.ThrowIfNull(record);
        return new(new InputProblem(File, record.Line, "", column, found, expected));
    }
}

/// <summary>Reads depths from a plant's own charges: columns charge, piece and depth_mm; zone, way_mm and schedule where wanted.</summary>
public static class DepthRecordTable
{
    /// <summary>Every depth of the file.</summary>
    /// <param name="path">Path of the file, CSV or .xlsx.</param>
    /// <exception cref="InputRefusedException">The file is missing, empty or says something that cannot be.</exception>
    public static PlantDepths Read(string path)
    {
        List<InputProblem> problems = [];
        var table = Table.Open(path, null);
        var records = TableLine.ReadAll(
            table,
            ["charge", "piece", "depth_mm"],
            ["zone", "way_mm", "schedule"],
            problems,
            Record,
            "depths"
        );
        return problems.Count == 0 ? new(table.Name, records) : throw new InputRefusedException(problems);
    }

    private static DepthRecord Record(TableLine line)
    {
        var zone = line.Text("zone");
        if (zone is not ("" or "sapwood" or "heartwood"))
            line.Refuse("zone", $"\"{zone}\"", "sapwood or heartwood");
        var (depth, way) = (
            line.Number("depth_mm", Ranges.MeasuredDepthMm),
            line.OptionalNumber("way_mm", Ranges.DepthMm)
        );
        if (depth > way)
            line.Refuse("depth_mm", $"\"{line.Text("depth_mm")}\"", "at most way_mm, where the wood of that kind ends");
        return new(
            line.RequiredText("charge"),
            line.RequiredText("piece"),
            zone == "heartwood",
            depth,
            way,
            line.Text("schedule"),
            line.Line
        );
    }
}

using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>Results of the pieces cut from one batch: already judged, or as depths still to be judged.</summary>
public abstract record BatchResults;

/// <summary>Pieces that somebody has judged.</summary>
/// <param name="Pieces">Number of each piece and whether it passed; null where it was not determined.</param>
public sealed record JudgedPieces(IReadOnlyList<(string Piece, bool? Passed)> Pieces) : BatchResults;

/// <summary>Pieces with their depths.</summary>
/// <param name="Pieces">Number of each piece and its readings.</param>
public sealed record MeasuredPieces(IReadOnlyList<(string Piece, IReadOnlyList<HandReading> Readings)> Pieces)
    : BatchResults;

/// <summary>
/// Reads a table of results. With the columns <c>piece, result</c> the pieces are already judged (pass, fail, not determined); with
/// <c>piece, face, position_mm, depth_mm, u_mm</c> and, where known, <c>sapwood_mm</c> they are to be judged.
/// </summary>
public static class ResultTable
{
    private static readonly string[] DepthColumns = ["piece", "face", "position_mm", "depth_mm", "u_mm"];

    /// <summary>Reads a table.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="section">Nominal section of the pieces; null where it was not stated (no depths can be read then).</param>
    /// <exception cref="InputRefusedException">Anything is missing or wrong; carries every problem found.</exception>
    public static BatchResults Read(string path, Section? section)
    {
        var problems = new List<InputProblem>();
        BatchResults results = HasResults(path) ? Judged(path, problems) : Measured(path, section, problems);
        return problems.Count == 0 ? results : throw new InputRefusedException(problems);
    }

    private static bool HasResults(string path) =>
        File.Exists(path)
        && (File.ReadLines(path).FirstOrDefault() ?? "")
            .Split(',')
            .Any(column => string.Equals(column.Trim(' ', '"', '\uFEFF'), "result", StringComparison.Ordinal));

    private static JudgedPieces Judged(string path, List<InputProblem> problems)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var pieces = CsvTable.Read(
            path,
            path,
            ["piece", "result"],
            [],
            problems,
            line =>
            {
                var piece = line.RequiredText("piece");
                if (piece.Length > 0 && !first.TryAdd(piece, line.Line))
                    line.Refuse(
                        "piece",
                        $"\"{piece}\", which line {first[piece]} has already",
                        "a number of its own for each piece"
                    );
                return (piece, Passed(line));
            }
        );
        RequireRows(path, pieces.Count, problems);
        return new(pieces);
    }

    private static bool? Passed(CsvLine line)
    {
        var text = line.Text("result");
        switch (text)
        {
            case "pass":
                return true;
            case "fail":
                return false;
            case "not determined":
                return null;
            default:
                line.Refuse("result", text.Length > 0 ? $"\"{text}\"" : "nothing", "pass, fail or not determined");
                return null;
        }
    }

    private static MeasuredPieces Measured(string path, Section? section, List<InputProblem> problems)
    {
        if (section is null)
        {
            problems.Add(
                new InputProblem(
                    "--section",
                    0,
                    "",
                    "",
                    "nothing",
                    SectionText.Expected + ", since the table holds depths"
                )
            );
            return new([]);
        }
        var faces = section is RoundSection ? 1 : 4;
        var first = new Dictionary<(string, double, double), int>();
        var lines = CsvTable.Read(
            path,
            path,
            DepthColumns,
            ["sapwood_mm"],
            problems,
            line =>
            {
                var piece = line.RequiredText("piece");
                var face = line.Number("face", 1, faces);
                if (face != Math.Floor(face))
                    line.Refuse("face", line.Text("face"), "a whole number");
                var position = line.Number("position_mm", 0, section.PerimeterMm);
                if (!first.TryAdd((piece, face, position), line.Line))
                    line.Refuse(
                        "position_mm",
                        $"piece \"{piece}\", face {face}, {position} mm, which line {first[(piece, face, position)]} has already",
                        "a place of its own for each reading"
                    );
                var reading = new HandReading(
                    (int)face,
                    position,
                    line.Number("depth_mm", 0, section.ThicknessMm),
                    line.Number("u_mm", 0, 100),
                    line.OptionalNumber("sapwood_mm", 0, section.ThicknessMm)
                );
                return (Piece: piece, Reading: reading);
            }
        );
        RequireRows(path, lines.Count, problems);
        return new([
            .. lines
                .GroupBy(line => line.Piece, line => line.Reading, StringComparer.Ordinal)
                .Select(piece => (piece.Key, (IReadOnlyList<HandReading>)[.. piece])),
        ]);
    }

    private static void RequireRows(string path, int rows, List<InputProblem> problems)
    {
        if (rows == 0 && problems.Count == 0)
            problems.Add(new InputProblem(path, 1, "", "", "no rows", "one row or more below the column names"));
    }
}

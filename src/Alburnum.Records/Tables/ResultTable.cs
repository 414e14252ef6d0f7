using System.Globalization;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>Results of the pieces cut from one batch: already judged, or as depths still to be judged.</summary>
public abstract record BatchResults;

/// <summary>Pieces that somebody has judged.</summary>
/// <param name="Pieces">Number of each piece and whether it passed; null where it was not determined.</param>
public sealed record JudgedPieces(IReadOnlyList<(string Piece, bool? Passed)> Pieces) : BatchResults;

/// <summary>Pieces with one measured value each, to be judged by variables.</summary>
/// <param name="Measure">What was measured.</param>
/// <param name="Pieces">Number of each piece and its value.</param>
public sealed record ValuedPieces(Measure Measure, IReadOnlyList<(string Piece, CensoredReading Reading)> Pieces)
    : BatchResults;

/// <summary>Pieces with their depths.</summary>
/// <param name="Pieces">Number of each piece and its readings.</param>
public sealed record MeasuredPieces(IReadOnlyList<(string Piece, IReadOnlyList<HandReading> Readings)> Pieces)
    : BatchResults;

/// <summary>
/// Reads a table of results. With the columns <c>piece, result</c> the pieces are already judged (pass, fail, not determined); with
/// <c>piece, face, position_mm, depth_mm, u_mm</c> and, where known, <c>sapwood_mm</c> they are to be judged; with <c>piece</c> and
/// <c>retention_kg_m3</c> or <c>least_depth_mm</c> the batch is to be judged by variables.
/// </summary>
public static class ResultTable
{
    private const string ResultColumn = "result";
    private const double GreatestValue = 10_000;

    /// <summary>Measures of whole pieces that may be judged by variables.</summary>
    private static readonly (string Column, Measure Measure)[] Measures =
    [
        ("retention_kg_m3", new("retention", "kg/m³")),
        ("least_depth_mm", new("least depth", "mm")),
    ];

    private static readonly string[] DepthColumns = ["piece", "face", "position_mm", "depth_mm", "u_mm"];

    /// <summary>Reads a table.</summary>
    /// <param name="text">The table.</param>
    /// <param name="section">Nominal section of the pieces; null where it was not stated (no depths can be read then).</param>
    /// <exception cref="InputRefusedException">Anything is missing or wrong; carries every problem found.</exception>
    public static BatchResults Read(TableText text, Section? section)
    {
        var problems = new List<InputProblem>();
        var columns = text.ColumnNames();
        BatchResults results =
            columns.Contains(ResultColumn, StringComparer.Ordinal) ? Judged(text, problems)
            : MeasureIn(columns) is { } measure ? Valued(text, measure, problems)
            : Measured(text, section, problems);
        return problems.Count == 0 ? results : throw new InputRefusedException(problems);
    }

    private static JudgedPieces Judged(TableText text, List<InputProblem> problems)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var pieces = CsvTable.Read(
            text.Reader(),
            text.Name,
            ["piece", ResultColumn],
            [],
            problems,
            line => (PieceOnce(line, first), Passed(line))
        );
        RequireRows(text.Name, pieces.Count, problems);
        return new(pieces);
    }

    /// <summary>A value for each piece, which may be cut off: "&lt; 0.5" below detection, "&gt; 25" as far as could be read.</summary>
    private static ValuedPieces Valued(TableText text, Measure measure, List<InputProblem> problems)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var column = Measures.First(known => known.Measure == measure).Column;
        var pieces = CsvTable.Read(
            text.Reader(),
            text.Name,
            ["piece", column],
            [],
            problems,
            line => (PieceOnce(line, first), Cut(line, column, measure.Unit))
        );
        RequireRows(text.Name, pieces.Count, problems);
        return new(measure, pieces);
    }

    private static CensoredReading Cut(CsvLine line, string column, string unit)
    {
        var text = line.Text(column);
        var (censoring, digits) = text switch
        {
            ['<', ..] => (Censoring.AtMost, text[1..]),
            ['>', ..] => (Censoring.AtLeast, text[1..].TrimStart('=')),
            _ => (Censoring.Exact, text),
        };
        if (
            double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && value is > 0 and <= GreatestValue
        )
            return new(value, censoring);
        line.Refuse(
            column,
            text.Length > 0 ? $"\"{text}\"" : "nothing",
            $"a number above 0 in {unit}, \"<\" before a detection limit, \">\" before the depth to which could be read"
        );
        return default;
    }

    private static string PieceOnce(CsvLine line, Dictionary<string, int> first)
    {
        var piece = line.RequiredText("piece");
        if (piece.Length > 0 && !first.TryAdd(piece, line.Line))
            line.Refuse(
                "piece",
                $"\"{piece}\", which line {first[piece]} has already",
                "a number of its own for each piece"
            );
        return piece;
    }

    private static Measure? MeasureIn(IReadOnlyList<string> columns) =>
        Array.Find(Measures, known => columns.Contains(known.Column, StringComparer.Ordinal)).Measure;

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

    private static MeasuredPieces Measured(TableText text, Section? section, List<InputProblem> problems)
    {
        if (!text.ColumnNames().Intersect(DepthColumns.Skip(1), StringComparer.Ordinal).Any())
        {
            problems.Add(
                new InputProblem(
                    text.Name,
                    1,
                    "",
                    "",
                    $"the columns {string.Join(", ", text.ColumnNames())}",
                    $"piece and {ResultColumn}; or {string.Join(", ", DepthColumns)}; or piece and "
                        + string.Join(" or ", Measures.Select(known => known.Column))
                )
            );
            return new([]);
        }
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
        var first = new Dictionary<(string, double, double), int>();
        var lines = CsvTable.Read(
            text.Reader(),
            text.Name,
            DepthColumns,
            ["sapwood_mm"],
            problems,
            line =>
            {
                var piece = line.RequiredText("piece");
                var face = line.Number("face", 1, section.FaceCount);
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
        RequireRows(text.Name, lines.Count, problems);
        return new([
            .. lines
                .GroupBy(line => line.Piece, line => line.Reading, StringComparer.Ordinal)
                .Select(piece => (piece.Key, (IReadOnlyList<HandReading>)[.. piece])),
        ]);
    }

    private static void RequireRows(string name, int rows, List<InputProblem> problems)
    {
        if (rows == 0 && problems.Count == 0)
            problems.Add(new InputProblem(name, 1, "", "", "no rows", "one row or more below the column names"));
    }
}

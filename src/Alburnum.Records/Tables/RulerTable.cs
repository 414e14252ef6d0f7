using Alburnum.Facts;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Records.Tables;

/// <summary>One piece with the depths read on it with a ruler.</summary>
/// <param name="Piece">Number of the piece.</param>
/// <param name="Readings">Its readings.</param>
public sealed record RulerPiece(string Piece, IReadOnlyList<HandReading> Readings);

/// <summary>
/// Reads depths taken with a ruler, one place a line: <c>piece, face, position_mm, depth_mm, u_mm</c> and, where known, <c>sapwood_mm</c>
/// (0 where heartwood reaches the face).
/// </summary>
public static class RulerTable
{
    internal static IReadOnlyList<string> Columns { get; } = ["piece", "face", "position_mm", "depth_mm", "u_mm"];

    /// <summary>The pieces of a table, in the order in which each appears first.</summary>
    /// <param name="table">The table.</param>
    /// <param name="section">Nominal section of the pieces.</param>
    /// <param name="problems">Gains what is wrong.</param>
    /// <returns>Not to be used where problems were noted.</returns>
    public static IReadOnlyList<RulerPiece> Read(Table table, Section section, List<InputProblem> problems)
    {
        var first = new Dictionary<(string, int, double), int>();
        var lines = TableLine.ReadAll(
            table,
            Columns,
            ["sapwood_mm"],
            problems,
            line => (Piece: line.RequiredText("piece"), Reading: Reading(line, section, first))
        );
        return
        [
            .. lines
                .GroupBy(line => line.Piece, line => line.Reading, StringComparer.Ordinal)
                .Select(piece => new RulerPiece(piece.Key, [.. piece])),
        ];
    }

    private static HandReading Reading(TableLine line, Section section, Dictionary<(string, int, double), int> first)
    {
        var (piece, face) = (line.Text("piece"), line.Whole("face", NumberRange.Whole(1, section.FaceCount, "")));
        var position = line.Number("position_mm", Ranges.PositionMm with { High = section.PerimeterMm });
        if (!first.TryAdd((piece, face, position), line.Line))
            line.Refuse(
                "position_mm",
                $"piece \"{piece}\", face {face}, {position} mm, already on line {first[(piece, face, position)]}",
                "a different place for each reading"
            );
        return new(
            face,
            position,
            line.Number("depth_mm", Ranges.MeasuredDepthMm with { High = section.ThicknessMm / 2 }),
            line.Number("u_mm", Ranges.RulerUncertaintyMm),
            line.OptionalNumber("sapwood_mm", Ranges.SapwoodMm with { High = section.ThicknessMm / 2 })
        );
    }
}

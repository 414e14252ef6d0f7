using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>One photograph, what was asked of it, and what came of reading it.</summary>
public sealed record SectionReading
{
    /// <summary>Name of the file as given.</summary>
    public required string FileName { get; init; }

    /// <summary>Which of several pieces on the photograph it is; null where there is one.</summary>
    public PieceOnPhotograph? Piece { get; init; }

    /// <summary>The file's name without its folder, followed by the piece's name where there are several.</summary>
    public string Name =>
        Piece is { } piece ? $"{Path.GetFileName(FileName)} {piece.Name}" : Path.GetFileName(FileName);

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Width of the photograph as displayed upright, pixels.</summary>
    public required int WidthPx { get; init; }

    /// <summary>Height of the photograph as displayed upright, pixels.</summary>
    public required int HeightPx { get; init; }

    /// <summary>Outline measured.</summary>
    public required SectionShape Shape { get; init; }

    /// <summary>Nominal size.</summary>
    public required Section Section { get; init; }

    /// <summary>What was pointed out to the reader.</summary>
    public required PhotographMarks Marks { get; init; }

    /// <summary>Reagent for heartwood that was sprayed; null where none was.</summary>
    public HeartwoodReagent? HeartwoodReagent { get; init; }

    /// <summary>What came of it.</summary>
    public required ReadingOutcome Outcome { get; init; }
}

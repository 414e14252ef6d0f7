using Alburnum.Cases;

namespace Alburnum.Records.CaseFolders;

/// <summary>A case as it lies in a folder, read and checked: the case itself and what there is to measure.</summary>
/// <param name="Path">The folder.</param>
/// <param name="Case">The case.</param>
/// <param name="Rulebook">Name of the rulebook that governs it.</param>
/// <param name="Indicator">Key of the indicator sprayed; null to be told from the photographs.</param>
/// <param name="Photographs">A photograph for each piece read from one, in the order of the case.</param>
/// <param name="RulerReadings">Pieces read with a ruler.</param>
public sealed record CaseFolder(
    string Path,
    Case Case,
    string Rulebook,
    string? Indicator,
    IReadOnlyList<CasePhotograph> Photographs,
    IReadOnlyList<PieceEvidence> RulerReadings
);

/// <summary>A photograph of one piece's sprayed cut end.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="FileName">Name of the file within the folder.</param>
/// <param name="Bytes">The file's bytes.</param>
/// <param name="OutlinePx">Corners or rim points [x, y] in pixels, as displayed upright; null to find the section by itself.</param>
public sealed record CasePhotograph(
    string Piece,
    string FileName,
    ReadOnlyMemory<byte> Bytes,
    IReadOnlyList<(double X, double Y)>? OutlinePx
);

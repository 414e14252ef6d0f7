using Alburnum.Cases;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Records.CaseFolders;

/// <summary>A case as it lies in a folder, read and checked: the case itself and what there is to measure.</summary>
/// <param name="CaseFile">Name of its case.yaml for messages.</param>
/// <param name="Case">The case.</param>
/// <param name="Rulebook">Name of the rulebook that governs it.</param>
/// <param name="Indicator">The indicator sprayed; null to be told from the photographs.</param>
/// <param name="Photographs">A photograph for each piece read from one, in the order of the case.</param>
/// <param name="RulerReadings">Pieces read with a ruler.</param>
/// <param name="Papers">case.yaml and the tables it names: with the photographs, all that the case rests on.</param>
public sealed record CaseFolder(
    string CaseFile,
    Case Case,
    string Rulebook,
    Indicator? Indicator,
    IReadOnlyList<CasePhotograph> Photographs,
    IReadOnlyList<PieceEvidence> RulerReadings,
    IReadOnlyList<CasePaper> Papers
);

/// <summary>A file of a case that is not a photograph.</summary>
/// <param name="FileName">Name within the case.</param>
/// <param name="Bytes">The file's bytes.</param>
public sealed record CasePaper(string FileName, ReadOnlyMemory<byte> Bytes);

/// <summary>A photograph of one piece's sprayed cut end.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Line">Line of the piece in case.yaml.</param>
/// <param name="FileName">Name of the file within the folder.</param>
/// <param name="ShownName">Name of the file for messages.</param>
/// <param name="Bytes">The file's bytes.</param>
/// <param name="Marks">What is pointed out on it.</param>
/// <param name="IsIncised">Whether this piece is incised; null: as the case says.</param>
public sealed record CasePhotograph(
    string Piece,
    int Line,
    string FileName,
    string ShownName,
    ReadOnlyMemory<byte> Bytes,
    PhotographMarks Marks,
    bool? IsIncised
);

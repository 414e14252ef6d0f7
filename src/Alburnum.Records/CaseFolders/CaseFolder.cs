using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Records.Charges;
using Alburnum.Records.Marks;
using Alburnum.Records.Store;
using Alburnum.Records.Tables;
using Alburnum.Requirements;

namespace Alburnum.Records.CaseFolders;

/// <summary>A case as it lies in a folder, read and checked: the case itself and what there is to measure.</summary>
/// <param name="CaseFile">Name of its case.yaml for messages.</param>
/// <param name="Case">The case.</param>
/// <param name="Rulebook">The rulebook that governs it.</param>
/// <param name="Indicator">The indicator sprayed; null: to be detected in the photographs.</param>
/// <param name="Photographs">A photograph for each piece read from one, in the order of the case.</param>
/// <param name="LeftOut">Photographs that the case leaves out, with the reason; in the order of the case.</param>
/// <param name="RulerReadings">Pieces read with a ruler.</param>
/// <param name="Treatment">How its timber is to be treated, by which a depth is predicted; null where the case does not say.</param>
/// <param name="Charge">The charge that it is to be treated in; null where the case names none.</param>
/// <param name="Files">case.yaml and the tables it names: with the photographs, all that the case rests on.</param>
public sealed record CaseFolder(
    string CaseFile,
    EnquiredCase Case,
    Rulebook Rulebook,
    Indicator? Indicator,
    IReadOnlyList<CasePhotograph> Photographs,
    IReadOnlyList<LeftOutPhotograph> LeftOut,
    IReadOnlyList<PieceEvidence> RulerReadings,
    TreatmentOrder? Treatment,
    ChargeOrder? Charge,
    IReadOnlyList<KeptFile> Files
)
{
    /// <summary>What the plant measured of its own charges, by which the prediction is calibrated; null where the case names no history.</summary>
    public PlantRecord? Plant { get; init; }

    /// <summary>Every photograph that could be opened, those left out among them.</summary>
    public IReadOnlyList<Photograph> AllPhotographs =>
        [
            .. Photographs.Select(photograph => photograph.File),
            .. LeftOut.Select(photograph => photograph.File).OfType<Photograph>(),
        ];

    /// <summary>The record of a run of this case.</summary>
    /// <param name="runAt">When it was run, UTC.</param>
    /// <param name="verdict">What was said of it.</param>
    /// <param name="document">The result as JSON.</param>
    public CaseRecord Run(DateTime runAt, Verdict verdict, string document) =>
        new(Case.Reference, Case.Title, Case.Client, runAt, verdict, document, AllPhotographs, Files);
}

/// <summary>A photograph of one piece's sprayed cut end.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Line">Line of the piece in case.yaml.</param>
/// <param name="File">The photograph, under its name within the folder.</param>
/// <param name="ShownName">Name of the file for messages.</param>
/// <param name="Marks">What is pointed out on it.</param>
/// <param name="IsIncised">Whether this piece is incised; null: as the case says.</param>
public sealed record CasePhotograph(
    string Piece,
    int Line,
    Photograph File,
    string ShownName,
    WrittenMarks Marks,
    bool? IsIncised
)
{
    /// <summary>Name of the file within the folder.</summary>
    public string FileName => File.FileName;

    /// <summary>The file's bytes.</summary>
    public ReadOnlyMemory<byte> Bytes => File.Bytes;
}

/// <summary>A photograph that the case leaves out of its verdict.</summary>
/// <param name="FileName">Name of the file within the folder.</param>
/// <param name="Reason">Why it is left out, as the case says.</param>
/// <param name="Piece">Name of the piece that it shows; that of the file where the case does not say.</param>
/// <param name="File">The photograph; null where it could not be opened.</param>
public sealed record LeftOutPhotograph(string FileName, string Reason, string Piece, Photograph? File)
{
    /// <summary>SHA-256 of the file, 64 lower-case hexadecimal digits; null where it could not be read.</summary>
    public string? Sha256 { get; init; }
}

using Alburnum.Imaging.Reading;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports;
using Alburnum.Reports.Documents;

namespace Alburnum.Web.Marking;

/// <summary>Cases of the store, read again with other marks on a photograph. Nothing kept is changed: a case judged anew is a new run.</summary>
internal sealed class KeptCases(ICaseStore store, FactLibrary facts)
{
    /// <summary>A piece's section as the case has it.</summary>
    public async Task<KeptPiece?> PieceAsync(KeptRun run, CaseDocument document, int number, CancellationToken stop)
    {
        if (number < 1 || number > document.Pieces.Count || run.Papers.Count == 0)
            return null;
        var piece = document.Pieces[number - 1];
        if (piece.Reading is not { File: not null, Sha256: not null })
            return null;
        var files = await FilesAsync(run, document, [piece], stop);
        var folder = CaseFolderReader.Read(files, facts, facts.Indicators, piece.Name);
        return new(piece, folder);
    }

    /// <summary>Reads one photograph with some marks and judges its piece. Nothing is kept.</summary>
    /// <exception cref="InputRefusedException">The marks cannot be right.</exception>
    public PieceDocument Read(KeptPiece kept, PhotographMarks marks, CancellationToken stop)
    {
        var reading = CaseReading.Measure(kept.Photograph with { Marks = marks }, kept.Folder, facts.Indicators, stop);
        return CaseMapping.Piece(CaseReading.JudgePiece(kept.Folder, kept.Piece.Name, reading, facts), reading);
    }

    /// <summary>Runs the case again with some marks on one photograph, the others as they were. The run is not kept yet.</summary>
    /// <exception cref="InputRefusedException">The marks cannot be right.</exception>
    public async Task<CaseRecord> RunAgainAsync(
        KeptRun run,
        CaseDocument document,
        string piece,
        PhotographMarks marks,
        CancellationToken stop
    )
    {
        var files = await FilesAsync(run, document, document.Pieces, stop);
        var folder = CaseFolderReader.Read(files, facts, facts.Indicators);
        var before = document.Pieces.ToDictionary(each => each.Name, StringComparer.Ordinal);
        folder = folder with
        {
            Photographs =
            [
                .. folder.Photographs.Select(photograph =>
                    photograph with
                    {
                        Marks =
                            photograph.Piece == piece
                                ? marks
                                : MarksMapping.Back(before[photograph.Piece].Reading.Marks),
                    }
                ),
            ],
        };
        var readings = new SectionReading[folder.Photographs.Count];
        await Parallel.ForAsync(
            0,
            readings.Length,
            stop,
            (i, token) =>
            {
                readings[i] = CaseReading.Measure(folder.Photographs[i], folder, facts.Indicators, token);
                return ValueTask.CompletedTask;
            }
        );
        var judged = CaseReading.Judge(folder, readings, facts);
        var result = CaseMapping.From(
            judged.Result,
            judged.Readings,
            facts.Cautions,
            ProgramName.WithVersion,
            DateTime.UtcNow
        );
        return folder.Run(result.RunAt, result.Verdict.Verdict, CaseJson.Write(result));
    }

    private async Task<KeptFiles> FilesAsync(
        KeptRun run,
        CaseDocument document,
        IReadOnlyList<PieceDocument> pieces,
        CancellationToken stop
    )
    {
        var photographs = new List<Photograph>();
        foreach (var piece in pieces)
        {
            if (
                piece.Reading is { File: { } name, Sha256: { } sha256 }
                && await store.PhotographAsync(sha256, stop) is { } photograph
            )
                photographs.Add(photograph with { FileName = name });
        }
        return new(document.Reference, run.Papers, photographs);
    }
}

/// <summary>A piece of a kept case, ready to be read again.</summary>
/// <param name="Piece">As it was read last.</param>
/// <param name="Folder">Its case, with this piece's photograph alone.</param>
internal sealed record KeptPiece(PieceDocument Piece, CaseFolder Folder)
{
    public CasePhotograph Photograph => Folder.Photographs[0];
}

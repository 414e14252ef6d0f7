using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;
using Alburnum.Workflows.Cases;

namespace Alburnum.Web.Marking;

/// <summary>A piece of a kept case, ready to be read again.</summary>
/// <param name="Case">The case as it was kept.</param>
/// <param name="Piece">The piece as it was read last.</param>
/// <param name="Folder">Its case, with this piece's photograph alone.</param>
internal sealed record PieceToMark(KeptCase Case, KeptPiece Piece, CaseFolder Folder)
{
    /// <summary>A piece of a run by its number, from 1; null where it has no photograph that could be read again.</summary>
    public static async Task<PieceToMark?> OfAsync(
        KeptRun run,
        CaseDocument document,
        int number,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    ) =>
        document.Pieces.ElementAtOrDefault(number - 1) is { Name: var name }
        && KeptMapping.Case(run, document) is { } kept
        && kept.Pieces.FirstOrDefault(piece => piece.Name == name) is { } piece
            ? new(kept, piece, await ReadAgain.FolderAsync(kept, piece, store, facts, stop))
            : null;
}

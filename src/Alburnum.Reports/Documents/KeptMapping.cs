using Alburnum.Records.Store;
using Alburnum.Workflows.Cases;

namespace Alburnum.Reports.Documents;

/// <summary>From a run as it was kept to the case that it takes to read it again.</summary>
public static class KeptMapping
{
    /// <summary>The case of a run; null where the run is from before whole cases were kept.</summary>
    /// <param name="run">The run.</param>
    /// <param name="document">The result that it holds.</param>
    public static KeptCase? Case(KeptRun run, CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(document);
        return run.Files.Count == 0
            ? null
            : new(
                document.Reference,
                run.Files,
                [.. document.Pieces.Select(Piece).OfType<KeptPiece>()],
                [
                    .. document
                        .LeftOut.Where(photograph => photograph.Sha256 is not null)
                        .Select(photograph => new KeptPhotograph(photograph.File, photograph.Sha256!)),
                ]
            );
    }

    private static KeptPiece? Piece(PieceDocument piece) =>
        piece.Reading is { File: { } name, Sha256: { } sha256, Marks: var marks }
            ? new(piece.Name, name, sha256, MarksMapping.Written(marks))
            : null;
}

using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Marks;
using Alburnum.Records.Store;

namespace Alburnum.Workflows.Cases;

/// <summary>A case as its last run left it: all it takes to read it again.</summary>
/// <param name="Reference">Reference of the case.</param>
/// <param name="Files">case.yaml and its tables as they were read.</param>
/// <param name="Pieces">The pieces that were photographed.</param>
/// <param name="LeftOut">The photographs that were left out.</param>
public sealed record KeptCase(
    string Reference,
    IReadOnlyList<KeptFile> Files,
    IReadOnlyList<KeptPiece> Pieces,
    IReadOnlyList<KeptPhotograph> LeftOut
)
{
    /// <summary>The case with other marks on one piece's photograph.</summary>
    public KeptCase WithMarks(string piece, WrittenMarks marks) =>
        this with
        {
            Pieces = [.. Pieces.Select(each => each.Name == piece ? each with { Marks = marks } : each)],
        };

    /// <summary>The case under a rulebook that ships.</summary>
    /// <param name="rulebook">Its name.</param>
    public KeptCase Under(string rulebook) =>
        this with
        {
            Files =
            [
                .. Files.Select(file => file.FileName == CaseFolderReader.CaseFile ? Naming(file, rulebook) : file),
            ],
        };

    /// <summary>The case under a rulebook file of the user's, which lies with it from then on.</summary>
    /// <param name="rulebook">The file.</param>
    /// <exception cref="InputRefusedException">A case could not name such a file as its rulebook.</exception>
    public KeptCase Under(KeptFile rulebook)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        if (
            Path.GetExtension(rulebook.FileName) is not RulebookFile.Extension
            || rulebook.FileName is CaseFolderReader.CaseFile
        )
            throw new InputRefusedException(
                new InputProblem(
                    rulebook.FileName,
                    0,
                    "",
                    "",
                    "a file of that name",
                    $"a name that ends in {RulebookFile.Extension}, other than {CaseFolderReader.CaseFile}"
                )
            );
        var under = Under(rulebook.FileName);
        return under with { Files = [.. under.Files.Where(file => file.FileName != rulebook.FileName), rulebook] };
    }

    private static KeptFile Naming(KeptFile file, string rulebook) =>
        file with
        {
            Bytes = CaseText.UnderRulebook(file.Bytes, rulebook),
        };
}

/// <summary>A piece as its last reading left it.</summary>
/// <param name="Name">Name of the piece.</param>
/// <param name="FileName">Name of its photograph within the case.</param>
/// <param name="Sha256">SHA-256 of the photograph.</param>
/// <param name="Marks">What was pointed out on it.</param>
public sealed record KeptPiece(string Name, string FileName, string Sha256, WrittenMarks Marks);

/// <summary>A photograph that a run left out.</summary>
/// <param name="FileName">Its name within the case.</param>
/// <param name="Sha256">Its SHA-256.</param>
public sealed record KeptPhotograph(string FileName, string Sha256);

/// <summary>Reads a kept case again with other marks on a photograph, or under another rulebook. Nothing kept is changed: a case judged anew is a new run.</summary>
public static class ReadAgain
{
    /// <summary>The case of one piece, with that piece's photograph alone.</summary>
    /// <param name="kept">The case.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="store">Has its photograph.</param>
    /// <param name="facts">The facts that the case rests on.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">What was kept cannot be read any more.</exception>
    public static async Task<CaseFolder> FolderAsync(
        KeptCase kept,
        KeptPiece piece,
        ICaseStore store,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(facts);
        var files = await FilesAsync(kept with { Pieces = [piece], LeftOut = [] }, store, stop);
        return CaseFolderReader.Read(files, facts, piece.Name);
    }

    /// <summary>Reads the one photograph of a folder with some marks and judges its piece.</summary>
    /// <param name="folder">The case with that photograph alone.</param>
    /// <param name="marks">What is pointed out on it.</param>
    /// <param name="facts">The facts that the case rests on.</param>
    /// <param name="stop">Stops the reading.</param>
    /// <exception cref="InputRefusedException">The marks cannot be right.</exception>
    public static PieceReading Piece(CaseFolder folder, WrittenMarks marks, FactLibrary facts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return CaseReading.OfPiece(folder.Photographs.Single() with { Marks = marks }, folder, facts, stop);
    }

    /// <summary>Measures and judges a whole case again, every photograph with the marks given.</summary>
    /// <param name="kept">The case with the marks of each piece.</param>
    /// <param name="store">Has its photographs.</param>
    /// <param name="facts">The facts that the case rests on.</param>
    /// <param name="progress">Told of each photograph as it is finished; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The marks cannot be right.</exception>
    public static async Task<CaseReading> CaseAsync(
        KeptCase kept,
        ICaseStore store,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(facts);
        var marks = kept.Pieces.ToDictionary(piece => piece.Name, piece => piece.Marks, StringComparer.Ordinal);
        var folder = CaseFolderReader.Read(await FilesAsync(kept, store, stop), facts);
        var marked = folder.Photographs.Select(photograph => photograph with { Marks = marks[photograph.Piece] });
        return await CaseReading.OfAsync(folder with { Photographs = [.. marked] }, facts, progress, stop);
    }

    private static async Task<KeptFiles> FilesAsync(KeptCase kept, ICaseStore store, CancellationToken stop)
    {
        var photographs = new List<Photograph>();
        var names = kept
            .Pieces.Select(piece => (piece.FileName, piece.Sha256))
            .Concat(kept.LeftOut.Select(photograph => (photograph.FileName, photograph.Sha256)));
        foreach (var (fileName, sha256) in names)
        {
            if (await store.PhotographAsync(sha256, stop) is { } photograph)
                photographs.Add(photograph with { FileName = fileName });
        }
        return new(kept.Reference, kept.Files, photographs);
    }
}

using Alburnum.Imaging.Reading;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Cases;

namespace Alburnum.Reports.Documents;

/// <summary>From a photograph that a case leaves out to its document, and to rows for the sheets.</summary>
public static class LeftOutMapping
{
    /// <summary>The document.</summary>
    internal static LeftOutDocument From(LeftOutReading leftOut)
    {
        var photograph = leftOut.Photograph;
        LeftOutDocument document = new()
        {
            File = photograph.FileName,
            Sha256 = photograph.Sha256,
            Reason = photograph.Reason,
            Piece = photograph.Piece,
            InWords = CaseWords.Current.Say(leftOut),
        };
        return leftOut is LeftOutRead read
            ? document with
            {
                Reading = ReadingMapping.From(
                    read.Reading,
                    read.Piece?.Evidence.Profile ?? (read.Reading.Outcome as Read)?.Profile,
                    ReadingWords.Notes(read.Reading)
                ),
                PieceVerdict = read.Piece is { Judgement: var judgement } ? CaseMapping.Verdict(judgement) : null,
                VerdictWithIt = read.With is { Overall: var overall } ? CaseMapping.Verdict(overall) : null,
            }
            : document;
    }

    /// <summary>What would be found with all that was left out; null where that is no more than one photograph.</summary>
    public static string? Together(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        // A report kept before the sentence was written down holds the verdict alone.
        return document.WithLeftOut
            ?? (
                document.VerdictWithLeftOut is { Verdict: var verdict }
                    ? CaseWords.Current.WithAllLeftOut(verdict)
                    : null
            );
    }

    /// <summary>Every photograph of the case by piece, name of the file and SHA-256, those left out among them.</summary>
    public static IEnumerable<(string Piece, string File, string Sha256)> Photographs(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        foreach (var piece in document.Pieces)
            if (piece.Reading is { File: { } file, Sha256: { } sha256 })
                yield return (piece.Name, file, sha256);
        foreach (var leftOut in document.LeftOut)
            if (leftOut.Sha256 is { } sha256)
                yield return (CaseWords.Current.LeftOut, leftOut.File, sha256);
    }
}

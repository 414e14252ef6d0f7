using Alburnum.Cases;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;

namespace Alburnum.Workflows.Cases;

/// <summary>A photograph that a case leaves out, and what it would have changed.</summary>
/// <param name="Photograph">The photograph, and why it is left out.</param>
public abstract record LeftOutReading(LeftOutPhotograph Photograph);

/// <summary>The file could not be opened, or holds no photograph: what it would have changed is not known.</summary>
/// <param name="Photograph">The photograph, and why it is left out.</param>
public sealed record LeftOutUnread(LeftOutPhotograph Photograph) : LeftOutReading(Photograph);

/// <summary>It was read, and the case judged once more with it.</summary>
/// <param name="Photograph">The photograph, and why it is left out.</param>
/// <param name="Reading">Its reading, which may have ended without a depth.</param>
/// <param name="With">The case with it: in place of the same piece's other photograph where there is one. Null where the batch has no more pieces.</param>
public sealed record LeftOutRead(LeftOutPhotograph Photograph, SectionReading Reading, JudgedCase? With)
    : LeftOutReading(Photograph)
{
    /// <summary>The piece that it shows, with its judgement; null where the case could not be judged with it.</summary>
    public JudgedPiece? Piece => With?.Pieces.First(piece => piece.Evidence.Piece == Photograph.Piece);
}

/// <summary>A case judged with what it leaves out.</summary>
/// <param name="Each">Each photograph by itself, in the order of the case.</param>
/// <param name="Together">The case with all of them that were read; of two that show one piece, the worse. Null where that is no more than one, or more pieces than the batch has.</param>
public sealed record WithLeftOut(IReadOnlyList<LeftOutReading> Each, JudgedCase? Together)
{
    /// <summary>Judges a case once more with each photograph that it leaves out, and with all of them.</summary>
    /// <param name="judged">The case without them.</param>
    /// <param name="read">Each photograph with its reading; null where it could not be read.</param>
    internal static WithLeftOut Of(
        JudgedCase judged,
        IReadOnlyList<(LeftOutPhotograph Photograph, SectionReading? Reading)> read
    )
    {
        LeftOutReading Alone(LeftOutPhotograph photograph, SectionReading? reading) =>
            reading is null
                ? new LeftOutUnread(photograph)
                : new LeftOutRead(photograph, reading, With(judged, [Evidence(judged, photograph, reading)]));
        List<LeftOutReading> each = [.. read.Select(one => Alone(one.Photograph, one.Reading))];
        List<LeftOutRead> all = [.. each.OfType<LeftOutRead>()];
        var worst = all.GroupBy(one => one.Photograph.Piece, StringComparer.Ordinal)
            .Select(one => one.MinBy(Goodness)!);
        return new(
            each,
            all.Count > 1 ? With(judged, [.. worst.Select(one => Evidence(judged, one.Photograph, one.Reading))]) : null
        );
    }

    // A piece that fails is worse than one that is undecided; of two alike, the one less sure to pass.
    private static (int, double) Goodness(LeftOutRead read) =>
        read.Piece is { Judgement: var judgement }
            ? (
                judgement.Verdict switch
                {
                    Verdict.DoesNotConform => 0,
                    Verdict.Undecided => 1,
                    _ => 2,
                },
                judgement.Probability?.Middle ?? 0
            )
            : (0, 0);

    private static PieceEvidence Evidence(JudgedCase judged, LeftOutPhotograph photograph, SectionReading reading) =>
        CaseReading.Evidence(photograph.Piece, reading, judged.Enquired.Enquiry.IsIncised);

    private static JudgedCase? With(JudgedCase judged, IReadOnlyList<PieceEvidence> added)
    {
        var names = added.Select(piece => piece.Piece).ToHashSet(StringComparer.Ordinal);
        PieceEvidence[] pieces = [.. judged.Measured.Evidence.Where(piece => !names.Contains(piece.Piece)), .. added];
        return pieces.Length > judged.Enquired.BatchSize
            ? null
            : judged.Predicted.Measured(pieces).Judged(DecisionRule.Usual);
    }
}

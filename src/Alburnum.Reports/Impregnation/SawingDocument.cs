using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>A log cut into pieces as it is printed. Fields as in docs/json/saw.md.</summary>
public sealed record SawingDocument
{
    /// <summary>What was cut, in one line.</summary>
    public required string Title { get; init; }

    /// <summary>Required depth, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>The pieces, from the top left.</summary>
    public required IReadOnlyList<SawnPieceDocument> Pieces { get; init; }

    /// <summary>Share of all pieces that conform everywhere, 0 to 1; null where no depth is asked for.</summary>
    public required double? PieceShare { get; init; }

    /// <summary>Share of cores that conform, 0 to 1; null likewise.</summary>
    public required double? CoreShare { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One piece of a log.</summary>
public sealed record SawnPieceDocument
{
    /// <summary>Number from 1, as in the drawing.</summary>
    public required int Number { get; init; }

    /// <summary>Size.</summary>
    public required string Size { get; init; }

    /// <summary>Share of each face that is heartwood, 0 to 1: top, right, bottom, left.</summary>
    public required IReadOnlyList<double> HeartwoodOnFaces { get; init; }

    /// <summary>Share of the section that is heartwood, 0 to 1.</summary>
    public required double HeartwoodShare { get; init; }

    /// <summary>Mean depth of the middle piece.</summary>
    public required double MeanDepthMm { get; init; }

    /// <summary>Share of such pieces that conform everywhere, 0 to 1; null where no depth is asked for.</summary>
    public required double? PieceShare { get; init; }

    /// <summary>Share of their cores that conform, 0 to 1; null likewise.</summary>
    public required double? CoreShare { get; init; }
}

/// <summary>Writes a log cut into pieces down.</summary>
public static class SawingMapping
{
    /// <summary>The log as a document.</summary>
    public static SawingDocument Of(PredictedLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return new()
        {
            Title = SawingWords.Current.Title(log),
            Demand = TreatingWords.Demand(log.Asked.Prediction.Rule),
            Pieces = [.. log.Pieces.Select((piece, i) => Piece(i + 1, piece, log.Asked.Prediction.IsDepthAsked))],
            PieceShare = log.PieceShare,
            CoreShare = log.CoreShare,
            Assumptions = TreatingWords.Current.Say(log.Assumptions),
            Cautions = SawingWords.Current.Cautions(log.Asked),
        };
    }

    private static SawnPieceDocument Piece(int number, PredictedPiece predicted, bool isDepthAsked) =>
        new()
        {
            Number = number,
            Size = predicted.Piece.Section.Label,
            HeartwoodOnFaces = predicted.Piece.HeartwoodOnFace,
            HeartwoodShare = predicted.Piece.HeartwoodShare,
            MeanDepthMm = predicted.Quick.MeanMm.Middle,
            PieceShare = isDepthAsked ? predicted.Quick.PieceShare.Value : null,
            CoreShare = isDepthAsked ? predicted.Quick.CoreShare.Value : null,
        };
}

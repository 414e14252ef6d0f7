using Alburnum.Impregnation.Sawing;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a log cut into pieces, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class SawingWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static SawingWords Current => new(Wording.Current);

    /// <summary>Said on every log.</summary>
    public IReadOnlyList<string> Cautions(TreatingQuestion asked) =>
        [wording.Say("sawing.model"), .. new TreatingWords(wording).Cautions(asked)];

    /// <summary>What was cut, in one line.</summary>
    public string Title(PredictedLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return wording.Say(
            "sawing.title",
            ("log", Figures.Digits(log.LogDiameterMm, 6)),
            ("sapwood", Figures.Digits(log.SapwoodMm, 6)),
            ("pattern", Name(log.Pattern)),
            ("pieces", wording.Count("count.piece", log.Pieces.Count))
        );
    }

    /// <summary>Faces of a piece that show heartwood, with its share of each.</summary>
    /// <param name="shares">Share of each face that is heartwood, 0 to 1: top, right, bottom, left.</param>
    public string Faces(IReadOnlyList<double> shares)
    {
        string[] names =
        [
            wording.Say("sawing.top"),
            wording.Say("sawing.right"),
            wording.Say("sawing.bottom"),
            wording.Say("sawing.left"),
        ];
        var shown = names.Zip(shares).Where(face => face.Second > 0).ToList();
        return shown.Count == 0
            ? wording.Say("sawing.no-face")
            : string.Join(", ", shown.Select(face => $"{face.First} {Figures.WholePercent(face.Second, wording)}"));
    }

    /// <summary>What all pieces of a log come to.</summary>
    /// <param name="pieceShare">Share of pieces that conform everywhere, 0 to 1; null where no depth is asked for.</param>
    /// <param name="coreShare">Share of cores that conform, 0 to 1; null likewise.</param>
    public string Shares(double? pieceShare, double? coreShare) =>
        pieceShare is { } pieces && coreShare is { } cores
            ? wording.Say(
                "sawing.shares",
                ("pieces", Figures.Certainty(pieces, wording)),
                ("cores", Figures.Certainty(cores, wording))
            )
            : wording.Say("prediction.no-depth-asked");

    private string Name(CuttingPattern pattern) =>
        pattern switch
        {
            CuttingPattern.Boxed => wording.Say("sawing.boxed"),
            CuttingPattern.Halved => wording.Say("sawing.halved"),
            CuttingPattern.Quartered => wording.Say("sawing.quartered"),
            CuttingPattern.Grid => wording.Say("sawing.grid"),
            CuttingPattern.Boards => wording.Say("sawing.boards"),
            _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern."),
        };
}

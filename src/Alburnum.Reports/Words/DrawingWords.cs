using Alburnum.Impregnation.Prediction;

namespace Alburnum.Reports.Words;

/// <summary>What stands on the drawings, and what they are called, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class DrawingWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static DrawingWords Current => new(Wording.Current);

    /// <summary>Axis of an operating characteristic: probability of acceptance.</summary>
    public string Acceptance => wording.Say("drawings.acceptance");

    /// <summary>Axis of an operating characteristic: share of failing pieces.</summary>
    public string FailingShare => wording.Say("drawings.failing-share");

    /// <summary>Level of a run chart: three spreads above the baseline.</summary>
    public string SpreadsAbove => wording.Say("drawings.spreads-above");

    /// <summary>Level of a run chart: the baseline.</summary>
    public string Baseline => wording.Say("drawings.baseline");

    /// <summary>Level of a run chart: three spreads below the baseline.</summary>
    public string SpreadsBelow => wording.Say("drawings.spreads-below");

    /// <summary>Level of a run chart: the limit.</summary>
    public string Limit => wording.Say("drawings.limit");

    /// <summary>Where a run chart begins.</summary>
    public string FirstCharge => wording.Say("drawings.first-charge");

    /// <summary>What the dots of a run chart mean.</summary>
    public string Signal => wording.Say("drawings.signal");

    /// <summary>How a predicted section is read, one line each.</summary>
    public IReadOnlyList<string> PredictionLegend =>
        [
            wording.Say("drawings.prediction-reached"),
            wording.Say("drawings.prediction-lines"),
            wording.Say("drawings.prediction-dashed"),
        ];

    /// <summary>Name of the card.</summary>
    public string Card => wording.Say("drawings.card");

    /// <summary>How the card is to lie: what is printed on it.</summary>
    public string CardLevel => wording.Say("drawings.card-level");

    /// <summary>What to do with the card, step by step.</summary>
    public IReadOnlyList<string> CardSteps =>
        [
            wording.Say("drawings.card-print"),
            wording.Say("drawings.card-glue"),
            wording.Say("drawings.card-lay"),
            wording.Say("drawings.card-use"),
        ];

    /// <summary>Axis of the uptake curve: pressure.</summary>
    public string Pressure => wording.Say("drawings.pressure");

    /// <summary>Axis of the uptake curve: solution.</summary>
    public string Solution => wording.Say("drawings.solution");

    /// <summary>Axis of the uptake curve: time.</summary>
    public string Minutes => wording.Say("drawings.minutes");

    /// <summary>Name of the uptake curve.</summary>
    public string UptakeTitle => wording.Say("drawings.uptake");

    /// <summary>Name of an operating characteristic.</summary>
    public string CharacteristicTitle(string title) => wording.Say("drawings.characteristic", ("title", title));

    /// <summary>The line by which a card's print is checked.</summary>
    public string CardCheck(string length) => wording.Say("drawings.card-check", ("length", length));

    /// <summary>Where a run chart ends.</summary>
    public string LastCharge(string number) => wording.Say("drawings.last-charge", ("number", number));

    /// <summary>Name of a measured section.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="depthMm">Least and mean depth, mm; null where none could be read.</param>
    public string SectionTitle(string piece, (double Least, double Mean)? depthMm) =>
        depthMm is { } depth
            ? wording.Say(
                "drawings.section",
                ("piece", piece),
                ("least", Figures.Number(depth.Least, 1)),
                ("mean", Figures.Number(depth.Mean, 1))
            )
            : wording.Say("drawings.section-not-read", ("piece", piece));

    /// <summary>Name of what was found in a photograph.</summary>
    public string PhotographTitle(string piece) => wording.Say("drawings.photograph", ("piece", piece));

    /// <summary>Name of a predicted section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="meanMm">The mean depth predicted, mm.</param>
    public string PredictionTitle(string section, Spread meanMm) =>
        wording.Say(
            "drawings.prediction",
            ("section", section),
            ("middle", Figures.Number(meanMm.Middle, 1)),
            ("low", Figures.Number(meanMm.Low, 1)),
            ("high", Figures.Number(meanMm.High, 1))
        );

    /// <summary>How a cutting pattern is read, one line each.</summary>
    /// <param name="logMm">Diameter of the log, mm.</param>
    /// <param name="heartwoodMm">Diameter of its heartwood, mm.</param>
    public IReadOnlyList<string> SawingLegend(double logMm, double heartwoodMm) =>
        [
            wording.Say(
                "drawings.log",
                ("log", Figures.Number(logMm, 0)),
                ("heartwood", Figures.Number(heartwoodMm, 0))
            ),
            wording.Say("drawings.heartwood-faces"),
        ];

    /// <summary>Name of a cutting pattern.</summary>
    public string SawingTitle(int pieces) => wording.Say("drawings.sawing", ("pieces", Figures.Whole(pieces)));
}

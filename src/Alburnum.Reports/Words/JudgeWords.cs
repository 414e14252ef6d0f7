using Alburnum.Acceptance.Risk;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a judged batch beside its reasons.</summary>
/// <param name="wording">The language.</param>
public sealed class JudgeWords(Wording wording)
{
    private readonly AcceptanceWords _acceptance = new(wording);

    /// <summary>In the language chosen.</summary>
    public static JudgeWords Current => new(Wording.Current);

    /// <summary>What was asked of each piece.</summary>
    public string Required(string demand) => wording.Say("judging.required", ("demand", demand));

    /// <summary>How probable conformity is; null is "not determined".</summary>
    public string Probability(double? probability) =>
        wording.Say("judging.probability", ("probability", Sure(probability)));

    /// <summary>What the other reading of the same figure would have said.</summary>
    /// <param name="other">The other reading.</param>
    /// <param name="pieces">Pieces cut.</param>
    public string Say(OtherReading other, int pieces)
    {
        ArgumentNullException.ThrowIfNull(other);
        return wording.Say(
            "judging.other-reading",
            ("rule", _acceptance.Rule(other.Rule)),
            ("mayFail", Whole(other.MayFail)),
            ("pieces", Whole(pieces)),
            ("penetration", _acceptance.Penetration(other.Penetration))
        );
    }

    /// <summary>Risks of a wrong verdict on a piece, or why there are none.</summary>
    public IEnumerable<string> Say(ReadingRisks risks)
    {
        if (risks is not { Now: { } now, WithHalfTheUncertainty: { } better })
        {
            yield return wording.Say("judging.no-risks", ("pieces", Whole(PieceRisks.LeastPieces)));
            yield break;
        }
        yield return wording.Say(
            "judging.risks",
            ("margin", Rounded(now.MarginMm.Value, now.ReadingUMm, "mm")),
            ("spread", Rounded(now.MarginMm.StandardUncertainty, now.ReadingUMm, "mm")),
            ("reading", Rounded(now.ReadingUMm, now.ReadingUMm, "mm")),
            ("band", Rounded(now.GuardBandMm, now.ReadingUMm, "mm")),
            ("consumer", Sure(now.Consumer)),
            ("producer", Sure(now.Producer)),
            ("open", Sure(now.LeftOpen))
        );
        if (now.SpecificConsumer is { } fails)
            yield return wording.Say("judging.least-certain-conforming", ("probability", Sure(fails)));
        if (now.SpecificProducer is { } meets)
            yield return wording.Say("judging.least-certain-failing", ("probability", Sure(meets)));
        yield return wording.Say(
            "judging.risks-read-better",
            ("consumer", Sure(better.Consumer)),
            ("producer", Sure(better.Producer)),
            ("open", Sure(better.LeftOpen))
        );
    }

    /// <summary>What a better photograph or some more pieces would do for a verdict that is still open.</summary>
    public IEnumerable<string> Help(CountedBatch counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        return counted.SecondReadings.Select(Say).Concat(counted.MorePieces is { } more ? [Say(more)] : []);
    }

    private string Say(SecondReading reading) =>
        wording.Say(
            "judging.second-reading",
            ("piece", reading.Piece),
            ("decides", Sure(reading.Decides)),
            ("better", Sure(reading.BetterDecides))
        );

    private string Say(MorePieces more) =>
        more switch
        {
            TooFewPieces few => wording.Say(
                "judging.too-few-pieces",
                ("share", Typed(few.Share)),
                ("pieces", wording.Count("count.more-piece", few.Pieces))
            ),
            EnoughPieces enough => wording.Say(
                "judging.enough-pieces",
                ("share", Typed(enough.Share)),
                ("pieces", wording.Count("count.more-piece", enough.Pieces)),
                ("probability", Sure(enough.Probability))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(more), more, "Not a count of pieces."),
        };

    private string Sure(double? probability) => Certainty(probability, wording);
}

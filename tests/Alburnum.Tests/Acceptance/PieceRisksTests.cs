using Alburnum.Acceptance.Risk;
using Alburnum.Penetration;

namespace Alburnum.Tests.Acceptance;

public class PieceRisksTests
{
    private static Judgement Piece(double marginMm, double u) =>
        Piece(marginMm, u, MathNet.Numerics.Distributions.Normal.CDF(0, 1, marginMm / u));

    private static Judgement Piece(double marginMm, double u, double probability) =>
        new(DecisionRule.Usual.Decide(probability), ProbabilityRange.Exactly(probability), [])
        {
            MarginMm = new(marginMm, u),
        };

    private static readonly Judgement[] Pieces =
    [
        Piece(0.2, 0.4),
        Piece(1.4, 0.4),
        Piece(0.9, 0.4),
        Piece(-0.8, 0.4),
        Piece(2.1, 0.4),
        Piece(0.7, 0.4),
        Piece(1.1, 0.4),
        Piece(0.1, 0.4),
    ];

    [Fact]
    public void The_risks_agree_with_drawing_pieces_and_reading_them()
    {
        var risks = PieceRisks.Of(Pieces, DecisionRule.Usual)!;
        var random = new Random(9);
        double Gauss() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        const int draws = 400_000;
        var (consumer, producer, open) = (0, 0, 0);
        for (var i = 0; i < draws; i++)
        {
            var truth = risks.MarginMm.Value + risks.MarginMm.StandardUncertainty * Gauss();
            var verdict = Piece(truth + risks.ReadingUMm * Gauss(), risks.ReadingUMm).Verdict;
            consumer += truth < 0 && verdict == Verdict.Conforms ? 1 : 0;
            producer += truth >= 0 && verdict == Verdict.DoesNotConform ? 1 : 0;
            open += truth >= 0 && verdict == Verdict.Undecided ? 1 : 0;
        }

        Assert.Equal((double)consumer / draws, risks.Consumer, 5e-4);
        Assert.Equal((double)producer / draws, risks.Producer, 5e-4);
        Assert.Equal((double)open / draws, risks.LeftOpen, 2e-3);
    }

    [Fact]
    public void The_spread_of_the_production_is_the_scatter_less_that_of_reading()
    {
        var risks = PieceRisks.Of(Pieces, DecisionRule.Usual)!;

        // Mean and variance of the eight margins by hand: 0.7125 and 5.50875/7.
        Assert.Equal(0.7125, risks.MarginMm.Value, 1e-12);
        Assert.Equal(Math.Sqrt(5.50875 / 7 - 0.16), risks.MarginMm.StandardUncertainty, 1e-9);
        Assert.Equal(1.6448536 * 0.4, risks.GuardBandMm, 1e-6);
    }

    [Fact]
    public void Better_readings_leave_less_open_and_deceive_less()
    {
        var now = PieceRisks.Of(Pieces, DecisionRule.Usual)!;
        var better = PieceRisks.Of(Pieces, DecisionRule.Usual, 0.5)!;

        Assert.True(better.Consumer < now.Consumer);
        Assert.True(better.Producer < now.Producer);
        Assert.True(better.LeftOpen < now.LeftOpen);
    }

    [Fact]
    public void The_specific_risks_are_those_of_the_least_sure_pieces_that_were_decided()
    {
        var risks = PieceRisks.Of(Pieces, DecisionRule.Usual)!;

        Assert.Equal(1 - Piece(0.7, 0.4).Probability!.Value.Middle, risks.SpecificConsumer!.Value, 1e-12);
        Assert.Equal(Piece(-0.8, 0.4).Probability!.Value.Middle, risks.SpecificProducer!.Value, 1e-12);
    }

    [Fact]
    public void Pieces_as_alike_as_their_readings_do_not_make_a_perfect_production() =>
        Assert.True(
            PieceRisks.Of([.. Enumerable.Repeat(Piece(0.5, 0.4), 8)], DecisionRule.Usual)!.MarginMm.StandardUncertainty
                > 0.2
        );

    [Fact]
    public void Too_few_pieces_or_pieces_without_a_margin_have_no_global_risk()
    {
        Assert.Null(PieceRisks.Of(Pieces[..3], DecisionRule.Usual));
        Assert.Null(
            PieceRisks.Of(
                [.. Enumerable.Repeat(new Judgement(Verdict.Conforms, ProbabilityRange.Exactly(1), []), 8)],
                DecisionRule.Usual
            )
        );
    }
}

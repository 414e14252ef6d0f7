using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Timber;

namespace Alburnum.Reports.Tests.Documents;

public sealed class CaseMappingTests
{
    [Fact]
    public void A_piece_read_with_a_ruler_shows_its_patterns_like_a_photograph()
    {
        HandReading[] readings =
        [
            .. Enumerable
                .Range(1, 4)
                .SelectMany(face =>
                    new double[] { 7, 15, 25, 37, 50, 60, 68 }.Select(mm => new HandReading(
                        face,
                        mm,
                        face == 1 ? 0 : 10,
                        0.5,
                        null
                    ))
                ),
        ];
        var evidence = new PieceEvidence(
            "P1",
            EvidenceKind.Ruler,
            HandReadings.Profile(new RectangularSection(75, 75), readings)
        );

        var piece = CaseMapping.Piece(new(evidence, new(Verdict.DoesNotConform, null, [])), photographed: null);

        var pattern = Assert.Single(piece.Reading.Patterns);
        Assert.Equal(("cut_through_border", "worked-after"), (pattern.Kind, pattern.Letter));
    }

    [Theory]
    [InlineData(1, 0.999999)]
    [InlineData(0.9999999, 0.999999)]
    [InlineData(0.999968, 0.999968)]
    [InlineData(0, 0.000001)]
    public void No_probability_is_written_as_certain(double probability, double written)
    {
        Judgement judgement = new(Verdict.Conforms, ProbabilityRange.Exactly(probability), []);

        var verdict = CaseMapping.Verdict(judgement);
        var rule = FindingsMapping.Rule(judgement);

        Assert.Equal(
            (written, written, written),
            (verdict.Probability, verdict.ProbabilityLow, verdict.ProbabilityHigh)
        );
        Assert.Equal((written, written, written), (rule.Probability, rule.ProbabilityLow, rule.ProbabilityHigh));
    }
}

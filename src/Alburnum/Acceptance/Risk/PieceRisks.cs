using Alburnum.Penetration;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Alburnum.Acceptance.Risk;

/// <summary>How often single pieces of such a production would be judged wrongly, and how surely those in hand were judged.</summary>
/// <param name="MarginMm">Mean and spread of the pieces' true margins above the required depth, mm, as far as the readings tell.</param>
/// <param name="ReadingUMm">Standard uncertainty of a reading, mm: the pieces' root mean square.</param>
/// <param name="GuardBandMm">How far above the demand a reading must lie for "conforms", and below it for "does not conform", mm.</param>
/// <param name="Consumer">Global consumer's risk: the piece fails in truth and is said to conform.</param>
/// <param name="Producer">Global producer's risk: the piece conforms in truth and is said not to.</param>
/// <param name="LeftOpen">The piece conforms in truth and stays undecided.</param>
/// <param name="SpecificConsumer">Specific consumer's risk: the greatest of the pieces in hand that are said to conform; null where none is.</param>
/// <param name="SpecificProducer">Specific producer's risk: the greatest of the pieces in hand that are said not to; null where none is.</param>
public sealed record PieceRisks(
    Estimate MarginMm,
    double ReadingUMm,
    double GuardBandMm,
    double Consumer,
    double Producer,
    double LeftOpen,
    double? SpecificConsumer,
    double? SpecificProducer
)
{
    /// <summary>Pieces with a margin below which no spread of the production is put in figures.</summary>
    public const int LeastPieces = 4;

    /// <summary>The risks; null where fewer than <see cref="LeastPieces"/> pieces turn on one depth read with an uncertainty.</summary>
    /// <param name="pieces">The pieces' judgements.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <param name="readingFactor">Factor on the reading's uncertainty, above 0: 0.5 asks what a reading twice as good would do.</param>
    /// <remarks>
    /// Global risks of JCGM 106:2012 for a normal production, spread = scatter of the margins less that of reading. A spread that the
    /// readings cannot resolve is taken at the standard error of its square, so that few alike pieces do not make a production perfect.
    /// </remarks>
    public static PieceRisks? Of(IReadOnlyList<Judgement> pieces, DecisionRule decision, double readingFactor = 1)
    {
        Estimate[] margins =
        [
            .. pieces
                .Select(piece => piece.MarginMm)
                .OfType<Estimate>()
                .Where(margin => margin.StandardUncertainty > 0),
        ];
        if (margins.Length < LeastPieces)
            return null;
        var readingVariance = margins.Average(margin => margin.StandardUncertainty * margin.StandardUncertainty);
        var scatter = margins.Select(margin => margin.Value).Variance();
        var spread = Math.Sqrt(
            Math.Max(scatter - readingVariance, readingVariance * Math.Sqrt(2.0 / (margins.Length - 1)))
        );
        var production = new Estimate(margins.Average(margin => margin.Value), spread);
        var u = Math.Sqrt(readingVariance) * Require.Positive(readingFactor, "");
        var above = Normal.InvCDF(0, 1, Math.Min(decision.ConformsFrom, 1 - 1e-12)) * u;
        var below = -Normal.InvCDF(0, 1, Math.Max(decision.FailsUpTo, 1e-12)) * u;
        var passing = ConformityRisk.Global(production, u, 0, above);
        var failing = ConformityRisk.Global(production, u, 0, -below);
        return new(
            production,
            u,
            above,
            passing.ConsumerRisk,
            failing.ProducerRisk,
            Math.Max(0, passing.ProducerRisk - failing.ProducerRisk),
            Greatest(pieces, Verdict.Conforms, probability => 1 - probability),
            Greatest(pieces, Verdict.DoesNotConform, probability => probability)
        );
    }

    private static double? Greatest(IReadOnlyList<Judgement> pieces, Verdict verdict, Func<double, double> wrong) =>
        pieces
            .Where(piece => piece.Verdict == verdict)
            .Select(piece => piece.Probability is { } probability ? wrong(probability.Middle) : (double?)null)
            .Max();
}

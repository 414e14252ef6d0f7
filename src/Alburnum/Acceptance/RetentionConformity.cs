using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>Judges the retention of a batch: the mean of its composite assays against the required loading.</summary>
/// <remarks>
/// A composite of the analytical zones speaks for the batch mean, not for any one piece. With several assays the mean is
/// judged; its uncertainty adds the scatter of the assays to the mean assay uncertainty taken as common to all of them
/// (one laboratory, one calibration), which errs on the wide side. An assay below detection may be anything from 0 to its limit.
/// </remarks>
public static class RetentionConformity
{
    /// <summary>Judges a batch's assays.</summary>
    /// <param name="assays">Composite assays of the batch; may be empty.</param>
    /// <param name="requiredKgPerM3">Required loading in the analytical zone, kg/m³. Above 0.</param>
    /// <param name="decision">How sure one must be.</param>
    public static Judgement Judge(IReadOnlyList<Assay> assays, double requiredKgPerM3, DecisionRule decision)
    {
        Require.Positive(requiredKgPerM3, "kg/m³");
        if (assays.Count == 0)
            return new(Verdict.Undecided, null, [new AssayMissing(requiredKgPerM3)]);
        var low = Probability(assays, undetected: 0, requiredKgPerM3);
        var high = Probability(assays, undetected: 1, requiredKgPerM3);
        var (atLeast, atMost) = (decision.Decide(low.Probability), decision.Decide(high.Probability));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var probability = ProbabilityRange.Between(low.Probability, high.Probability);
        var undetected = assays.OfType<BelowDetection>().Count();
        Reason reason =
            undetected == 0
                ? new RetentionMean(assays.Count, high.Mean, requiredKgPerM3, high.Probability)
                : new BelowDetectionLimit(
                    undetected,
                    assays.Count,
                    low.Mean.Value,
                    high.Mean.Value,
                    requiredKgPerM3,
                    probability
                );
        var agreed = verdict != Verdict.Undecided || undetected == 0;
        return new(verdict, agreed ? probability : null, [reason]);
    }

    /// <summary>The mean with undetected assays put at a share of their limit, and the probability that it meets the demand.</summary>
    private static (Estimate Mean, double Probability) Probability(
        IReadOnlyList<Assay> assays,
        double undetected,
        double requiredKgPerM3
    )
    {
        Estimate[] values =
        [
            .. assays.Select(assay =>
                assay switch
                {
                    MeasuredAssay measured => measured.KgPerM3,
                    BelowDetection below => new Estimate(below.LimitKgPerM3 * undetected, 0),
                    _ => throw new ArgumentOutOfRangeException(nameof(assays), assay, "Not an assay."),
                }
            ),
        ];
        var mean = values.Average(value => value.Value);
        var common = values.Average(value => value.StandardUncertainty);
        var scatter =
            values.Length > 1
                ? values.Sum(value => (value.Value - mean) * (value.Value - mean)) / (values.Length - 1) / values.Length
                : 0;
        var u = Math.Sqrt(common * common + scatter);
        var margin = mean - requiredKgPerM3;
        return (
            new(mean, u),
            u > 0 ? Normal.CDF(0, 1, margin / u)
            : margin >= 0 ? 1
            : 0
        );
    }
}

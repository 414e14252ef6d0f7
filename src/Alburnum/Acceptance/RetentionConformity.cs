using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>Judges the retention of a batch: the mean of its composite assays against the required loading.</summary>
/// <remarks>
/// A composite of the analytical zones speaks for the batch mean, not for any one piece. With several assays the mean is
/// judged; its uncertainty adds the scatter of the assays to the mean assay uncertainty taken as common to all of them
/// (one laboratory, one calibration), which errs on the wide side. An assay below detection may be anything from 0 to its limit.
/// Laboratories are weighed by their uncertainties where they agree; where they differ by more than these allow, each is judged alone and the verdict
/// must hold for all. See docs/science/acceptance.md.
/// </remarks>
public static class RetentionConformity
{
    // Below this chance of differing as much by luck, laboratories differ.
    private const double Luck = 0.05;

    /// <summary>Judges a batch's assays.</summary>
    /// <param name="assays">Composite assays of the batch; may be empty.</param>
    /// <param name="requiredKgPerM3">Required loading in the analytical zone, kg/m³. Above 0.</param>
    /// <param name="decision">How sure one must be.</param>
    public static Judgement Judge(IReadOnlyList<Assay> assays, double requiredKgPerM3, DecisionRule decision)
    {
        Require.Positive(requiredKgPerM3, "kg/m³");
        if (assays.Count == 0)
            return new(Verdict.Undecided, null, [new AssayMissing(requiredKgPerM3)]);
        LaboratoryMean[] laboratories =
        [
            .. assays
                .GroupBy(assay => assay.Laboratory, StringComparer.Ordinal)
                .Select(group => new LaboratoryMean(group.Key, [.. group])),
        ];
        var differ = Differ(laboratories);
        List<(Estimate Low, Estimate High)> means = differ is null
            ? [Pooled(laboratories)]
            : [.. laboratories.Select(each => (each.Lowest, each.Highest))];
        var low = means.Min(mean => Probability(mean.Low, requiredKgPerM3));
        var high = means.Max(mean => Probability(mean.High, requiredKgPerM3));
        var (atLeast, atMost) = (decision.Decide(low), decision.Decide(high));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var undetected = assays.OfType<BelowDetection>().Count();
        var probability = ProbabilityRange.Between(low, high);
        List<Reason> reasons = [];
        if (differ is not null)
            reasons.Add(differ);
        else if (undetected == 0)
            reasons.Add(new RetentionMean(assays.Count, means[0].High, requiredKgPerM3, high));
        if (undetected > 0)
            reasons.Add(
                new BelowDetectionLimit(
                    undetected,
                    assays.Count,
                    means.Min(mean => mean.Low.Value),
                    means.Max(mean => mean.High.Value),
                    requiredKgPerM3,
                    probability
                )
            );
        var agreed = verdict != Verdict.Undecided || (undetected == 0 && differ is null);
        return new(verdict, agreed ? probability : null, reasons);
    }

    // The Birge ratio: root of chi squared over its degrees of freedom, about 1 where the uncertainties explain the differences.
    private static LaboratoriesDiffer? Differ(LaboratoryMean[] laboratories)
    {
        if (laboratories.Length < 2)
            return null;
        var weight = laboratories.Sum(each => each.Weight);
        var mean = laboratories.Sum(each => each.Weight * each.Middle) / weight;
        var chiSquared = laboratories.Sum(each => each.Weight * (each.Middle - mean) * (each.Middle - mean));
        var freedom = laboratories.Length - 1;
        var ratio = Math.Sqrt(chiSquared / freedom);
        var most = Math.Sqrt(ChiSquared.InvCDF(freedom, 1 - Luck) / freedom);
        return ratio > most
            ? new([.. laboratories.Select(each => new LaboratoryResult(each.Name, each.Highest))], ratio, most)
            : null;
    }

    private static (Estimate Low, Estimate High) Pooled(LaboratoryMean[] laboratories)
    {
        if (laboratories is [var only])
            return (only.Lowest, only.Highest);
        var weight = laboratories.Sum(each => each.Weight);
        var shared = laboratories.Average(each => each.Shared);
        return (Of(each => each.Lowest), Of(each => each.Highest));

        Estimate Of(Func<LaboratoryMean, Estimate> mean)
        {
            var value = laboratories.Sum(each => each.Weight * mean(each).Value) / weight;
            var own = laboratories.Sum(each => Square(each.Weight * each.OwnOf(mean(each)))) / (weight * weight);
            return new(value, Math.Sqrt(own + shared * shared));
        }
    }

    private static double Probability(Estimate mean, double requiredKgPerM3)
    {
        var (margin, u) = (mean.Value - requiredKgPerM3, mean.StandardUncertainty);
        return u > 0 ? Normal.CDF(0, 1, margin / u)
            : margin >= 0 ? 1
            : 0;
    }

    private static double Square(double value) => value * value;

    /// <summary>The assays of one laboratory.</summary>
    private sealed class LaboratoryMean(string name, IReadOnlyList<Assay> assays)
    {
        public string Name => name;

        /// <summary>Mean if what was not found is not there, kg/m³.</summary>
        public Estimate Lowest { get; } = Mean(assays, _ => new(0, 0));

        /// <summary>Mean if there is as much as the detection limit allows, kg/m³.</summary>
        public Estimate Highest { get; } = Mean(assays, below => new(below.LimitKgPerM3, below.SharedKgPerM3));

        // To hold laboratories against each other, what was not found is anything up to the limit with even chance.
        private Estimate Even { get; } =
            Mean(assays, below => new(below.LimitKgPerM3 / 2, below.LimitKgPerM3 / Math.Sqrt(12)));

        public double Middle => Even.Value;

        /// <summary>Uncertainty that it shares with the other laboratories, kg/m³.</summary>
        public double Shared { get; } = assays.Average(assay => assay.SharedKgPerM3);

        // An uncertainty of nothing would outweigh every other laboratory: a millionth of the result stands in for it.
        public double Weight => 1 / Square(Math.Max(OwnOf(Even), 1e-6 * Math.Max(Even.Value, 1e-3)));

        public double OwnOf(Estimate mean) => Math.Sqrt(Math.Max(0, Square(mean.StandardUncertainty) - Square(Shared)));

        private static Estimate Mean(IReadOnlyList<Assay> assays, Func<BelowDetection, Estimate> undetected)
        {
            Estimate[] values =
            [
                .. assays.Select(assay =>
                    assay switch
                    {
                        MeasuredAssay measured => measured.KgPerM3,
                        BelowDetection below => undetected(below),
                        _ => throw new ArgumentOutOfRangeException(nameof(assays), assay, "Not an assay."),
                    }
                ),
            ];
            var mean = values.Average(value => value.Value);
            var common = values.Average(value => value.StandardUncertainty);
            var scatter =
                values.Length > 1
                    ? values.Sum(value => Square(value.Value - mean)) / (values.Length - 1) / values.Length
                    : 0;
            return new(mean, Math.Sqrt(common * common + scatter));
        }
    }
}

using Alburnum.Measures;
using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>Judges the retention of a batch: the mean of its composite assays against the required loading.</summary>
/// <remarks>
/// A composite of the analytical zones speaks for the batch mean, not for any one piece. With several assays the mean is
/// judged; its uncertainty adds the scatter of the assays, known from so few only, to the mean assay uncertainty taken as common to all of them
/// (one laboratory, one calibration), which errs on the wide side: Student's distribution with the effective degrees of freedom of both together
/// (JCGM 100:2008, G.4.1). An assay below detection may be anything from 0 to its limit.
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
        List<(Mean Low, Mean High)> means = differ is null
            ? [Pooled(laboratories)]
            : [.. laboratories.Select(each => (each.Lowest, each.Highest))];
        var low = means.Min(mean => mean.Low.ProbabilityAbove(requiredKgPerM3));
        var high = means.Max(mean => mean.High.ProbabilityAbove(requiredKgPerM3));
        var (atLeast, atMost) = (decision.Decide(low), decision.Decide(high));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var undetected = assays.OfType<BelowDetection>().Count();
        var probability = ProbabilityRange.Between(low, high);
        List<Reason> reasons = [];
        if (differ is not null)
            reasons.Add(differ);
        else if (undetected == 0)
            reasons.Add(
                new RetentionMean(assays.Count, means[0].High.Estimate, requiredKgPerM3, high)
                {
                    DegreesOfFreedom = means[0].High.Combined.DegreesOfFreedom,
                    IsScatterKnown = laboratories.Any(each => each.Assays > 1),
                }
            );
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

    private static LaboratoriesDiffer? Differ(LaboratoryMean[] laboratories)
    {
        LaboratoryMean[] found = [.. laboratories.Where(each => !each.FoundNothing)];
        var scatter = Scatter(found);
        // A detection limit is no result: it is contradicted only by one that lies above it for certain.
        var contradicts = laboratories.Any(below =>
            below.FoundNothing && found.Any(other => other.Even.OwnProbabilityAbove(below.Highest.Value) > 1 - Luck)
        );
        return contradicts || scatter?.IsBeyondChance == true
            ? new([.. laboratories.Select(each => each.Result)], scatter) { ContradictsLimit = contradicts }
            : null;
    }

    // Root of chi squared over its degrees of freedom. Where the weights are themselves known from few assays, it may grow further by chance:
    // Welch's test of means of unlike scatter, which is Student's for two.
    private static BirgeRatio? Scatter(LaboratoryMean[] found)
    {
        if (found.Length < 2)
            return null;
        var weight = found.Sum(each => each.Weight);
        var mean = found.Sum(each => each.Weight * each.Even.Value) / weight;
        var chiSquared = found.Sum(each => each.Weight * Square(each.Even.Value - mean));
        var (count, freedom) = (found.Length, found.Length - 1);
        var unsure = found.Sum(each => Square(1 - each.Weight / weight) / each.Even.Own.DegreesOfFreedom);
        var within = (Square(count) - 1) / (3 * unsure);
        var most = EvaluatedUncertainty.AsGoodAsKnown(within)
            ? ChiSquared.InvCDF(freedom, 1 - Luck) / freedom
            : FisherSnedecor.InvCDF(freedom, within, 1 - Luck) * (1 + 2 * (count - 2) * unsure / (Square(count) - 1));
        return new(Math.Sqrt(chiSquared / freedom), Math.Sqrt(most));
    }

    private static (Mean Low, Mean High) Pooled(LaboratoryMean[] laboratories)
    {
        if (laboratories is [var only])
            return (only.Lowest, only.Highest);
        var weight = laboratories.Sum(each => each.Weight);
        var shared = laboratories.Average(each => each.Shared);
        return (Of(each => each.Lowest), Of(each => each.Highest));

        Mean Of(Func<LaboratoryMean, Mean> mean) =>
            new(
                laboratories.Sum(each => each.Weight * mean(each).Value) / weight,
                EvaluatedUncertainty.Combine([
                    .. laboratories.Select(each => mean(each).Own.Times(each.Weight / weight)),
                ]),
                shared
            );
    }

    private static double Square(double value) => value * value;

    /// <summary>A mean, the uncertainty that is its own, and the one that all laboratories share, kg/m³.</summary>
    private sealed record Mean(double Value, EvaluatedUncertainty Own, double Shared)
    {
        public EvaluatedUncertainty Combined => EvaluatedUncertainty.Combine(Own, EvaluatedUncertainty.Known(Shared));

        public Estimate Estimate => new(Value, Combined.U);

        public double ProbabilityAbove(double limitKgPerM3) => Combined.ProbabilityAbove(Value - limitKgPerM3);

        public double OwnProbabilityAbove(double limitKgPerM3) => Own.ProbabilityAbove(Value - limitKgPerM3);
    }

    /// <summary>The assays of one laboratory.</summary>
    private sealed class LaboratoryMean(string name, IReadOnlyList<Assay> assays)
    {
        public int Assays => assays.Count;

        public bool FoundNothing { get; } = assays.All(assay => assay is BelowDetection);

        /// <summary>Mean if what was not found is not there.</summary>
        public Mean Lowest { get; } = Of(assays, _ => new(0, 0));

        /// <summary>Mean if there is as much as the detection limit allows.</summary>
        public Mean Highest { get; } = Of(assays, below => new(below.LimitKgPerM3, below.SharedKgPerM3));

        /// <summary>To weigh laboratories: what was not found is anything up to the limit with even chance.</summary>
        public Mean Even { get; } =
            Of(assays, below => new(below.LimitKgPerM3 / 2, below.LimitKgPerM3 / Math.Sqrt(12)));

        public LaboratoryResult Result =>
            FoundNothing ? new NothingFound(name, Highest.Value) : new ContentFound(name, Even.Estimate);

        public double Shared { get; } = assays.Average(assay => assay.SharedKgPerM3);

        // An uncertainty of nothing would outweigh every other laboratory: a millionth of the result stands in for it.
        public double Weight => 1 / Square(Math.Max(Even.Own.U, 1e-6 * Math.Max(Even.Value, 1e-3)));

        private static Mean Of(IReadOnlyList<Assay> assays, Func<BelowDetection, Estimate> undetected)
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
            var common = values.Average(value => value.StandardUncertainty);
            var shared = Math.Min(common, assays.Average(assay => assay.SharedKgPerM3));
            var stated = UncertaintyBudget.Without(common, shared);
            return new(
                values.Average(value => value.Value),
                EvaluatedUncertainty.Combine(
                    new(stated, assays.Min(assay => assay.DegreesOfFreedom)),
                    EvaluatedUncertainty.OfMean([.. values.Select(value => value.Value)])
                ),
                shared
            );
        }
    }
}

using Alburnum.Measures;
using Alburnum.Penetration;
using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>Judges the retention of a batch: the mean of the samples of its analytical zone against the required loading.</summary>
/// <remarks>
/// A sample of the analytical zones speaks for the batch mean, not for any one piece, and all samples count alike, whichever laboratory analysed them.
/// Laboratories are weighed by their uncertainties only over a sample that several of them analysed. The mean's uncertainty adds the scatter of the
/// samples, known from so few only, to what each laboratory states, taken as common to all that it analysed (one calibration), which errs on the wide side:
/// Student's distribution with the effective degrees of freedom of all together (JCGM 100:2008, G.4.1). An assay below detection may be anything from 0 to
/// its limit. Where laboratories differ by more than their uncertainties allow, nothing is averaged over them: each is judged alone and the verdict must
/// hold for all. See docs/science/acceptance.md.
/// </remarks>
public static class RetentionConformity
{
    // Below this chance of differing as much by luck, laboratories differ.
    private const double Luck = 0.05;

    /// <summary>Judges the retentions that are required of a batch, all of which must be met; null where none is required.</summary>
    /// <param name="asked">The retentions, each with its assays.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <remarks>
    /// Errors of several, of one batch and perhaps one laboratory, hang together: the probability that all are met lies between the product and the least. It is of
    /// those that were judged; one that was not leaves the whole undecided.
    /// </remarks>
    public static Judgement? Judge(IReadOnlyList<RetentionAsked> asked, DecisionRule decision)
    {
        ArgumentNullException.ThrowIfNull(asked);
        List<Judgement> each = [.. asked.Select(one => Judge(one, decision))];
        if (each.Count <= 1)
            return each.FirstOrDefault();
        var judged = each.FindAll(one => !one.Reasons.Any(reason => reason is RetentionNotJudged))
            .ConvertAll(one => one.Probability);
        return new(
            BatchConformity.Weakest([.. each.Select(one => one.Verdict)]),
            judged.Count > 0 && judged.TrueForAll(one => one is not null)
                ? new(
                    judged.Aggregate(1.0, (product, one) => product * one!.Value.Low),
                    judged.Min(one => one!.Value.High)
                )
                : null,
            [.. each.SelectMany(one => one.Reasons)]
        );
    }

    /// <summary>Judges one retention. Where it is open which assays are of its zone, a verdict must hold whichever are.</summary>
    /// <param name="asked">The retention, with its assays.</param>
    /// <param name="decision">How sure one must be.</param>
    public static Judgement Judge(RetentionAsked asked, DecisionRule decision)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (asked.Gap is not { } gap)
            return Of(asked.Assays);
        var notAssayed = new ZoneNotAssayed(asked.Zone, asked.KgPerM3, gap);
        if (asked.Assays.Count == 0)
            return new(Verdict.Undecided, null, [notAssayed]);
        List<Judgement> each = [.. asked.OrElse.Prepend(asked.Assays).Select(Of)];
        var verdict = each[0].Verdict;
        if (!asked.IsSettledBy(verdict) || each.Exists(one => one.Verdict != verdict))
            return new(Verdict.Undecided, null, [notAssayed]);
        // The set for which the verdict is least sure.
        return verdict == Verdict.DoesNotConform
            ? each.MaxBy(one => one.Probability?.High)!
            : each.MinBy(one => one.Probability?.Low)!;

        Judgement Of(IReadOnlyList<Assay> assays)
        {
            var judged = Judge(assays, asked.KgPerM3, decision);
            return judged with { Reasons = [.. judged.Reasons.Select(reason => InZone(reason, asked.Zone))] };
        }
    }

    private static Reason InZone(Reason reason, string? zone) =>
        reason switch
        {
            RetentionMean mean => mean with { Zone = zone },
            BelowDetectionLimit below => below with { Zone = zone },
            _ => reason,
        };

    /// <summary>Judges a batch's assays.</summary>
    /// <param name="assays">Assays of the batch; may be empty.</param>
    /// <param name="requiredKgPerM3">Required loading in the analytical zone, kg/m³. Above 0.</param>
    /// <param name="decision">How sure one must be.</param>
    public static Judgement Judge(IReadOnlyList<Assay> assays, double requiredKgPerM3, DecisionRule decision)
    {
        Require.Positive(requiredKgPerM3, "kg/m³");
        if (assays.Count == 0)
            return new(Verdict.Undecided, null, [new AssayMissing(requiredKgPerM3)]);
        var all = new SamplesMean(assays);
        IReadOnlyList<SamplesMean> laboratories = ByLaboratory(assays);
        var differ = Differ(all.Samples, laboratories);
        var means = differ is null ? [all] : laboratories;
        var low = means.Min(mean => mean.Lowest.ProbabilityAbove(requiredKgPerM3));
        var high = means.Max(mean => mean.Highest.ProbabilityAbove(requiredKgPerM3));
        var (atLeast, atMost) = (decision.Decide(low), decision.Decide(high));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var undetected = assays.OfType<BelowDetection>().Count();
        var probability = ProbabilityRange.Between(low, high);
        List<Reason> reasons = [];
        if (differ is not null)
            reasons.Add(differ);
        else if (undetected == 0)
            reasons.Add(
                new RetentionMean(all.Samples.Count, assays.Count, all.Highest.Estimate, requiredKgPerM3, high)
                {
                    DegreesOfFreedom = all.Highest.Combined is { IsKnown: false, DegreesOfFreedom: var freedom }
                        ? freedom
                        : double.PositiveInfinity,
                }
            );
        if (undetected > 0)
            reasons.Add(
                new BelowDetectionLimit(
                    undetected,
                    assays.Count,
                    means.MinBy(mean => mean.Lowest.Value)!.Lowest.Estimate,
                    means.MaxBy(mean => mean.Highest.Value)!.Highest.Estimate,
                    requiredKgPerM3,
                    probability
                )
            );
        if (verdict == Verdict.Conforms && OfAnotherProduct(assays) is { Count: > 0 } doubts)
            return new(Verdict.Undecided, null, [.. reasons, .. doubts]);
        var agreed = verdict != Verdict.Undecided || (undetected == 0 && differ is null);
        return new(verdict, agreed ? probability : null, reasons);
    }

    // Why what is enough of a product as it is counted may not be enough of what is there.
    private static List<Reason> OfAnotherProduct(IReadOnlyList<Assay> assays)
    {
        var hardly = assays.Where(assay => assay.PartsOffFormula.Any(part => part.IsGross)).ToList();
        var partial = assays.Where(assay => assay.PartsNotAnalysed.Count > 0).ToList();
        List<Reason> doubts = [];
        if (hardly.Count > 0)
            doubts.Add(new HardlyThatProduct(Numbers(hardly)));
        if (partial.Count > 0)
            doubts.Add(
                new PartsNotAnalysed(
                    Numbers(partial),
                    [
                        .. partial
                            .SelectMany(assay => assay.PartsNotAnalysed)
                            .Select(part => part.Name)
                            .Distinct(StringComparer.Ordinal),
                    ]
                )
            );
        return doubts;

        static string[] Numbers(List<Assay> of) =>
            [.. of.Select(assay => assay.Sample).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Samples that some assays are of: those that bear one number are of one sample; one without a number is a sample of its own.</summary>
    /// <param name="assays">The assays.</param>
    public static int Samples(IReadOnlyList<Assay> assays) => BySample(assays).Count;

    private static List<Sample> BySample(IReadOnlyList<Assay> assays) =>
        [
            .. assays
                .Index()
                .GroupBy(
                    each => (each.Item.Sample, Own: each.Item.Sample.Length > 0 ? -1 : each.Index),
                    each => each.Item
                )
                .Select(group => new Sample(group.Key.Sample, [.. group])),
        ];

    private static List<SamplesMean> ByLaboratory(IReadOnlyList<Assay> assays) =>
        [
            .. assays
                .GroupBy(assay => assay.Laboratory, StringComparer.Ordinal)
                .Select(group => new SamplesMean([.. group])),
        ];

    // Over one sample laboratories are held against each other directly. Over samples of their own only where each had several: a single one that differs from others
    // cannot be told from how samples of the batch differ.
    private static LaboratoriesDiffer? Differ(IReadOnlyList<Sample> samples, IReadOnlyList<SamplesMean> laboratories) =>
        samples
            .Select(sample =>
                Differ(ByLaboratory(sample.Assays)) is { } differ ? differ with { Sample = sample.Number } : null
            )
            .FirstOrDefault(differ => differ is not null)
        ?? Differ([.. laboratories.Where(each => each.Samples.Count > 1)]);

    private static LaboratoriesDiffer? Differ(IReadOnlyList<SamplesMean> laboratories)
    {
        SamplesMean[] found = [.. laboratories.Where(each => !each.FoundNothing)];
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
    private static BirgeRatio? Scatter(SamplesMean[] found)
    {
        if (found.Length < 2)
            return null;
        var weight = found.Sum(each => each.Even.Weight);
        var mean = found.Sum(each => each.Even.Weight * each.Even.Value) / weight;
        var chiSquared = found.Sum(each => each.Even.Weight * Square(each.Even.Value - mean));
        var (count, freedom) = (found.Length, found.Length - 1);
        var unsure = found.Sum(each => Square(1 - each.Even.Weight / weight) / each.Even.Own.DegreesOfFreedom);
        var within = (Square(count) - 1) / (3 * unsure);
        var most = EvaluatedUncertainty.AsGoodAsKnown(within)
            ? ChiSquared.InvCDF(freedom, 1 - Luck) / freedom
            : FisherSnedecor.InvCDF(freedom, within, 1 - Luck) * (1 + 2 * (count - 2) * unsure / (Square(count) - 1));
        return new(Math.Sqrt(chiSquared / freedom), Math.Sqrt(most));
    }

    private static double Square(double value) => value * value;

    /// <summary>A content, the uncertainty that is its own, and the one that all assays of the batch share, kg/m³.</summary>
    private sealed record Mean(double Value, EvaluatedUncertainty Own, double Shared)
    {
        public EvaluatedUncertainty Combined => EvaluatedUncertainty.Combine(Own, EvaluatedUncertainty.Known(Shared));

        public Estimate Estimate => new(Value, Combined.U);

        // An uncertainty of nothing would outweigh every other laboratory: a millionth of the result stands in for it.
        public double Weight => 1 / Square(Math.Max(Own.U, 1e-6 * Math.Max(Value, 1e-3)));

        public double ProbabilityAbove(double limitKgPerM3) => Combined.ProbabilityAbove(Value - limitKgPerM3);

        public double OwnProbabilityAbove(double limitKgPerM3) => Own.ProbabilityAbove(Value - limitKgPerM3);
    }

    /// <summary>One way to take an assay below detection.</summary>
    private delegate Mean Undetected(BelowDetection below);

    // It is not there at all.
    private static Mean Nothing(BelowDetection below) => new(0, EvaluatedUncertainty.Known(0), 0);

    // There is as much as the limit allows.
    private static Mean AllThatMayBe(BelowDetection below) =>
        new(below.LimitKgPerM3, EvaluatedUncertainty.Known(0), below.SharedKgPerM3);

    // To weigh laboratories: anything up to the limit with even chance.
    private static Mean Even(BelowDetection below) =>
        new(
            below.LimitKgPerM3 / 2,
            EvaluatedUncertainty.Known(below.LimitKgPerM3 / Math.Sqrt(12)),
            below.SharedKgPerM3 / 2
        );

    /// <summary>One sample of the batch.</summary>
    private sealed class Sample(string number, IReadOnlyList<Assay> assays)
    {
        public string Number => number;

        public IReadOnlyList<Assay> Assays => assays;

        /// <summary>What each laboratory found, with its share of the sample's content: shares add up to 1.</summary>
        public IEnumerable<(string Laboratory, double Share, Mean Found)> Found(Undetected undetected)
        {
            var laboratories = assays.GroupBy(assay => assay.Laboratory, StringComparer.Ordinal).ToList();
            var weight = laboratories.Sum(each => Of(each, Even).Weight);
            return laboratories.Select(each => (each.Key, Of(each, Even).Weight / weight, Of(each, undetected)));
        }

        // Analyses of one laboratory: what it states is common to them, and their scatter comes on top.
        private static Mean Of(IEnumerable<Assay> analyses, Undetected undetected)
        {
            Mean[] each =
            [
                .. analyses.Select(assay =>
                    assay switch
                    {
                        MeasuredAssay
                        {
                            KgPerM3: { Value: var value, StandardUncertainty: var u },
                            SharedKgPerM3: var shared
                        } => new(
                            value,
                            new(UncertaintyBudget.Without(u, Math.Min(u, shared)), assay.DegreesOfFreedom),
                            Math.Min(u, shared)
                        ),
                        BelowDetection below => undetected(below),
                        _ => throw new ArgumentOutOfRangeException(nameof(analyses), assay, "Not an assay."),
                    }
                ),
            ];
            return new(
                each.Average(analysis => analysis.Value),
                EvaluatedUncertainty.Combine(
                    new(each.Average(analysis => analysis.Own.U), each.Min(analysis => analysis.Own.DegreesOfFreedom)),
                    EvaluatedUncertainty.OfMean([.. each.Select(analysis => analysis.Value)])
                ),
                each.Average(analysis => analysis.Shared)
            );
        }
    }

    /// <summary>The mean over some samples.</summary>
    private sealed class SamplesMean(IReadOnlyList<Assay> assays)
    {
        public List<Sample> Samples { get; } = BySample(assays);

        public bool FoundNothing { get; } = assays.All(assay => assay is BelowDetection);

        public Mean Lowest => Of(Nothing);

        public Mean Highest => Of(AllThatMayBe);

        public Mean Even => Of(RetentionConformity.Even);

        /// <summary>What the laboratory found whose assays they all are.</summary>
        public LaboratoryResult Result =>
            FoundNothing
                ? new NothingFound(assays[0].Laboratory, Highest.Value)
                : new ContentFound(assays[0].Laboratory, Even.Estimate);

        private Mean Of(Undetected undetected)
        {
            var found = Samples.ConvertAll(sample => sample.Found(undetected).ToList());
            var parts = found.SelectMany(sample => sample).ToList();
            return new(
                parts.Sum(part => part.Share * part.Found.Value) / Samples.Count,
                EvaluatedUncertainty.Combine([
                    EvaluatedUncertainty.OfMean([
                        .. found.Select(sample => sample.Sum(part => part.Share * part.Found.Value)),
                    ]),
                    .. parts
                        .GroupBy(part => part.Laboratory, StringComparer.Ordinal)
                        .Select(own => new EvaluatedUncertainty(
                            own.Sum(part => part.Share * part.Found.Own.U) / Samples.Count,
                            own.Min(part => part.Found.Own.DegreesOfFreedom)
                        )),
                ]),
                parts.Sum(part => part.Share * part.Found.Shared) / Samples.Count
            );
        }
    }
}

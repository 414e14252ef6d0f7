using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Penetration;
using Alburnum.Records.Facts;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on a batch judged by counting rests on, and the rules by which it is judged, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class AcceptanceWords(Wording wording)
{
    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(BatchReason reason) =>
        reason switch
        {
            RuleUsed used => wording.Say("acceptance.rule-used", ("rule", Rule(used.Rule))),
            RuleAsksLessThanCode less => wording.Say(
                "acceptance.less-than-code",
                ("percent", Figures.Typed(less.Share)),
                ("aql", Figures.Digits(less.CodesAqlPercent.Value, 6)),
                ("wanted", Figures.Typed(1 - less.CodesAqlPercent.Value / 100)),
                ("standing", wording.Say(less.CodesAqlPercent.Provenance.Standing)),
                ("source", less.CodesAqlPercent.Provenance.Citation)
            ),
            PiecesCounted counted => Counted(counted),
            PiecesStillToCut missing => wording.Say(
                "acceptance.still-to-cut",
                ("asked", wording.Count("count.piece", missing.Asked)),
                ("missing", Figures.Whole(missing.Missing))
            ),
            PiecesReadInPart part => wording.Say(
                "acceptance.pieces-read-in-part",
                ("pieces", Figures.Whole(part.Pieces)),
                ("cut", wording.Count("count.piece", part.Cut))
            ),
            PiecesNotDetermined open => wording.Say(
                "acceptance.pieces-not-determined",
                ("pieces", wording.Count("count.piece", open.Pieces.Count)),
                ("names", string.Join(", ", open.Pieces))
            ),
            DrawingNotRecorded => wording.Say("acceptance.drawing-not-recorded"),
            SamplesScatterNotKnown => wording.Say("acceptance.scatter-not-known"),
            ReadingRiskNotKnown => wording.Say("acceptance.reading-risk-not-known"),
            AcceptanceProbability accepts => wording.Say(
                "acceptance.probability",
                ("independent", Certainty(accepts.IfIndependent)),
                ("alike", Certainty(accepts.IfAlike))
            ),
            AcceptanceLeftOpen open => wording.Say(
                "acceptance.probability-open",
                ("low", Certainty(open.Probability.Low)),
                ("high", Certainty(open.Probability.High)),
                ("pieces", wording.Count("count.piece", open.OpenPieces))
            ),
            BatchParts parts => Parts(parts),
            _ => OfRetention(reason),
        };

    private string OfRetention(BatchReason reason) =>
        reason switch
        {
            NoRetentionRequired => wording.Say("acceptance.no-retention-required"),
            AssayMissing missing => wording.Say(
                "acceptance.assay-missing",
                ("required", Figures.KgPerM3(missing.RequiredKgPerM3))
            ),
            ZoneNotAssayed missing => wording.Say(
                missing.Gap switch
                {
                    ZoneGap.OthersCut => "acceptance.zone-not-assayed",
                    ZoneGap.NotStated => "acceptance.zone-not-stated",
                    ZoneGap.SomeNotStated => "acceptance.zone-not-stated-of-some",
                    ZoneGap.ZoneNotKnown => "acceptance.zone-not-known",
                    _ => throw ReasonWords.Unknown(reason),
                },
                ("required", Required(missing.RequiredKgPerM3, missing.Zone))
            ),
            HardlyThatProduct hardly => wording.Say(
                "acceptance.hardly-that-product",
                ("samples", string.Join(", ", hardly.Samples))
            ),
            PartsNotAnalysed missing => wording.Say(
                "acceptance.parts-not-analysed",
                ("parts", string.Join(", ", missing.Parts)),
                ("samples", string.Join(", ", missing.Samples))
            ),
            RetentionMean mean => Mean(mean),
            BelowDetectionLimit below => Below(below),
            LaboratoriesDiffer differ => Differ(differ),
            _ => throw ReasonWords.Unknown(reason),
        };

    private string Mean(RetentionMean mean)
    {
        var said = wording.Say(
            "acceptance.retention-mean",
            (
                "assays",
                mean.Samples == mean.Assays
                    ? wording.Count("count.assay", mean.Assays)
                    : wording.Say(
                        "acceptance.retention-mean-of-samples",
                        ("samples", wording.Count("count.sample", mean.Samples)),
                        ("assays", wording.Count("count.assay", mean.Assays))
                    )
            ),
            ("mean", Kg(mean.MeanKgPerM3.Value, mean.MeanKgPerM3)),
            ("u", Kg(mean.MeanKgPerM3.StandardUncertainty, mean.MeanKgPerM3)),
            ("required", Required(mean.RequiredKgPerM3, mean.Zone)),
            ("probability", Certainty(mean.Probability))
        );
        var degrees = mean.DegreesOfFreedom;
        return double.IsInfinity(degrees)
            ? said
            : $"{said} {wording.Say("acceptance.scatter-of-few", ("degrees", Figures.Number(degrees, degrees < 99.95 ? 1 : 0)))}";
    }

    private string Differ(LaboratoriesDiffer differ) =>
        wording.Say(
            "assay.laboratories-differ",
            ("grounds", string.Join("; ", (string[])[OnSample(differ), .. Grounds(differ)]))
        );

    private string OnSample(LaboratoriesDiffer differ)
    {
        var found = string.Join(", ", differ.Laboratories.Select(Found));
        return string.IsNullOrEmpty(differ.Sample)
            ? found
            : wording.Say("assay.laboratories-differ-on-sample", ("sample", differ.Sample), ("found", found));
    }

    private IEnumerable<string> Grounds(LaboratoriesDiffer differ)
    {
        if (differ.ContradictsLimit)
            yield return wording.Say("assay.contradicts-limit");
        if (differ.Scatter is { } scatter)
            yield return wording.Say(
                "assay.birge-ratio",
                ("ratio", Figures.Number(scatter.Ratio, 1)),
                ("most", Figures.Number(scatter.MostByChance, 1))
            );
    }

    private string Found(LaboratoryResult result) =>
        wording.Say(
            "assay.laboratory",
            ("laboratory", result.Laboratory.Length > 0 ? result.Laboratory : wording.Say("assay.laboratory-unnamed")),
            (
                "result",
                result switch
                {
                    ContentFound found => Figures.Measured(
                        found.KgPerM3.Value,
                        found.KgPerM3.StandardUncertainty,
                        "kg/m³"
                    ),
                    NothingFound nothing => wording.Say(
                        "assay.nothing-found",
                        ("limit", Figures.KgPerM3(nothing.LimitKgPerM3))
                    ),
                    _ => throw new ArgumentOutOfRangeException(nameof(result), result, "Not a result."),
                }
            )
        );

    /// <summary>A rule as it is named in a verdict: "75 % of the pieces cut must pass".</summary>
    public string Rule(AcceptanceRule rule) =>
        rule switch
        {
            ShareMustPass { TakenFrom: { } source } share => wording.Say(
                "acceptance.share-of-code",
                ("percent", Figures.Digits(share.Share * 100)),
                ("standing", wording.Say(source.Standing)),
                ("source", source.Citation)
            ),
            ShareMustPass share => wording.Say(
                "acceptance.share-must-pass",
                ("percent", Figures.Digits(share.Share * 100, 6))
            ),
            IndexedSampling { Indexed: var indexed } => wording.Say(
                "acceptance.plan-rule",
                ("plan", Name(indexed)),
                ("cut", Figures.Whole(indexed.Plan.SampleSize)),
                ("mayFail", wording.Count("count.failure", indexed.Plan.AcceptanceNumber))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule."),
        };

    /// <summary>A plan's full name: standard, level, AQL, severity and letter.</summary>
    public string Name(IndexedPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return wording.Say(
            "acceptance.indexed-plan",
            ("aql", Figures.Digits(plan.AqlPercent, 3)),
            ("standard", plan.Source.Document),
            ("level", plan.Level.Key()),
            ("severity", Severity(plan.Severity)),
            (
                "letter",
                plan.UsedLetter == plan.CodeLetter
                    ? plan.CodeLetter.ToString()
                    : wording.Say(
                        "acceptance.arrow",
                        ("letter", plan.CodeLetter.ToString()),
                        ("used", plan.UsedLetter.ToString())
                    )
            )
        );
    }

    /// <summary>"normal", "tightened" or "reduced".</summary>
    public string Severity(Severity severity) =>
        severity switch
        {
            Alburnum.Acceptance.Indexed.Severity.Normal => wording.Say("acceptance.normal"),
            Alburnum.Acceptance.Indexed.Severity.Tightened => wording.Say("acceptance.tightened"),
            Alburnum.Acceptance.Indexed.Severity.Reduced => wording.Say("acceptance.reduced"),
            _ => throw new ArgumentOutOfRangeException(nameof(severity), severity, "Not a severity."),
        };

    /// <summary>Where a batch comes from: "the 50 pieces in the lot" or "the supply".</summary>
    internal static string Supply(int? lotSize, Wording wording) =>
        lotSize == 1 ? wording.Say("acceptance.piece-in-lot")
        : lotSize is { } lot ? wording.Say("acceptance.pieces-in-lot", ("pieces", wording.Count("count.piece", lot)))
        : wording.Say("acceptance.supply");

    /// <summary>Whether the acceptance rule on penetration is met, as a phrase.</summary>
    internal string Penetration(Verdict penetration) =>
        penetration switch
        {
            Verdict.Conforms => wording.Say("acceptance.penetration-met"),
            Verdict.DoesNotConform => wording.Say("acceptance.penetration-not-met"),
            Verdict.Undecided => wording.Say("acceptance.penetration-undecided"),
            _ => throw new ArgumentOutOfRangeException(nameof(penetration), penetration, "Not a verdict."),
        };

    /// <summary>Whether the retention is met, as a phrase; that it was not judged where no figure or no assay was given.</summary>
    internal string Retention(Judgement? retention) =>
        retention switch
        {
            null => wording.Say("acceptance.retention-not-judged"),
            { Verdict: Verdict.Conforms } => wording.Say("acceptance.retention-met"),
            { Verdict: Verdict.DoesNotConform } => wording.Say("acceptance.retention-not-met"),
            _ when !retention.Reasons.Any(reason => reason is RetentionNotJudged) => wording.Say(
                "acceptance.retention-undecided"
            ),
            _ when retention.Reasons.All(reason => reason is RetentionNotJudged) => wording.Say(
                "acceptance.retention-not-judged"
            ),
            _ => wording.Say("acceptance.retention-not-judged-in-each-zone"),
        };

    private string Counted(PiecesCounted counted)
    {
        if (counted.Counts.Cut == 1)
            return wording.Say(
                "acceptance.one-piece-counted",
                (
                    "verdict",
                    wording.Say(
                        counted.Counts.Conforming > 0 ? Verdict.Conforms
                        : counted.Counts.Failing > 0 ? Verdict.DoesNotConform
                        : Verdict.Undecided
                    )
                ),
                ("mayFail", Figures.Whole(counted.MayFail))
            );
        return wording.Say(
            "acceptance.pieces-counted",
            ("pieces", wording.Count("count.piece", counted.Counts.Cut)),
            ("conforming", Figures.Whole(counted.Counts.Conforming)),
            ("failing", Figures.Whole(counted.Counts.Failing)),
            ("undecided", Figures.Whole(counted.Counts.Undecided)),
            ("mayFail", Figures.Whole(counted.MayFail))
        );
    }

    private string Below(BelowDetectionLimit below)
    {
        (string, string) required = ("required", Required(below.RequiredKgPerM3, below.Zone)),
            high = ("high", Figures.KgPerM3(below.HighestMeanKgPerM3.Value)),
            assays = ("assays", wording.Count("count.assay", below.Assays)),
            undetected = ("undetected", Figures.Whole(below.Undetected));
        if (below.Undetected < below.Assays)
        {
            var most = below.HighestMeanKgPerM3;
            var u = Math.Max(below.LowestMeanKgPerM3.StandardUncertainty, most.StandardUncertainty);
            string Rounded(double value) => Figures.Rounded(value, u, "kg/m³");
            return wording.Say(
                "acceptance.some-below-detection",
                undetected,
                assays,
                ("mean", Between(Rounded(below.LowestMeanKgPerM3.Value), Rounded(most.Value))),
                ("u", Rounded(u)),
                required,
                ("probability", Between(Certainty(below.Probability.Low), Certainty(below.Probability.High)))
            );
        }
        return below.Assays == 1
            ? wording.Say("acceptance.below-detection", high, required)
            : wording.Say("acceptance.all-below-detection", assays, high, required);
    }

    // What is required, with the zone in which it is.
    private string Required(double kgPerM3, string? zone) =>
        zone is null
            ? wording.Say("acceptance.is-required", ("required", Figures.KgPerM3(kgPerM3)))
            : wording.Say("acceptance.is-required-in-zone", ("required", Figures.KgPerM3(kgPerM3)), ("zone", zone));

    private string Between(string low, string high) =>
        low == high ? low : wording.Say("rows.low-to-high", ("low", low), ("high", high));

    private string Parts(BatchParts parts) =>
        Wording.Capital(
            wording.Say(
                "acceptance.parts",
                ("penetration", Penetration(parts.Penetration.Verdict)),
                ("retention", Retention(parts.Retention))
            )
        );

    private static string Kg(double value, Estimate mean) => Figures.Rounded(value, mean.StandardUncertainty, "kg/m³");

    private string Certainty(double probability) => Figures.Certainty(probability, wording);
}

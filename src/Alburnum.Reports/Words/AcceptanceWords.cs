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
            PiecesCounted counted => Counted(counted),
            PiecesStillToCut missing => wording.Say(
                "acceptance.still-to-cut",
                ("asked", Figures.Whole(missing.Asked)),
                ("missing", Figures.Whole(missing.Missing))
            ),
            AcceptanceProbability accepts => wording.Say(
                "acceptance.probability",
                ("independent", Certainty(accepts.IfIndependent)),
                ("alike", Certainty(accepts.IfAlike))
            ),
            AcceptanceLeftOpen open => wording.Say(
                "acceptance.probability-open",
                ("low", Certainty(open.Probability.Low)),
                ("high", Certainty(open.Probability.High)),
                ("pieces", Figures.Whole(open.OpenPieces))
            ),
            ConformingShareShown shown => Shown(shown),
            NoRetentionRequired => wording.Say("acceptance.no-retention-required"),
            AssayMissing missing => wording.Say(
                "acceptance.assay-missing",
                ("required", Figures.KgPerM3(missing.RequiredKgPerM3))
            ),
            RetentionMean mean => wording.Say(
                "acceptance.retention-mean",
                ("assays", wording.Count("count.assay", mean.Assays)),
                ("mean", Figures.KgPerM3(mean.MeanKgPerM3.Value)),
                ("u", Figures.KgPerM3(mean.MeanKgPerM3.StandardUncertainty)),
                ("required", Figures.KgPerM3(mean.RequiredKgPerM3)),
                ("probability", Certainty(mean.Probability))
            ),
            BelowDetectionLimit below => wording.Say(
                "acceptance.below-detection",
                ("undetected", Figures.Whole(below.Undetected)),
                ("assays", Figures.Whole(below.Assays)),
                ("low", Figures.KgPerM3(below.LowestMeanKgPerM3)),
                ("high", Figures.KgPerM3(below.HighestMeanKgPerM3))
            ),
            BatchParts parts => Parts(parts),
            _ => throw ReasonWords.Unknown(reason),
        };

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
                ("percent", Figures.Digits(share.Share * 100))
            ),
            IndexedSampling { Indexed: var indexed } => wording.Say(
                "acceptance.plan-rule",
                ("plan", Name(indexed)),
                ("cut", Figures.Whole(indexed.Plan.SampleSize)),
                ("mayFail", Figures.Whole(indexed.Plan.AcceptanceNumber))
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
        lotSize is { } lot
            ? wording.Say("acceptance.pieces-in-lot", ("pieces", Figures.Whole(lot)))
            : wording.Say("acceptance.supply");

    private string Counted(PiecesCounted counted) =>
        wording.Say(
            "acceptance.pieces-counted",
            ("pieces", wording.Count("count.piece", counted.Counts.Cut)),
            ("conforming", Figures.Whole(counted.Counts.Conforming)),
            ("failing", Figures.Whole(counted.Counts.Failing)),
            ("undecided", Figures.Whole(counted.Counts.Undecided)),
            ("mayFail", Figures.Whole(counted.MayFail))
        );

    private string Shown(ConformingShareShown shown)
    {
        (string, string) confidence = ("confidence", Percent(shown.Bound.Confidence)),
            share = ("share", Percent(shown.Bound.LowerBound)),
            supply = ("supply", Supply(shown.LotSize, wording));
        return shown.Undecided > 0
            ? wording.Say(
                "acceptance.share-shown-open",
                confidence,
                share,
                supply,
                ("open", Percent(shown.Bound.LowerBoundIfUndecidedPass))
            )
            : wording.Say("acceptance.share-shown", confidence, share, supply);
    }

    private string Parts(BatchParts parts)
    {
        var penetration = parts.Penetration switch
        {
            { Verdict: Verdict.Conforms } => wording.Say("acceptance.penetration-conforms"),
            { Verdict: Verdict.DoesNotConform } => wording.Say("acceptance.penetration-fails"),
            { Probability: null } => wording.Say("acceptance.penetration-not-determined"),
            _ => wording.Say("acceptance.penetration-undecided"),
        };
        var retention = parts.Retention switch
        {
            null => null,
            { Verdict: Verdict.Conforms } => wording.Say("acceptance.retention-conforms"),
            { Verdict: Verdict.DoesNotConform } => wording.Say("acceptance.retention-fails"),
            { Probability: null } => wording.Say("acceptance.retention-not-determined"),
            _ => wording.Say("acceptance.retention-undecided"),
        };
        (string, string) both = ("parts", retention is null ? penetration : $"{penetration}; {retention}");
        return parts.Batch switch
        {
            Verdict.Conforms => wording.Say("acceptance.batch-conforms", both),
            Verdict.DoesNotConform => wording.Say("acceptance.batch-fails", both),
            Verdict.Undecided => wording.Say("acceptance.batch-undecided", both),
            _ => throw new ArgumentOutOfRangeException(nameof(parts), parts.Batch, "Not a verdict."),
        };
    }

    private string Percent(double share) => Figures.Percent(share, wording);

    private string Certainty(double probability) => Figures.Certainty(probability, wording);
}

using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;
using Alburnum.Cases;
using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>
/// What was found of a batch in words: one headline, and three lines that do not stand for each other, for the rule, the lot, and what was not judged.
/// The headline is made of all three, so that it never says more than they do.
/// </summary>
/// <param name="wording">The language.</param>
public sealed class FindingWords(Wording wording)
{
    private readonly ReasonWords _reasons = new(wording);

    /// <summary>In the language chosen.</summary>
    public static FindingWords Current => new(Wording.Current);

    /// <summary>Names of the three lines.</summary>
    public (string Rule, string Lot, string NotJudged) Names =>
        (wording.Say("finding.rule"), wording.Say("finding.lot"), wording.Say("finding.not-judged"));

    /// <summary>The headline.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="measure">What was measured, where the rule is one by variables; null otherwise.</param>
    public string Headline(BatchFindings findings, string? measure = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return Wording.Capital(
            wording.Joined("finding.and", Lead(findings, measure).Concat(Lot(findings)).Concat(Gaps(findings)))
        );
    }

    /// <summary>What the headline begins with: penetration and retention, each met, not met or not judged.</summary>
    /// <param name="findings">What was found.</param>
    public string Begins(BatchFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return wording.Joined("finding.and", Lead(findings, measure: null));
    }

    /// <summary>The rule: met or not, and with which chance it would be if depths and retention were known exactly.</summary>
    /// <param name="rule">What was found.</param>
    public string Rule(RuleFinding rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        var said = string.Join(" ", Said(rule).Concat(_reasons.Say(Says(rule))));
        return rule.Whole.Probability is { } probability
            ? wording.Say("finding.sentences", ("first", said), ("next", Chance(probability.Low, probability.High)))
            : said;
    }

    /// <summary>The reasons that are said as they are in what is said of the rule, in their order.</summary>
    internal static IReadOnlyList<Reason> Says(RuleFinding rule) =>
        [
            .. rule.Penetration?.Reasons.OfType<RuleAsksLessThanCode>() ?? [],
            .. IsBare(rule) ? rule.Whole.Reasons.Where(reason => !IsOfDemands(reason)) : [],
            .. rule.Whole.Reasons.Where(IsOfDemands),
            .. rule.Retention?.Reasons.OfType<LaboratoriesDiffer>() ?? [],
            .. rule.Whole.Probability is null ? rule.Penetration?.Reasons.OfType<ReadingRiskNotKnown>() ?? [] : [],
        ];

    private static bool IsOfDemands(Reason reason) =>
        reason is CodeOnlyRecommends or TwoDemands or OnlyContractDemands or LeastOfCode or RetentionsJudged;

    // Nothing was counted, and no values were judged: the reasons are all there is to say.
    private static bool IsBare(RuleFinding rule) =>
        rule.Penetration is null && !rule.Whole.Reasons.OfType<DemandUsed>().Any();

    private IEnumerable<string> Said(RuleFinding rule)
    {
        if (rule.Penetration is { } penetration)
        {
            var used = penetration.Reasons.OfType<RuleUsed>().Single();
            var counts = penetration.Reasons.OfType<PiecesCounted>().Single().Counts;
            yield return Wording.Capital(
                wording.Say(
                    "finding.rule-counted",
                    ("penetration", _reasons.Acceptance.Penetration(penetration.Verdict)),
                    ("retention", _reasons.Acceptance.Retention(rule.Retention)),
                    ("rule", _reasons.Acceptance.Rule(used.Rule)),
                    ("conforming", Figures.Whole(counts.Conforming)),
                    ("cut", Figures.Whole(counts.Cut))
                )
            );
        }
        else if (rule.Whole.Reasons.OfType<DemandUsed>().FirstOrDefault() is { Demand: var demand })
            yield return Wording.Capital(
                wording.Say(
                    "finding.rule-by-values",
                    ("verdict", wording.SayRule(rule.Whole.Verdict)),
                    ("demand", _reasons.Variables.Demand(demand))
                )
            );
    }

    /// <summary>With which chance the rule would be met if depths and retention were known exactly: both bounds, since a verdict follows the less favourable one.</summary>
    /// <param name="low">Least chance that the evidence allows, 0 to 1.</param>
    /// <param name="high">Greatest, likewise.</param>
    public string Chance(double low, double high)
    {
        var (least, most) = (Figures.Certainty(low, wording), Figures.Certainty(high, wording));
        return least == most
            ? wording.Say("finding.chance-of-rule", ("probability", least))
            : wording.Say("finding.chance-of-rule-between", ("low", least), ("high", most));
    }

    /// <summary>The lot: at least so much of it conforms, and the chance that the wanted share does.</summary>
    /// <param name="lot">What is shown of it.</param>
    /// <param name="isRetentionJudged">Whether a retention is judged beside: of the batch, not of its pieces.</param>
    public string Lot(LotFinding lot, bool isRetentionJudged = false)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return isRetentionJudged
            ? wording.Say(
                "finding.sentences",
                ("first", Shown(lot)),
                ("next", wording.Say("finding.lot-of-penetration"))
            )
            : Shown(lot);
    }

    private string Shown(LotFinding lot)
    {
        var shown = lot is { IsWhole: true, LotSize: { } pieces } ? Whole(lot, pieces) : Inferred(lot);
        if (lot.Wanted is not { } wanted)
            return wording.Say("finding.sentences", ("first", shown), ("next", wording.Say("finding.none-wanted")));
        var by = wording.Say("finding.wanted", ("share", Figures.Typed(wanted.Share)), ("by", By(wanted)));
        var both = wording.Say("finding.sentences", ("first", shown), ("next", by));
        if (lot.Chance is not { } chance || lot.IsWhole)
            return both;
        var withChance = wording.Say(
            "finding.sentences",
            ("first", both),
            (
                "next",
                lot is { Undecided: > 0, ChanceIfUndecidedPass: { } open }
                    ? wording.Say(
                        "finding.chance-of-lot-open",
                        ("share", Figures.Typed(wanted.Share)),
                        ("chance", Figures.Certainty(chance, wording, lot.Bound.Confidence)),
                        ("open", Figures.Certainty(open, wording, lot.Bound.Confidence))
                    )
                    : wording.Say(
                        "finding.chance-of-lot",
                        ("share", Figures.Typed(wanted.Share)),
                        ("chance", Figures.Certainty(chance, wording, lot.Bound.Confidence))
                    )
            )
        );
        // Two figures that seem to disagree do not stand side by side unexplained.
        return !lot.IsShown && chance >= lot.Bound.Confidence
            ? wording.Say(
                "finding.sentences",
                ("first", withChance),
                ("next", wording.Say("finding.bound-is-stricter"))
            )
            : withChance;
    }

    private string Inferred(LotFinding lot)
    {
        (string, string) supply = ("supply", AcceptanceWords.Supply(lot.LotSize, wording)),
            confidence = ("confidence", Figures.Typed(lot.Bound.Confidence)),
            share = ("share", AtLeast(lot.Bound.LowerBound, lot.Wanted)),
            open = ("open", AtLeast(lot.Bound.LowerBoundIfUndecidedPass, lot.Wanted));
        return (lot.Bound.LowerBound > 0, lot.Undecided > 0 && lot.Bound.LowerBoundIfUndecidedPass > 0) switch
        {
            (true, true) => wording.Say("finding.lot-shown-open", confidence, share, supply, open),
            (true, false) => wording.Say("finding.lot-shown", confidence, share, supply),
            (false, true) => wording.Say("finding.lot-none-shown-open", confidence, supply, open),
            (false, false) => wording.Say("finding.lot-none-shown", confidence, supply),
        };
    }

    // Nothing is inferred of a lot that was cut to the last piece.
    private string Whole(LotFinding lot, int pieces)
    {
        string Of(double share) => Figures.Whole((int)Math.Round(share * pieces));
        (string, string) conforming = ("conforming", Of(lot.Bound.LowerBound)),
            all = ("pieces", Figures.Whole(pieces));
        return pieces == 1 ? wording.Say(lot.Bound.LowerBound > 0 ? "finding.lot-of-one" : "finding.lot-of-one-not")
            : lot.Undecided > 0
                ? wording.Say(
                    "finding.lot-whole-open",
                    conforming,
                    all,
                    ("open", Of(lot.Bound.LowerBoundIfUndecidedPass))
                )
            : wording.Say("finding.lot-whole", conforming, all);
    }

    /// <summary>What was not judged, one sentence each.</summary>
    public IReadOnlyList<string> NotJudged(BatchFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return _reasons.Say(findings.NotJudged);
    }

    private IEnumerable<string> Lead(BatchFindings findings, string? measure)
    {
        var rule = findings.Rule;
        if (rule.Penetration is { } penetration)
        {
            yield return rule.Whole.Reasons.OfType<TwoDemands>().FirstOrDefault() is { } two
                ? wording.Say(
                    "finding.two-demands",
                    ("contract", two.ByContract.Name),
                    ("byContract", wording.SayRule(two.ByContract.Penetration.Verdict)),
                    ("code", two.ByCode.Name),
                    ("byCode", wording.SayRule(two.ByCode.Penetration.Verdict))
                )
            : rule.Whole.Reasons.OfType<OnlyContractDemands>().FirstOrDefault() is { } only
                ? wording.Say(
                    only.Code switch
                    {
                        NotNeeded => "finding.only-contract-asks",
                        NotPermitted => "finding.only-contract-forbidden",
                        _ => "finding.only-contract",
                    },
                    ("contract", only.Contract.Name),
                    ("byContract", wording.SayRule(penetration.Verdict))
                )
            : rule.Whole.Reasons.OfType<LeastOfCode>().FirstOrDefault()
                is { Demand.Requirement.PenetrationName: var least }
                ? wording.Say(
                    "finding.least-of-code",
                    ("least", least),
                    ("byLeast", wording.SayRule(penetration.Verdict))
                )
            : rule.Whole.Reasons.OfType<CodeOnlyRecommends>().Any()
                ? wording.Say(
                    "finding.only-recommended",
                    ("penetration", _reasons.Acceptance.Penetration(penetration.Verdict))
                )
            : _reasons.Acceptance.Penetration(penetration.Verdict);
            yield return _reasons.Acceptance.Retention(rule.Retention);
        }
        else if (measure is not null)
            yield return wording.Say(
                "finding.by-measure",
                ("rule", wording.SayRule(rule.Whole.Verdict)),
                ("measure", measure)
            );
        else
        {
            yield return rule.Whole.Reasons.OfType<CaseReason>().FirstOrDefault() switch
            {
                CodeForbids => wording.Say("finding.forbidden"),
                CodeAsksForNone { Answer.IsUnlessInsects: true } => wording.Say("finding.none-required-unless"),
                CodeAsksForNone => wording.Say("finding.none-required"),
                CodeSilentOnInsects => wording.Say("finding.silent-on-insects"),
                RulebookSilent { Answer.Reason: DependsOn } => wording.Say("finding.open-answer"),
                _ => wording.Say("finding.no-answer"),
            };
            if (rule.Retention is { } retention)
                yield return _reasons.Acceptance.Retention(retention);
        }
    }

    /// <summary>A rule that is met may be taken for the whole lot: whether that is shown stands beside it.</summary>
    private IEnumerable<string> Lot(BatchFindings findings)
    {
        var rule = findings.Rule;
        if (
            rule.Whole.Verdict == Verdict.DoesNotConform
            || (rule.Penetration ?? rule.Whole).Verdict != Verdict.Conforms
            || findings.Lot is not { Wanted: not null } lot
        )
            yield break;
        (string, string) share = ("share", AtLeast(lot.Bound.LowerBound, lot.Wanted));
        yield return lot is { IsWhole: true, LotSize: 1 }
            ? wording.Say(lot.Bound.LowerBound > 0 ? "finding.batch-of-one" : "finding.batch-of-one-not")
        : lot.IsWhole ? wording.Say("finding.batch-whole", share)
        : lot.IsShown ? wording.Say("finding.batch-shown", share)
        : lot.Bound.LowerBound > 0 ? wording.Say("finding.batch-not-shown", share)
        : wording.Say("finding.batch-none-shown");
    }

    private IEnumerable<string> Gaps(BatchFindings findings)
    {
        if (findings.NotJudged.OfType<PiecesNotDetermined>().FirstOrDefault() is { } open)
            yield return wording.Say(
                "finding.not-determined",
                ("pieces", wording.Count("count.piece", open.Pieces.Count))
            );
        if (findings.NotJudged.OfType<PiecesReadInPart>().FirstOrDefault() is { } part)
            yield return wording.Say("finding.read-in-part", ("pieces", wording.Count("count.piece", part.Pieces)));
        if (findings.NotJudged.Any(reason => reason is ContractNotJudged))
            yield return wording.Say("finding.contract-not-judged");
        if (findings.NotJudged.OfType<UseNotJudged>().FirstOrDefault() is { Of: var odd })
            yield return wording.Say(
                "finding.use-not-judged",
                ("class", odd.Contract!.StatedClass),
                ("use", new RequirementWords(wording).Rows.Label(odd.Other))
            );
        if (findings.NotJudged.Any(reason => reason is OnlyMeasureJudged))
            yield return wording.Say("finding.nothing-else");
    }

    private string By(WantedShare wanted) =>
        wanted.By switch
        {
            WantedBy.MustPass => wording.Say("finding.by-must-pass"),
            WantedBy.Aql => wording.Say("finding.by-aql", ("aql", Figures.Typed(1 - wanted.Share))),
            WantedBy.Asked => wording.Say("finding.by-asked"),
            _ => throw new ArgumentOutOfRangeException(nameof(wanted), wanted.By, "Not known."),
        };

    private string AtLeast(double share, WantedShare? wanted) => Figures.AtLeast(share, wording, wanted?.Share);
}

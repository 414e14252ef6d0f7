using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Documents;

/// <summary>Writes down what was found of a batch.</summary>
public static class FindingsMapping
{
    private static FindingWords Words => FindingWords.Current;

    /// <summary>The findings as a document.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="measure">What was measured, where the rule is one by variables; null otherwise.</param>
    internal static FindingsDocument Of(BatchFindings findings, string? measure = null) =>
        new()
        {
            Headline = Words.Headline(findings, measure),
            Weakest = findings.Weakest,
            Rule = new()
            {
                Verdict = findings.Rule.Whole.Verdict,
                Probability = Chance(findings.Rule.Whole.Probability?.Middle),
                ProbabilityLow = Chance(findings.Rule.Whole.Probability?.Low),
                ProbabilityHigh = Chance(findings.Rule.Whole.Probability?.High),
                InWords = Words.Rule(findings.Rule),
            },
            Lot = findings.Lot is { } lot ? Of(lot, findings.Rule.Retention is not null) : null,
            NotJudged = Words.NotJudged(findings),
            NotJudgedGrounds = ReasonMapping.Of(findings.NotJudged),
        };

    /// <summary>The findings of a case. A report kept before they were written down has its rule and reasons, and no more.</summary>
    public static FindingsDocument Of(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Findings
            ?? new()
            {
                Headline = Wording.Capital(Wording.Current.SayRule(document.Verdict.Verdict)),
                Weakest = Verdict.Undecided,
                Rule = new()
                {
                    Verdict = document.Verdict.Verdict,
                    InWords = string.Join(" ", document.Verdict.Reasons),
                },
                NotJudged = [],
            };
    }

    /// <summary>The lines under the headline: the rule, the lot, what was not judged; one that has nothing to say is left out.</summary>
    public static IEnumerable<(string Name, string Says)> Lines(FindingsDocument findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var (rule, lot, notJudged) = Words.Names;
        yield return (rule, findings.Rule.InWords);
        if (findings.Lot is { } shown)
            yield return (lot, shown.InWords);
        if (findings.NotJudged.Count > 0)
            yield return (notJudged, string.Join(" ", findings.NotJudged));
    }

    /// <summary>Whether a reason is said among the findings, so that it need not be said of its part.</summary>
    internal static bool Says(BatchFindings findings, Reason reason) =>
        findings.NotJudged.Contains(reason) || FindingWords.Says(findings.Rule).Contains(reason);

    /// <summary>A rule's judgement as a document.</summary>
    internal static RuleDocument Rule(Judgement judgement) =>
        new()
        {
            Verdict = judgement.Verdict,
            Probability = Chance(judgement.Probability?.Middle),
            ProbabilityLow = Chance(judgement.Probability?.Low),
            ProbabilityHigh = Chance(judgement.Probability?.High),
            Reasons = ReasonWords.Current.Say(judgement.Reasons),
            Grounds = ReasonMapping.Of(judgement.Reasons),
        };

    /// <summary>A probability as documents carry it: to a millionth. No measurement is certain, so none is written as 0 or 1.</summary>
    internal static double? Chance(double? probability) =>
        probability is { } known ? Math.Clamp(Math.Round(known, 6), 0.000001, 0.999999) : null;

    private static LotFindingDocument Of(LotFinding lot, bool isRetentionJudged) =>
        new()
        {
            Pieces = lot.LotSize,
            Confidence = lot.Bound.Confidence,
            LowerBound = Math.Round(lot.Bound.LowerBound, 6),
            LowerBoundIfUndecidedPass = Math.Round(lot.Bound.LowerBoundIfUndecidedPass, 6),
            WantedShare = lot.Wanted?.Share,
            WantedBy = lot.Wanted?.By,
            Probability = Chance(lot.Chance),
            ProbabilityIfUndecidedPass = Chance(lot.ChanceIfUndecidedPass),
            InWords = Words.Lot(lot, isRetentionJudged),
        };
}

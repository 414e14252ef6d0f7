using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Acceptance;

/// <summary>What the reader of a sampling sheet should know, one sentence each.</summary>
internal static class SampleNotes
{
    public static IEnumerable<string> Of(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables, Indexed: { } found } => [.. Indexed(found), Outgoing(sample)],
            { Request: SampleByShare, Indexed: { } found } => [AlsoRead(found), Outgoing(sample)],
            { Request: SampleToShow show, Plan: SingleSamplingPlan plan } => [Believed(show, plan), Outgoing(sample)],
            { Request: SampleForRisks { Plan: RiskPlan.Variables } } =>
            [
                "Holds only where the measure is near normal: plot the depths before relying on it.",
            ],
            { Request: SampleForRisks risks, MeanPiecesCut: { } mean } =>
            [
                $"On lots at {Percent(risks.Risks.AcceptableShare)} failing it cuts {mean.ToString("0.0", CultureInfo.InvariantCulture)} pieces on average; "
                    + $"the single plan for the same risks cuts {sample.SinglePlanSize}.",
                "Cut the pieces in the order given and stop as soon as the plan decides.",
            ],
            _ => [Outgoing(sample)],
        };

    private static IEnumerable<string> Indexed(IndexedPlan found)
    {
        var plan = found.Plan;
        if (found.IsEveryPieceInspected)
            yield return "The table's sample is as large as the lot or larger: every piece is cut.";
        if (found.UsedLetter != found.CodeLetter)
            yield return $"Letter {found.CodeLetter} has no plan at this AQL; the arrow leads to letter {found.UsedLetter}, "
                + "which changes sample size and numbers both.";
        if (plan.RejectionNumber > plan.AcceptanceNumber + 1)
            yield return $"Reduced inspection: {plan.AcceptanceNumber + 1} to {plan.RejectionNumber - 1} failures accept the lot but end reduced inspection.";
        if (found.CountsDefects)
            yield return "Above AQL 10 the standard counts defects per hundred pieces, not per cent of failing pieces.";
        if (PlanSampling.SameFigure(found) is { } other)
            yield return $"\"AQL {Aql(found)} %\" is also read as \"{ReasonWords.English.Acceptance.Rule(other)}\". Of {plan.SampleSize} pieces "
                + $"that lets {other.MayFail(plan.SampleSize)} fail where this plan lets {plan.AcceptanceNumber} fail. Passing this plan is not "
                + $"\"{Percent(other.Share)} compliant\"; the result must name the rule used.";
    }

    private static string AlsoRead(IndexedPlan found) =>
        $"\"AQL {Aql(found)} %\" is also read as the {ReasonWords.English.Acceptance.Name(found)}, which cuts {found.Plan.SampleSize} pieces "
        + $"and lets {found.Plan.AcceptanceNumber} fail. The two are different rules; the result must name the one used.";

    private static string Believed(SampleToShow show, SingleSamplingPlan plan)
    {
        var belief = new BetaBinomial(show.Failures, plan.SampleSize);
        return $"The Bayesian reading (Jeffreys' belief before) of such a result: {Percent(show.Confidence)} probable that at least "
            + $"{Percent(belief.ConformingShareExceeded(show.Confidence))} of the supply conform.";
    }

    private static string Outgoing(PlannedSample sample) =>
        $"If rejected lots are sorted piece by piece, at most {Percent(sample.OutgoingLimit ?? 0)} "
        + "failing pieces go out on average (AOQL).";

    private static string Aql(IndexedPlan found) => found.AqlPercent.ToString("0.######", CultureInfo.InvariantCulture);
}

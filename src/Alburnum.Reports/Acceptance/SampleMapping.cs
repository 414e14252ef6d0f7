using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a planned sample down.</summary>
public static class SampleMapping
{
    private const string OwnMethod = "built from the risks asked for, by exact sums";

    /// <summary>The sample as a document.</summary>
    public static SampleDocument Of(PlannedSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var (plan, source, standing) = Origin(sample);
        var lot = sample.Request.Lot;
        return new()
        {
            Plan = plan,
            Source = source,
            Standing = standing,
            LotSize = lot,
            Cut = Cut(sample),
            Passes = Passes(sample.Plan),
            MostPiecesCut = sample.Plan.MostPiecesCut,
            Seed = lot is null ? null : sample.Request.Seed,
            Positions = sample.Positions,
            Readings =
            [
                .. sample.Behaviours.Select(behaviour => new SampleReading
                {
                    Name = Name(behaviour.Reading, sample),
                    Landmarks = behaviour.Landmarks,
                    Curve = behaviour.Curve,
                }),
            ],
            Notes = [.. SampleNotes.Of(sample)],
        };
    }

    private static (string Plan, string Source, Standing Standing) Origin(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables, Indexed: { } found } => (
                ReasonWords.English.Acceptance.Name(found),
                found.Source.Citation,
                found.Source.Standing
            ),
            { Request: SampleByShare share } => (
                ReasonWords.English.Acceptance.Rule(share.Rule),
                "trade reading; no standard is named",
                Standing.CommonPractice
            ),
            { Request: SampleForRisks { Plan: RiskPlan.Variables } variables } => (
                $"plan by variables for {InWords(variables.Risks)}",
                "exact non-central t for a normal measure with unknown spread",
                Standing.Published
            ),
            { Request: SampleForRisks risks } => (
                $"{Kind(risks.Plan)} for {InWords(risks.Risks)}",
                OwnMethod,
                Standing.Published
            ),
            { Request: SampleToShow show } => (
                $"to show that {Percent(show.Share)} conform, at {Percent(show.Confidence)} confidence, with at most {Wording.English.Count("count.failure", show.Failures)}",
                show.Lot is null ? "exact binomial bound (Clopper–Pearson)" : "exact hypergeometric bound",
                Standing.Published
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(sample), sample, "Not a planned sample."),
        };

    private static string Kind(RiskPlan plan) =>
        plan switch
        {
            RiskPlan.Smallest => "smallest single plan",
            RiskPlan.Double => "double plan",
            _ => "sequential plan (Wald)",
        };

    private static string Cut(PlannedSample sample) =>
        sample.Plan switch
        {
            SingleSamplingPlan single when sample.Request.Lot is { } lot => $"{single.SampleSize} of {lot} pieces",
            DoubleSamplingPlan two =>
                $"{two.FirstSample} pieces; {two.SecondSample} more where the first do not decide",
            SequentialPlan wald => $"one piece at a time, at most {wald.LastPiece}",
            VariablesPlan variables => $"{variables.SampleSize} pieces, each measured",
            var plan => $"{plan.MostPiecesCut} pieces",
        };

    private static string Passes(SamplingPlan plan) =>
        plan switch
        {
            SingleSamplingPlan single =>
                $"at most {Wording.English.Count("count.failure", single.AcceptanceNumber)} pass; {single.RejectionNumber} or more do not",
            DoubleSamplingPlan two =>
                $"at most {Wording.English.Count("count.failure", two.AcceptFirst)} in the first sample pass, {two.RejectFirst} or more do not; "
                    + $"in between, at most {two.AcceptBoth} in both samples together pass",
            SequentialPlan wald => "after n pieces (n: passes at/fails at): " + string.Join(", ", Steps(wald)),
            VariablesPlan variables =>
                $"passes where mean − {variables.Factor.ToString("0.000", CultureInfo.InvariantCulture)} × standard deviation reaches the depth asked for",
            _ => throw new ArgumentOutOfRangeException(nameof(plan), plan, "Not a plan."),
        };

    private static IEnumerable<string> Steps(SequentialPlan plan) =>
        Enumerable
            .Range(1, plan.LastPiece)
            .Where(n =>
                plan.AcceptanceNumber(n) != plan.AcceptanceNumber(n - 1)
                || plan.RejectionNumber(n) != plan.RejectionNumber(n - 1)
            )
            .Select(n => $"{n}: {Number(plan.AcceptanceNumber(n))}/{Number(plan.RejectionNumber(n))}");

    private static string Number(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "–";

    private static string Name(PlanReading reading, PlannedSample sample) =>
        reading switch
        {
            PlanReading.Itself => "this plan",
            PlanReading.IndexedOnThisLot => $"{Index(sample.Indexed!)}, this lot",
            PlanReading.IndexedOnStandardSupply =>
                $"{Index(sample.Indexed!)}, {(sample.Indexed!.CountsDefects ? "defects (Poisson)" : "process (binomial)")}",
            PlanReading.ShareOnThisLot =>
                $"{ReasonWords.English.Acceptance.Rule(sample.Request is SampleByShare share ? share.Rule : PlanSampling.SameFigure(sample.Indexed!)!)}, this lot",
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "Not a reading."),
        };

    private static string Index(IndexedPlan found) =>
        $"plan indexed at AQL {found.AqlPercent.ToString("0.######", CultureInfo.InvariantCulture)}";

    private static string InWords(RiskPoints risks) =>
        $"accepting {Percent(risks.AcceptableShare)} failing (risk {Percent(risks.ProducerRisk)}) and rejecting "
        + $"{Percent(risks.RejectableShare)} failing (risk {Percent(risks.ConsumerRisk)})";
}

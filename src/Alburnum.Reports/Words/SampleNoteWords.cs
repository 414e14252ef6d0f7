using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>What the reader of a sampling plan should know, one sentence each.</summary>
/// <param name="wording">The language.</param>
public sealed class SampleNoteWords(Wording wording)
{
    private readonly AcceptanceWords _acceptance = new(wording);

    /// <summary>In the language chosen.</summary>
    public static SampleNoteWords Current => new(Wording.Current);

    /// <summary>The notes on a sample.</summary>
    public IReadOnlyList<string> Say(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables tables, Indexed: { } found } =>
            [
                .. FromCode(tables),
                .. Indexed(found),
                .. Outgoing(sample),
            ],
            { Request: SampleByShare, Indexed: { } found } => [AlsoRead(found), .. Outgoing(sample)],
            { Request: SampleToShow show, Plan: SingleSamplingPlan plan } =>
            [
                Believed(show, plan),
                .. Outgoing(sample),
            ],
            { Request: SampleIsolated isolated } => [.. Isolated(isolated, sample), .. Outgoing(sample)],
            { Request: SampleForRisks { Plan: RiskPlan.Variables } } => [wording.Say("sampling.only-if-normal")],
            { Request: SampleForRisks risks, MeanPiecesCut: { } mean, SinglePlanSize: { } single } =>
            [
                wording.Say(
                    "sampling.mean-pieces",
                    ("share", Typed(risks.Risks.AcceptableShare)),
                    ("mean", Number(mean, 1)),
                    ("single", Whole(single))
                ),
                wording.Say("sampling.keep-order"),
            ],
            _ => [.. Outgoing(sample)],
        };

    // What it costs to allow more failures, so that good lots pass.
    private IEnumerable<string> Isolated(SampleIsolated request, PlannedSample sample)
    {
        yield return wording.Say("sampling.isolated-why");
        yield return wording.Say(
            "sampling.isolated-good",
            ("share", Percent(sample.Behaviours[0].Landmarks.ProducerShare, wording))
        );
        foreach (var more in new[] { 1, 2, 3, 5 })
            if (
                PlanDesign.Limiting(request.LimitingShare, request.Risk, request.Failures + more, request.Pieces) is
                { } plan
            )
                yield return wording.Say(
                    "sampling.isolated-more",
                    ("failures", wording.Count("count.failure", plan.AcceptanceNumber)),
                    ("pieces", Whole(plan.SampleSize)),
                    (
                        "share",
                        Percent(
                            OperatingCharacteristic.ShareAccepted(plan, new FiniteLot(request.Pieces), 0.95),
                            wording
                        )
                    )
                );
        var level = ("level", InspectionKeys.Key(request.Level));
        yield return sample.Indexed is { } found
            ? wording.Say(
                "sampling.isolated-tables",
                level,
                ("aql", Aql(found)),
                ("pieces", Whole(found.Plan.SampleSize)),
                ("failures", wording.Count("count.failure", found.Plan.AcceptanceNumber))
            )
            : wording.Say("sampling.isolated-no-tables", level);
        yield return wording.Say("sampling.isolated-iso");
    }

    private IEnumerable<string> FromCode(SampleByTables request)
    {
        if (request.AqlFrom is { } source)
            yield return wording.Say(
                "sampling.aql-from-code",
                ("aql", Digits(request.AqlPercent, 6)),
                ("standing", wording.Say(source.Standing)),
                ("source", source.Citation)
            );
    }

    private IEnumerable<string> Indexed(IndexedPlan found)
    {
        var plan = found.Plan;
        if (found.IsEveryPieceInspected)
            yield return wording.Say("sampling.every-piece");
        if (found.UsedLetter != found.CodeLetter)
            yield return wording.Say(
                "sampling.arrow",
                ("letter", found.CodeLetter.ToString()),
                ("used", found.UsedLetter.ToString())
            );
        if (plan.RejectionNumber > plan.AcceptanceNumber + 1)
            yield return wording.Say(
                "sampling.reduced-gap",
                ("from", Whole(plan.AcceptanceNumber + 1)),
                ("to", Whole(plan.RejectionNumber - 1))
            );
        if (found.CountsDefects)
            yield return wording.Say("sampling.counts-defects");
        if (PlanSampling.SameFigure(found) is { } other)
            yield return wording.Say(
                "sampling.also-share",
                ("aql", Aql(found)),
                ("rule", _acceptance.Rule(other)),
                ("pieces", Whole(plan.SampleSize)),
                ("shareMayFail", Whole(other.MayFail(plan.SampleSize))),
                ("planMayFail", Whole(plan.AcceptanceNumber)),
                ("share", Typed(other.Share))
            );
    }

    private string AlsoRead(IndexedPlan found) =>
        wording.Say(
            "sampling.also-indexed",
            ("aql", Aql(found)),
            ("plan", _acceptance.Name(found)),
            ("pieces", Whole(found.Plan.SampleSize)),
            ("mayFail", Whole(found.Plan.AcceptanceNumber))
        );

    private string Believed(SampleToShow show, SingleSamplingPlan plan)
    {
        var belief = new BetaBinomial(show.Failures, plan.SampleSize);
        return wording.Say(
            "sampling.believed",
            ("confidence", Typed(show.Confidence)),
            ("share", Percent(belief.ConformingShareExceeded(show.Confidence), wording))
        );
    }

    private IEnumerable<string> Outgoing(PlannedSample sample)
    {
        if (sample.Outgoing is { } outgoing)
            yield return wording.Say(
                "sampling.outgoing",
                ("share", Percent(outgoing.Limit, wording)),
                ("at", Percent(outgoing.AtShare, wording))
            );
    }

    private static string Aql(IndexedPlan found) => Digits(found.AqlPercent, 6);
}

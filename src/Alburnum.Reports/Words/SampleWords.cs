using System.Globalization;
using Alburnum.Acceptance;
using Alburnum.Acceptance.Variables;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>A sampling plan in words: its name, where it comes from, what to cut and what passes.</summary>
/// <param name="wording">The language.</param>
public sealed class SampleWords(Wording wording)
{
    private readonly AcceptanceWords _acceptance = new(wording);

    /// <summary>In the language chosen.</summary>
    public static SampleWords Current => new(Wording.Current);

    /// <summary>The plan's full name.</summary>
    public string Plan(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables, Indexed: { } found } => _acceptance.Name(found),
            { Request: SampleByShare share } => _acceptance.Rule(share.Rule),
            { Request: SampleForRisks risks } => wording.Say(
                "sampling.for-risks",
                ("plan", Kind(risks.Plan)),
                ("acceptable", Typed(risks.Risks.AcceptableShare)),
                ("producer", Typed(risks.Risks.ProducerRisk)),
                ("rejectable", Typed(risks.Risks.RejectableShare)),
                ("consumer", Typed(risks.Risks.ConsumerRisk))
            ),
            { Request: SampleToShow show } => wording.Say(
                "sampling.to-show",
                ("share", Typed(show.Share)),
                ("confidence", Typed(show.Confidence)),
                ("failures", Failures(show.Failures))
            ),
            { Request: SampleIsolated isolated } => wording.Say(
                "sampling.isolated",
                ("limiting", Typed(isolated.LimitingShare)),
                ("risk", Typed(isolated.Risk)),
                ("failures", Failures(isolated.Failures))
            ),
            _ => throw Unknown(sample),
        };

    /// <summary>The standard or method that it comes from.</summary>
    public string Source(PlannedSample sample) =>
        sample switch
        {
            { Request: SampleByTables, Indexed: { } found } => found.Source.Citation,
            { Request: SampleByShare } => wording.Say("sampling.trade-reading"),
            { Request: SampleForRisks { Plan: RiskPlan.Variables } } => wording.Say("sampling.non-central-t"),
            { Request: SampleForRisks } => wording.Say("sampling.exact-sums"),
            { Request: SampleToShow { Lot: null } } => wording.Say("sampling.binomial-bound"),
            { Request: SampleToShow } => wording.Say("sampling.hypergeometric-bound"),
            { Request: SampleIsolated } => wording.Say("sampling.exact-lot"),
            _ => throw Unknown(sample),
        };

    /// <summary>What to cut.</summary>
    public string Cut(PlannedSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return sample.Plan switch
        {
            SingleSamplingPlan single when sample.Request.Lot is { } lot => wording.Say(
                "sampling.cut-of-lot",
                ("pieces", Whole(single.SampleSize)),
                ("lot", Whole(lot))
            ),
            DoubleSamplingPlan two => wording.Say(
                "sampling.cut-two",
                ("first", Whole(two.FirstSample)),
                ("second", Whole(two.SecondSample))
            ),
            SequentialPlan wald => wording.Say("sampling.cut-one-by-one", ("last", Whole(wald.LastPiece))),
            VariablesPlan variables => wording.Say("sampling.measure", ("pieces", Whole(variables.SampleSize))),
            var plan => wording.Say("sampling.cut", ("pieces", Whole(plan.MostPiecesCut))),
        };
    }

    /// <summary>What passes.</summary>
    public string Passes(SamplingPlan plan) =>
        plan switch
        {
            SingleSamplingPlan single => wording.Say(
                "sampling.passes",
                ("failures", Failures(single.AcceptanceNumber)),
                ("rejected", Whole(single.RejectionNumber))
            ),
            DoubleSamplingPlan two => wording.Say(
                "sampling.passes-two",
                ("failures", Failures(two.AcceptFirst)),
                ("rejected", Whole(two.RejectFirst)),
                ("both", Whole(two.AcceptBoth))
            ),
            SequentialPlan wald => wording.Say("sampling.passes-one-by-one", ("steps", string.Join(", ", Steps(wald)))),
            VariablesPlan variables => wording.Say("sampling.passes-measured", ("factor", Number(variables.Factor, 3))),
            _ => throw new ArgumentOutOfRangeException(nameof(plan), plan, "Not a plan."),
        };

    /// <summary>How the pieces to cut are counted.</summary>
    /// <param name="seed">Seed that they were drawn with.</param>
    public string Positions(ulong seed) =>
        wording.Say("sampling.positions", ("seed", seed.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Heading of the mean number of pieces cut.</summary>
    public string MeanPiecesCut => wording.Say("sampling.mean-pieces-cut");

    /// <summary>Heading of the failing shares that are accepted with stated probabilities.</summary>
    public string AcceptedWith => wording.Say("sampling.accepted-with");

    /// <summary>As what the plan is read.</summary>
    public string Reading(PlanReading reading, PlannedSample sample) =>
        reading switch
        {
            PlanReading.Itself => wording.Say("sampling.this-plan"),
            PlanReading.IndexedOnThisLot => wording.Say("sampling.indexed-this-lot", Aql(sample)),
            PlanReading.IndexedOnStandardSupply when sample.Indexed!.CountsDefects => wording.Say(
                "sampling.indexed-defects",
                Aql(sample)
            ),
            PlanReading.IndexedOnStandardSupply => wording.Say("sampling.indexed-process", Aql(sample)),
            PlanReading.ShareOnThisLot => wording.Say(
                "sampling.rule-this-lot",
                ("rule", _acceptance.Rule(Share(sample)))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "Not a reading."),
        };

    private static AcceptanceRule Share(PlannedSample sample) =>
        sample.Request is SampleByShare share ? share.Rule : PlanSampling.SameFigure(sample.Indexed!)!;

    private static (string, string) Aql(PlannedSample sample) => ("aql", Digits(sample.Indexed!.AqlPercent, 6));

    private string Kind(RiskPlan plan) =>
        plan switch
        {
            RiskPlan.Smallest => wording.Say("sampling.smallest"),
            RiskPlan.Double => wording.Say("sampling.double"),
            RiskPlan.Sequential => wording.Say("sampling.sequential"),
            RiskPlan.Variables => wording.Say("sampling.variables"),
            _ => throw new ArgumentOutOfRangeException(nameof(plan), plan, "Not a plan."),
        };

    private string Failures(int count) => wording.Count("count.failure", count);

    // Only where a number changes.
    private static IEnumerable<string> Steps(SequentialPlan plan) =>
        Enumerable
            .Range(1, plan.LastPiece)
            .Where(n =>
                plan.AcceptanceNumber(n) != plan.AcceptanceNumber(n - 1)
                || plan.RejectionNumber(n) != plan.RejectionNumber(n - 1)
            )
            .Select(n => $"{n}: {OrDash(plan.AcceptanceNumber(n))}/{OrDash(plan.RejectionNumber(n))}");

    private static string OrDash(int? count) => count is { } known ? Whole(known) : "–";

    private static ArgumentOutOfRangeException Unknown(PlannedSample sample) =>
        new(nameof(sample), sample, "Not a planned sample.");
}

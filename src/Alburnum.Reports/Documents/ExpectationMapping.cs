using Alburnum.Reports.Words;
using Alburnum.Workflows.Cases;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Documents;

/// <summary>What was expected of a case's timber, as documents and as rows for the sheets.</summary>
public static class ExpectationMapping
{
    /// <summary>The prediction beside the measurement; null where there is none.</summary>
    internal static CasePredictionDocument? Prediction(CaseReading run)
    {
        if (run.Expected.Prediction is not { } prediction)
            return null;
        var (asked, words) = (prediction.Asked, TreatingWords.Current);
        return new()
        {
            Schedule = asked.Schedule.Value.Name,
            Incising = asked.Prediction.Incising is { } cuts ? words.Say(cuts) : null,
            Demand = TreatingWords.Demand(asked.Prediction.Rule),
            MeanDepthMm = prediction.Quick.MeanMm,
            MeasuredMeanDepthMm = run.Judged.Measured.MeanDepthMm,
            CoreShare = asked.Prediction.IsDepthAsked ? prediction.Quick.CoreShare : null,
            Assumptions = words.Say(asked.Assumptions),
            RestsOn = [.. PredictionWords.Current.RestsOn(prediction)],
            Standing = prediction.Standing,
            Plant = PlantDocument.Of(prediction),
        };
    }

    /// <summary>The charge; null where there is none.</summary>
    internal static CaseChargeDocument? Charge(CaseReading run) =>
        run
            is not {
                Judged.Predicted.Charge: { } plan,
                Expected: { Charge: { Expected.Order: var order } planned } expected
            }
            ? null
            : new()
            {
                Name = order.Name,
                PieceCount = order.Pieces.Sum(pieces => pieces.Count),
                VolumeM3 = order.VolumeM3,
                DryingDays = planned.DryingDays,
                RequiredKgPerM3 = plan.Question.RetentionKgPerM3,
                UptakeLPerM3 = plan.Question.UptakeLPerM3,
                SolutionL = plan.SolutionL,
                StrengthPercent = plan.StrengthPercent,
                ProductKg = plan.ConcentrateKg,
                AsRun = expected.Account is { } account ? AsRun(account) : null,
            };

    private static CaseUptakeDocument AsRun(ReconciledCharge run) =>
        new()
        {
            UptakeLPerM3 = run.Account.NetLPerM3,
            RetentionKgPerM3 = run.Account.RetentionKgPerM3,
            AsExpected = run.IsAsExpected,
            Findings =
            [
                ChargeWords.Current.Expectation(run.Expected.Question.UptakeLPerM3, run.IsAsExpected),
                .. ChargeWords.Current.Say(run.Account.Findings),
            ],
        };

    /// <summary>What to mind with a prediction and with a charge.</summary>
    internal static IEnumerable<string> Cautions(CaseExpectation expected) =>
        [
            .. expected.Prediction is { } known ? TreatingWords.Current.Cautions(known.Asked) : [],
            .. expected.Charge is null ? [] : ChargeWords.Current.Cautions,
        ];

    /// <summary>Whether a case says anything of what was expected.</summary>
    public static bool HasExpectation(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document is not { Prediction: null, Charge: null };
    }

    /// <summary>What was expected as name and value, what was measured beside it.</summary>
    public static IEnumerable<(string Name, string Value)> Rows(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var words = ExpectationWords.Current;
        if (document.Prediction is { } prediction)
        {
            yield return words.Treatment(prediction.Schedule, prediction.Incising);
            yield return words.PredictedDepth(prediction.MeanDepthMm);
            yield return words.MeasuredDepth(
                prediction.MeasuredMeanDepthMm,
                document.Pieces.Count(piece => piece.Reading.Depth is not null)
            );
            if (prediction.CoreShare is { } cores)
                yield return words.Cores(cores, prediction.Demand);
            if (prediction.Plant is { } plant)
                foreach (var forecasts in plant.Forecasts)
                    yield return words.Foretold(
                        forecasts.Measure,
                        forecasts.Held,
                        forecasts.Count,
                        forecasts.Drifts.Count > 0
                    );
            yield return words.RestsOn(prediction.Standing);
        }
        if (document.Charge is { } charge)
        {
            yield return words.Charge(charge.Name, charge.PieceCount, charge.VolumeM3);
            yield return words.Solution(charge.SolutionL, charge.StrengthPercent, charge.ProductKg);
            yield return words.Uptake(charge.UptakeLPerM3, charge.RequiredKgPerM3);
            if (charge.AsRun is { } run)
                yield return words.AsRun(run.UptakeLPerM3, run.RetentionKgPerM3);
        }
    }

    /// <summary>What is to be said of it beside the rows, one sentence each.</summary>
    public static IEnumerable<string> Notes(CaseDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (document.Charge?.DryingDays is { } days)
            yield return ChargeWords.Current.TooWet(days);
        foreach (var finding in document.Charge?.AsRun?.Findings ?? [])
            yield return finding;
        if (document.Prediction?.Plant is { } plant)
            foreach (var sentence in plant.Calibrated.Concat(plant.InWords))
                yield return sentence;
        if (document.Prediction?.Assumptions is { Count: > 0 } assumptions)
            yield return TreatingWords.Current.Assumed(assumptions);
    }
}

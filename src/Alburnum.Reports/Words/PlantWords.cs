using Alburnum.Acceptance.History;
using Alburnum.Impregnation.Prediction;
using Alburnum.Workflows.Impregnation;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>What a plant's own charges say of a prediction, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class PlantWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static PlantWords Current => new(Wording.Current);

    /// <summary>What stands above it all.</summary>
    public string Title => wording.Say("plant.title");

    /// <summary>What the plant's charges made of each law.</summary>
    internal IEnumerable<string> RestsOn(TreatingPrediction prediction)
    {
        foreach (var (_, calibration) in prediction.Plant)
        {
            yield return Fitted(calibration.Fit);
            if (calibration.Conflict is { } conflict)
                yield return wording.Say(
                    "plant.conflict",
                    ("name", conflict.ByDepths.Name),
                    ("byDepths", PredictionWords.Nm2(conflict.ByDepths)),
                    ("byUptakes", PredictionWords.Nm2(conflict.ByUptakes))
                );
            if (calibration.Fit.UptakeFactor is { } factor)
                yield return wording.Say(
                    "plant.uptake-factor",
                    ("factor", Number(factor.Value, 2)),
                    ("uncertainty", Number(factor.StandardUncertainty, 2))
                );
        }
        if (
            prediction.Asked.Prediction.Incising is not null
            && prediction.Plant.Any(wood => wood.Calibration.Fit.Depths > 0)
        )
            yield return wording.Say("plant.without-cuts");
    }

    /// <summary>How the plant's charges came out beside what was foretold of them, one sentence each; empty where no plant was given.</summary>
    public IEnumerable<string> Say(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var records = prediction.Plant.Forecasts().ToList();
        if (prediction.Plant.Count > 0 && records.Count == 0)
            yield return wording.Say("plant.too-short");
        foreach (var (what, record) in records)
        {
            var measure = Say(what);
            yield return Held(measure, record);
            var last = record.Charges[^1];
            yield return wording.Say(
                "plant.latest",
                ("charge", last.Charge),
                ("low", Number(last.Foretold.Low, 1)),
                ("high", Number(last.Foretold.High, 1)),
                ("measured", Number(last.Measured, 1)),
                ("unit", what == PlantMeasure.Uptake ? "L/m³" : "mm")
            );
            foreach (var drift in record.Drifts)
                yield return wording.Say(
                    drift.IsUp ? "plant.drift-up" : "plant.drift-down",
                    ("measure", measure),
                    ("from", drift.From),
                    ("at", drift.SignalledAt)
                );
        }
        if (records.Count == 0)
            yield break;
        if (records.All(record => record.Record.Drifts.Count == 0))
            yield return wording.Say("plant.no-drift");
        yield return wording.Say(
            "plant.alarm",
            ("allowance", Digits(ForecastRecord.Chart.Allowance)),
            ("interval", Digits(ForecastRecord.Chart.Interval)),
            ("false", Digits(AverageRunLength.Of(ForecastRecord.Chart, 0), 0))
        );
    }

    private string Say(PlantMeasure measure) =>
        wording.Say(
            measure switch
            {
                PlantMeasure.SapwoodDepth => "plant.measure.sapwood",
                PlantMeasure.HeartwoodDepth => "plant.measure.heartwood",
                PlantMeasure.Uptake => "plant.measure.uptake",
                _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure."),
            }
        );

    private string Held(string measure, ForecastRecord record)
    {
        var (low, high) = record.HeldShare;
        var verdict =
            record.IsAsStated ? "plant.as-stated"
            : high < ForecastRecord.Stated ? "plant.too-few"
            : "plant.too-many";
        return wording.Say(
            "plant.held",
            ("measure", measure),
            ("held", Whole(record.Held)),
            ("count", Whole(record.Charges.Count)),
            ("stated", WholePercent(ForecastRecord.Stated, wording)),
            (
                "verdict",
                wording.Say(
                    verdict,
                    ("low", WholePercent(low, wording)),
                    ("high", WholePercent(high, wording)),
                    ("confidence", WholePercent(ForecastRecord.Confidence, wording))
                )
            )
        );
    }

    private string Fitted(PermeabilityFit fit)
    {
        var depths = wording.Say("plant.depths", ("depths", Whole(fit.Depths)), ("pieces", Whole(fit.Pieces)));
        var uptakes = wording.Say("plant.uptakes", ("uptakes", Whole(fit.Uptakes)));
        return wording.Say(
            "plant.fitted",
            ("name", fit.Before.Name),
            (
                "evidence",
                fit.Uptakes == 0 ? depths
                : fit.Depths == 0 ? uptakes
                : wording.Say("plant.and", ("depths", depths), ("uptakes", uptakes))
            ),
            ("charges", Whole(fit.Charges)),
            ("medianBefore", PredictionWords.Nm2(fit.Before)),
            ("medianAfter", PredictionWords.Nm2(fit.After)),
            ("factorBefore", PredictionWords.Factor(fit.Before)),
            ("factorAfter", PredictionWords.Factor(fit.After))
        );
    }
}

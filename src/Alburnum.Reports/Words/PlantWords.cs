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
        foreach (var wood in prediction.Plant)
        {
            var fit = wood.Calibration.Fit;
            yield return Fitted(fit);
            if (wood.Sections.Count > 0)
                yield return Sections(wood.Sections);
            if (fit.WallShares is { Count: > 0 } shares)
                yield return Walls(wood.WallsMostGPerKg, shares);
            if (fit.UptakeFactor is not { } factor)
                continue;
            yield return wording.Say(
                "plant.uptake-factor",
                ("factor", Number(factor.Value, 2)),
                ("uncertainty", Number(factor.StandardUncertainty, 2))
            );
            if (fit.IsUptakeFactorFar)
                yield return wording.Say(
                    "plant.uptake-factor-far",
                    ("low", Number(Math.Exp(-fit.MostLnUptakeFactor), 2)),
                    ("high", Number(Math.Exp(fit.MostLnUptakeFactor), 2))
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
        // What was left out of the prediction comes first: it says what the rest is worth.
        foreach (var wood in prediction.Plant)
        {
            if (wood.Calibration.Untaken is { Count: > 0 } untaken)
                yield return Untaken(wood.Calibration.Fit, untaken);
            foreach (var conflict in wood.Calibration.Conflicts)
                yield return Contradicts(wood.Calibration.Fit, conflict);
        }
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

    internal string Say(PlantMeasure measure) =>
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

    private string Untaken(PermeabilityFit fit, IReadOnlyList<UntakenCharge> untaken) =>
        wording.Say(
            "plant.untaken",
            ("name", fit.Before.Name),
            ("charges", string.Join(", ", untaken.Select(charge => charge.Charge))),
            ("least", Number(untaken.Min(charge => charge.ForetoldLeastMm), 1)),
            ("left", Whole(untaken.Count)),
            ("all", Whole(fit.Charges + untaken.Count))
        );

    // A conflict says what the kinds trusted before it say together.
    private string Contradicts(PermeabilityFit fit, EvidenceConflict conflict) =>
        wording.Say(
            "plant.conflict",
            ("kind", wording.Say($"plant.kind.{Key(conflict.Kind)}")),
            ("name", conflict.ByTrusted.Name),
            (
                "trusted",
                wording.Joined(
                    "plant.and",
                    Enum.GetValues<PlantEvidenceKind>()
                        .Where(kind => kind < conflict.Kind && Count(fit, kind) > 0)
                        .Select(kind => wording.Say($"plant.kind.{Key(kind)}"))
                )
            ),
            ("byTrusted", PredictionWords.Nm2(conflict.ByTrusted)),
            ("byKind", PredictionWords.Nm2(conflict.KindMedianM2)),
            ("check", wording.Say($"plant.check.{Key(conflict.Kind)}"))
        );

    private string Sections(IReadOnlyList<CountedSection> sections)
    {
        double[] apart = [.. sections.Select(section => section.DistanceMm).Where(double.IsFinite).Order()];
        return wording.Say(
            "plant.sections",
            ("places", Whole(sections.Sum(section => section.Places))),
            ("sections", wording.Count("plant.section", sections.Count)),
            ("counted", Whole(sections.Sum(section => section.Counted))),
            (
                "apart",
                apart.Length == 0 ? wording.Say("plant.one-of-each-face")
                : Number(apart[0], 0) is var low && Number(apart[^1], 0) is var high && low == high
                    ? wording.Say("plant.apart", ("low", low))
                : wording.Say("plant.apart-between", ("low", low), ("high", high))
            )
        );
    }

    private string Walls(IReadOnlyList<double> mostGPerKg, IReadOnlyList<double> shares)
    {
        return wording.Say(
            "plant.walls",
            ("least", Digits(mostGPerKg[0])),
            ("most", Digits(mostGPerKg[^1])),
            ("low", Digits(mostGPerKg[At(0.05)])),
            ("high", Digits(mostGPerKg[At(0.95)]))
        );

        int At(double share)
        {
            double sum = 0;
            for (var i = 0; i < shares.Count; i++)
                if ((sum += shares[i]) >= share)
                    return i;
            return shares.Count - 1;
        }
    }

    private static int Count(PermeabilityFit fit, PlantEvidenceKind kind) =>
        kind == PlantEvidenceKind.Depths ? fit.Depths : fit.Read(kind);

    private static string Key(PlantEvidenceKind kind) =>
        kind switch
        {
            PlantEvidenceKind.Depths => "depths",
            PlantEvidenceKind.Uptakes => "uptakes",
            PlantEvidenceKind.Tank => "tank",
            PlantEvidenceKind.Zones => "zones",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind."),
        };

    private string Fitted(PermeabilityFit fit)
    {
        IEnumerable<string> evidence = Enum.GetValues<PlantEvidenceKind>()
            .Where(kind => Count(fit, kind) > 0)
            .Select(kind =>
                kind == PlantEvidenceKind.Depths
                    ? wording.Say("plant.depths", ("depths", Whole(fit.Depths)), ("pieces", Whole(fit.Pieces)))
                    : wording.Count($"plant.{Key(kind)}", fit.Read(kind))
            );
        return wording.Say(
            "plant.fitted",
            ("name", fit.Before.Name),
            ("evidence", wording.Joined("plant.and", evidence)),
            ("charges", Whole(fit.Charges)),
            ("medianBefore", PredictionWords.Nm2(fit.Before)),
            ("medianAfter", PredictionWords.Nm2(fit.After)),
            ("factorBefore", PredictionWords.Factor(fit.Before)),
            ("factorAfter", PredictionWords.Factor(fit.After))
        );
    }
}

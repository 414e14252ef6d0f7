using Alburnum.Impregnation.Prediction;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What was expected of a case's timber, in words: rows of a name and a value, and remarks.</summary>
/// <param name="wording">The language.</param>
public sealed class ExpectationWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static ExpectationWords Current => new(Wording.Current);

    /// <summary>Title of the section.</summary>
    public string Title => wording.Say("expectation.title");

    /// <summary>How the timber was to be treated.</summary>
    public (string Name, string Value) Treatment(string schedule, string? incising) =>
        (
            wording.Say("expectation.treatment"),
            incising is null
                ? wording.Say("expectation.schedule", ("schedule", schedule))
                : wording.Say("expectation.schedule-incised", ("schedule", schedule), ("cuts", incising))
        );

    /// <summary>The mean depth predicted, mm.</summary>
    public (string Name, string Value) PredictedDepth(Spread mm) =>
        (
            wording.Say("expectation.predicted-depth"),
            wording.Say(
                "expectation.depth-range",
                ("middle", Figures.Number(mm.Middle, 1)),
                ("low", Figures.Number(mm.Low, 1)),
                ("high", Figures.Number(mm.High, 1))
            )
        );

    /// <summary>The mean depth measured, mm; null where none could be read.</summary>
    public (string Name, string Value) MeasuredDepth(Estimate? mm, int pieces) =>
        (
            wording.Say("expectation.measured-depth"),
            mm is { } mean
                ? wording.Say(
                    "expectation.mean-of-pieces",
                    ("depth", Figures.Measured(mean.Value, mean.StandardUncertainty, "mm")),
                    ("pieces", wording.Count("count.piece", pieces))
                )
                : wording.Say("figures.not-determined")
        );

    /// <summary>Share of cores expected to meet the demand.</summary>
    public (string Name, string Value) Cores(Estimate share, string demand) =>
        (
            wording.Say("expectation.cores"),
            Figures.IsNearlyAllOrNothing(share.Value)
                ? wording.Say(
                    "expectation.core-share-alone",
                    ("share", Figures.Certainty(share.Value, wording)),
                    ("demand", demand)
                )
                : wording.Say(
                    "expectation.core-share",
                    ("share", Figures.Certainty(share.Value, wording)),
                    ("spread", Figures.Certainty(share.StandardUncertainty, wording)),
                    ("demand", demand)
                )
        );

    /// <summary>How a plant's charges came out beside what was foretold of them, and whether they have drifted.</summary>
    /// <param name="measure">What was foretold.</param>
    /// <param name="held">Forecasts that held.</param>
    /// <param name="count">Of so many.</param>
    /// <param name="isDrifting">True where a drift was signalled.</param>
    public (string Name, string Value) Foretold(PlantMeasure measure, int held, int count, bool isDrifting) =>
        (
            wording.Say("expectation.foretold", ("measure", new PlantWords(wording).Say(measure))),
            wording.Say(
                isDrifting ? "expectation.held-drifting" : "expectation.held",
                ("held", Figures.Whole(held)),
                ("count", Figures.Whole(count)),
                ("stated", Figures.WholePercent(ForecastRecord.Stated, wording))
            )
        );

    /// <summary>The weakest fact that the prediction rests on.</summary>
    public (string Name, string Value) RestsOn(Standing standing) =>
        (wording.Say("expectation.weakest-standing"), wording.Say(standing));

    /// <summary>What the charge was to hold.</summary>
    public (string Name, string Value) Charge(string name, int pieces, double volumeM3) =>
        (
            wording.Say("expectation.charge"),
            wording.Say(
                "expectation.load",
                ("name", name),
                ("pieces", wording.Count("count.piece", pieces)),
                ("volume", Figures.Number(volumeM3, 2))
            )
        );

    /// <summary>Solution and product that the charge was to take.</summary>
    public (string Name, string Value) Solution(Estimate litres, Estimate percent, Estimate kg) =>
        (
            wording.Say("expectation.solution"),
            wording.Say(
                "expectation.solution-and-product",
                ("solution", Figures.Measured(litres.Value, litres.StandardUncertainty, "L")),
                ("strength", Figures.Measured(percent.Value, percent.StandardUncertainty, "%")),
                ("product", Figures.Measured(kg.Value, kg.StandardUncertainty, "kg"))
            )
        );

    /// <summary>Uptake expected, and the retention it was to give.</summary>
    public (string Name, string Value) Uptake(Estimate litresPerM3, double requiredKgPerM3) =>
        (
            wording.Say("expectation.uptake"),
            wording.Say(
                "expectation.uptake-for-retention",
                ("uptake", Figures.Measured(litresPerM3.Value, litresPerM3.StandardUncertainty, "L/m³")),
                ("retention", Figures.KgPerM3(requiredKgPerM3))
            )
        );

    /// <summary>Uptake as the charge was run, and the product that came with it.</summary>
    public (string Name, string Value) AsRun(Estimate litresPerM3, Estimate productKgPerM3) =>
        (
            wording.Say("expectation.as-run"),
            wording.Say(
                "expectation.uptake-and-product",
                ("uptake", Figures.Measured(litresPerM3.Value, litresPerM3.StandardUncertainty, "L/m³")),
                ("product", Figures.Measured(productKgPerM3.Value, productKgPerM3.StandardUncertainty, "kg/m³"))
            )
        );
}

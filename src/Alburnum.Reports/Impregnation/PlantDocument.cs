using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>sapwood depth, heartwood depth, uptake.</summary>
public sealed class PlantMeasureConverter : WordConverter<PlantMeasure>;

/// <summary>A plant's own charges beside what was foretold of them.</summary>
public sealed record PlantDocument
{
    /// <summary>The plant's uptakes over those expected of its wood; null where no uptake was used.</summary>
    public required double? UptakeFactor { get; init; }

    /// <summary>Each measure.</summary>
    public required IReadOnlyList<PlantForecastsDocument> Forecasts { get; init; }

    /// <summary>The same in sentences.</summary>
    public required IReadOnlyList<string> InWords { get; init; }

    /// <summary>The plant of a prediction as a document; null where none was given.</summary>
    public static PlantDocument? Of(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        return prediction.Plant.Count == 0
            ? null
            : new()
            {
                UptakeFactor = prediction.UptakeFactor,
                Forecasts =
                [
                    .. prediction
                        .Plant.Forecasts()
                        .Select(record => PlantForecastsDocument.Of(record.Measure, record.Record)),
                ],
                InWords = [.. PlantWords.Current.Say(prediction)],
            };
    }
}

/// <summary>Forecasts of one measure.</summary>
public sealed record PlantForecastsDocument
{
    /// <summary>What was foretold.</summary>
    [JsonConverter(typeof(PlantMeasureConverter))]
    public required PlantMeasure Measure { get; init; }

    /// <summary>Forecasts, each made from the charges before it alone.</summary>
    public required int Count { get; init; }

    /// <summary>How many of them held.</summary>
    public required int Held { get; init; }

    /// <summary>Share that should.</summary>
    public required double Stated { get; init; }

    /// <summary>Least share that may hold in the long run, 95 % confidence.</summary>
    public required double HeldLow { get; init; }

    /// <summary>Greatest share likewise.</summary>
    public required double HeldHigh { get; init; }

    /// <summary>Each drift, oldest first.</summary>
    public required IReadOnlyList<Drift> Drifts { get; init; }

    /// <summary>Each charge but the first, oldest first.</summary>
    public required IReadOnlyList<ChargeForecast> Charges { get; init; }

    internal static PlantForecastsDocument Of(PlantMeasure measure, ForecastRecord record)
    {
        var (low, high) = record.HeldShare;
        return new()
        {
            Measure = measure,
            Count = record.Charges.Count,
            Held = record.Held,
            Stated = ForecastRecord.Stated,
            HeldLow = low,
            HeldHigh = high,
            Drifts = record.Drifts,
            Charges = record.Charges,
        };
    }
}

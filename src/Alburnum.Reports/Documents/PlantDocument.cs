using System.Text.Json.Serialization;
using Alburnum.Impregnation.Prediction;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Documents;

/// <summary>sapwood depth, heartwood depth, uptake.</summary>
public sealed class PlantMeasureConverter : WordConverter<PlantMeasure>;

/// <summary>depths, uptakes, tank, zones.</summary>
public sealed class PlantEvidenceKindConverter : WordConverter<PlantEvidenceKind>;

/// <summary>A plant's own charges beside what was foretold of them.</summary>
public sealed record PlantDocument
{
    /// <summary>The plant's uptakes over those expected of its wood; null where nothing was read of whole charges.</summary>
    public required double? UptakeFactor { get; init; }

    /// <summary>Each measure.</summary>
    public required IReadOnlyList<PlantForecastsDocument> Forecasts { get; init; }

    /// <summary>Places on each measured section.</summary>
    public required IReadOnlyList<PlantSectionDocument> Sections { get; init; }

    /// <summary>What the walls may take, by the assays of zones; empty where none was given or it is known.</summary>
    public required IReadOnlyList<PlantWallsDocument> Walls { get; init; }

    /// <summary>Each kind of evidence that contradicts those trusted before it, and was left out.</summary>
    public required IReadOnlyList<PlantConflictDocument> Conflicts { get; init; }

    /// <summary>Charges in which nothing penetrated against all that was foretold, left out likewise.</summary>
    public required IReadOnlyList<PlantUntakenDocument> Untaken { get; init; }

    /// <summary>How each law was calibrated, one sentence each.</summary>
    public required IReadOnlyList<string> Calibrated { get; init; }

    /// <summary>What was left out and why, and how the forecasts came out, in sentences.</summary>
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
                Sections =
                [
                    .. prediction
                        .Plant.SelectMany(wood => wood.Sections)
                        .Select(section => new PlantSectionDocument
                        {
                            Places = section.Places,
                            Counted = section.Counted,
                            DistanceMm = double.IsFinite(section.DistanceMm) ? section.DistanceMm : null,
                        }),
                ],
                Walls =
                [
                    .. prediction.Plant.SelectMany(wood =>
                        wood.WallsMostGPerKg.Zip(
                            wood.Calibration.Fit.WallShares,
                            (most, share) => new PlantWallsDocument { MostGPerKg = most, Share = share }
                        )
                    ),
                ],
                Conflicts = [.. prediction.Plant.SelectMany(PlantConflictDocument.Of)],
                Untaken = [.. prediction.Plant.SelectMany(PlantUntakenDocument.Of)],
                Calibrated = [.. PlantWords.Current.RestsOn(prediction)],
                InWords = [.. PlantWords.Current.Say(prediction)],
            };
    }
}

/// <summary>A measured section: how many of its places tell something of their own.</summary>
public sealed record PlantSectionDocument
{
    /// <summary>Places at which its depth was read.</summary>
    public required int Places { get; init; }

    /// <summary>Places far enough apart to count.</summary>
    public required int Counted { get; init; }

    /// <summary>How far apart these lie, mm; null where one of each face counts.</summary>
    public required double? DistanceMm { get; init; }
}

/// <summary>One law of what the walls take up, on contact and for good.</summary>
public sealed record PlantWallsDocument
{
    /// <summary>Most product that they take, g per kg of oven-dry wood.</summary>
    public required double MostGPerKg { get; init; }

    /// <summary>How likely it is after; before, each was as likely.</summary>
    public required double Share { get; init; }
}

/// <summary>Evidence that contradicts what is trusted before it.</summary>
public sealed record PlantConflictDocument
{
    /// <summary>The wood.</summary>
    public required string Wood { get; init; }

    /// <summary>The kind that was left out.</summary>
    [JsonConverter(typeof(PlantEvidenceKindConverter))]
    public required PlantEvidenceKind Kind { get; init; }

    /// <summary>Median permeability by what was trusted before it, m².</summary>
    public required double TrustedMedianM2 { get; init; }

    /// <summary>The same by this kind alone, m².</summary>
    public required double KindMedianM2 { get; init; }

    internal static IEnumerable<PlantConflictDocument> Of(PlantWood wood) =>
        wood.Calibration.Conflicts.Select(conflict => new PlantConflictDocument
        {
            Wood = conflict.ByTrusted.Name,
            Kind = conflict.Kind,
            TrustedMedianM2 = conflict.ByTrusted.LateralMedianM2,
            KindMedianM2 = conflict.KindMedianM2,
        });
}

/// <summary>A charge in which nothing penetrated.</summary>
public sealed record PlantUntakenDocument
{
    /// <summary>The wood.</summary>
    public required string Wood { get; init; }

    /// <summary>The charge.</summary>
    public required string Charge { get; init; }

    /// <summary>Mean depth that nineteen of twenty such charges should have passed, mm.</summary>
    public required double ForetoldLeastMm { get; init; }

    internal static IEnumerable<PlantUntakenDocument> Of(PlantWood wood) =>
        wood.Calibration.Untaken.Select(charge => new PlantUntakenDocument
        {
            Wood = wood.Calibration.Fit.Before.Name,
            Charge = charge.Charge,
            ForetoldLeastMm = charge.ForetoldLeastMm,
        });
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

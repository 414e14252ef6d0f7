using Alburnum.Impregnation.Prediction;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A wood's permeability, calibrated by what a plant measured of its own charges.</summary>
/// <param name="IsHeartwood">True of the heartwood.</param>
/// <param name="Calibration">The law before and after, and how its forecasts came out.</param>
/// <param name="Sections">Each measured section that its depths were read on.</param>
public sealed record PlantWood(bool IsHeartwood, PlantCalibration Calibration, IReadOnlyList<CountedSection> Sections)
{
    /// <summary>Most product that the walls take up by each law that assays were weighed against, g per kg of oven-dry wood; empty where it is known.</summary>
    public IReadOnlyList<double> WallsMostGPerKg => Calibration.Fit.WallShares.Count > 0 ? ZoneLaws.MostGPerKg : [];
}

/// <summary>A measured section.</summary>
/// <param name="Places">Places at which its depth was read.</param>
/// <param name="Counted">Places far enough apart to count.</param>
/// <param name="DistanceMm">How far apart these lie, mm; infinite where one of each face counts.</param>
public sealed record CountedSection(int Places, int Counted, double DistanceMm);

/// <summary>What is foretold of a plant's charges.</summary>
public enum PlantMeasure
{
    /// <summary>Mean depth in sapwood, mm.</summary>
    SapwoodDepth,

    /// <summary>Mean depth in heartwood, mm.</summary>
    HeartwoodDepth,

    /// <summary>Net uptake, L/m³.</summary>
    Uptake,
}

/// <summary>What the woods of a plant have in common.</summary>
public static class PlantWoods
{
    /// <summary>What the plant's uptakes are over those expected of its wood; null where nothing was read of whole charges.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    public static double? UptakeFactor(this IReadOnlyList<PlantWood> woods) =>
        woods.Select(wood => wood.Calibration.Fit.UptakeFactor?.Value).FirstOrDefault(factor => factor is not null);

    /// <summary>The same question with its laws calibrated: pieces of any size at the moisture that the plant's charges were asked about.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    /// <param name="asked">What is asked.</param>
    internal static TreatingQuestion Applied(this IReadOnlyList<PlantWood> woods, TreatingQuestion asked) =>
        woods.Aggregate(
            asked,
            (question, wood) =>
                question with
                {
                    Prediction = wood.IsHeartwood
                        ? question.Prediction with
                        {
                            Heartwood = wood.Calibration.Fit.After,
                        }
                        : question.Prediction with
                        {
                            Sapwood = wood.Calibration.Fit.After,
                        },
                }
        );

    /// <summary>The same pieces, taking up as the plant's do.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    /// <param name="quick">What is expected of its wood.</param>
    /// <param name="voidFraction">Share of the volume that is cavity.</param>
    internal static QuickPrediction Applied(
        this IReadOnlyList<PlantWood> woods,
        QuickPrediction quick,
        double voidFraction
    ) => woods.UptakeFactor() is { } factor ? quick.TakingUp(factor, voidFraction) : quick;

    /// <summary>Each measure that was foretold, with how it came out.</summary>
    /// <param name="woods">Each wood that the plant's charges speak of.</param>
    public static IEnumerable<(PlantMeasure Measure, ForecastRecord Record)> Forecasts(
        this IReadOnlyList<PlantWood> woods
    )
    {
        ArgumentNullException.ThrowIfNull(woods);
        foreach (var (isHeartwood, calibration, _) in woods)
        {
            if (calibration.DepthsMm is { } depths)
                yield return (isHeartwood ? PlantMeasure.HeartwoodDepth : PlantMeasure.SapwoodDepth, depths);
            if (calibration.UptakesLPerM3 is { } uptakes)
                yield return (PlantMeasure.Uptake, uptakes);
        }
    }
}

using Alburnum.Records.Sweeps;

namespace Alburnum.Workflows.Impregnation;

/// <summary>What a map of a sweep shows.</summary>
public enum SweepMeasure
{
    /// <summary>Share of pieces that meet the demand everywhere.</summary>
    Pieces,

    /// <summary>Share of cores that meet the demand.</summary>
    Cores,

    /// <summary>Mean depth of the middle piece, mm.</summary>
    MeanDepth,

    /// <summary>Least depth of the middle piece, mm.</summary>
    LeastDepth,

    /// <summary>Net uptake of the middle piece, L per m³.</summary>
    Uptake,

    /// <summary>Solution in the zone of the middle piece, L per m³ of zone.</summary>
    Zone,
}

/// <summary>Takes one measure of a point.</summary>
public static class SweptMeasure
{
    /// <summary>True for shares, 0 to 1.</summary>
    public static bool IsShare(this SweepMeasure measure) => measure is SweepMeasure.Pieces or SweepMeasure.Cores;

    /// <summary>The measure at a point; null where its two inputs cannot be combined.</summary>
    /// <param name="point">The point.</param>
    /// <param name="measure">The measure.</param>
    public static double? At(this SweptPoint point, SweepMeasure measure) =>
        point is not PredictedPoint { Measures: var measures }
            ? null
            : measure switch
            {
                SweepMeasure.Pieces => measures.PieceShare,
                SweepMeasure.Cores => measures.CoreShare,
                SweepMeasure.MeanDepth => measures.MeanDepthMm,
                SweepMeasure.LeastDepth => measures.LeastDepthMm,
                SweepMeasure.Uptake => measures.UptakeLPerM3,
                SweepMeasure.Zone => measures.ZoneLPerM3,
                _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure."),
            };
}

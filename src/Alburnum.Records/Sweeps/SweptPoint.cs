namespace Alburnum.Records.Sweeps;

/// <summary>One point of a sweep over two inputs.</summary>
/// <param name="Column">Which value of the input across, from 0.</param>
/// <param name="Row">Which value of the input up, from 0.</param>
/// <param name="Across">Value of the input across.</param>
/// <param name="Up">Value of the input up.</param>
public abstract record SweptPoint(int Column, int Row, double Across, double Up);

/// <summary>A point that was predicted.</summary>
/// <param name="Column">Which value of the input across, from 0.</param>
/// <param name="Row">Which value of the input up, from 0.</param>
/// <param name="Across">Value of the input across.</param>
/// <param name="Up">Value of the input up.</param>
/// <param name="Measures">What is expected there.</param>
public sealed record PredictedPoint(int Column, int Row, double Across, double Up, SweptMeasures Measures)
    : SweptPoint(Column, Row, Across, Up);

/// <summary>A point whose two inputs cannot be combined.</summary>
/// <param name="Column">Which value of the input across, from 0.</param>
/// <param name="Row">Which value of the input up, from 0.</param>
/// <param name="Across">Value of the input across.</param>
/// <param name="Up">Value of the input up.</param>
/// <param name="Why">The refusal, one sentence.</param>
public sealed record ImpossiblePoint(int Column, int Row, double Across, double Up, string Why)
    : SweptPoint(Column, Row, Across, Up);

/// <summary>What is expected at a point.</summary>
public sealed record SweptMeasures
{
    /// <summary>Share of pieces that meet the demand everywhere, 0 to 1; null where no depth is asked for.</summary>
    public required double? PieceShare { get; init; }

    /// <summary>Share of cores that meet the demand, 0 to 1; null likewise.</summary>
    public required double? CoreShare { get; init; }

    /// <summary>Mean depth of the middle piece, mm.</summary>
    public required double MeanDepthMm { get; init; }

    /// <summary>Least depth of the middle piece, mm.</summary>
    public required double LeastDepthMm { get; init; }

    /// <summary>Net uptake of the middle piece, L per m³.</summary>
    public required double UptakeLPerM3 { get; init; }

    /// <summary>Solution in the zone of the middle piece, L per m³ of zone.</summary>
    public required double ZoneLPerM3 { get; init; }
}

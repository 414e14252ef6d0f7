namespace Alburnum.Impregnation.Prediction;

/// <summary>How permeable a kind of wood is, and how unevenly: log-normal between batches, between pieces and within a piece.</summary>
public sealed record PermeabilityLaw
{
    /// <summary>What the law speaks of, for instance "treatability class 3" or "spruce".</summary>
    public required string Name { get; init; }

    /// <summary>Median permeability to liquid across the grain, m²: the geometric mean of radial and tangential. 1e-24 to 1e-10.</summary>
    public required double LateralMedianM2
    {
        get;
        init => field = Require.InRange(value, 1e-24, 1e-10, "m²");
    }

    /// <summary>How the three directions differ.</summary>
    public required FlowDirections Directions { get; init; }

    /// <summary>No timber is known to spread wider: a factor of about 150, twice over.</summary>
    internal const double MostLnSpread = 5;

    /// <summary>Standard deviation of the natural logarithm between batches, our not knowing the median included. 0 to 5.</summary>
    public required double BatchLnSpread
    {
        get;
        init => field = Require.InRange(value, 0, MostLnSpread, "");
    }

    /// <summary>The same between the pieces of a batch. 0 to 5.</summary>
    public required double PieceLnSpread
    {
        get;
        init => field = Require.InRange(value, 0, MostLnSpread, "");
    }

    /// <summary>The same between places of one piece. 0 to 5.</summary>
    public required double WithinLnSpread
    {
        get;
        init => field = Require.InRange(value, 0, MostLnSpread, "");
    }

    /// <summary>True where the numbers were worked back from depths or classes rather than measured.</summary>
    public required bool IsInference { get; init; }

    /// <summary>Charges that the law was fitted to; null where it was not fitted.</summary>
    public int? FittedCharges { get; init; }

    /// <summary>Source and standing.</summary>
    public required Provenance Provenance { get; init; }

    /// <summary>Standard deviation of the natural logarithm over all pieces of all batches, as predictions use it.</summary>
    public double PieceToPieceLnSpread => Math.Sqrt(BatchLnSpread * BatchLnSpread + PieceLnSpread * PieceLnSpread);

    /// <summary>How many times as permeable as the median a twentieth of all pieces is, at least; another twentieth falls short of it by the same factor.</summary>
    public double TwentiethFactor => Math.Exp(Spread.NormalDeviations * PieceToPieceLnSpread);

    /// <summary>The law of wood so many times as permeable.</summary>
    /// <param name="factor">Above 0.</param>
    public PermeabilityLaw Times(double factor) => this with { LateralMedianM2 = LateralMedianM2 * factor };

    /// <summary>Permeability straight in from a place, over the mean of radial and tangential.</summary>
    /// <param name="radialShare">Share of radial direction in the way inwards, 0 to 1.</param>
    public double InwardsTimes(double radialShare)
    {
        var tilt = Math.Sqrt(Directions.TangentialToRadial);
        return radialShare / tilt + (1 - radialShare) * tilt;
    }

    /// <summary>The median wood in its three directions, multiplied by a factor.</summary>
    /// <param name="factor">Above 0.</param>
    public Permeability Typical(double factor = 1)
    {
        var lateral = LateralMedianM2 * Require.Positive(factor, "(ratio)");
        var tilt = Math.Sqrt(Directions.TangentialToRadial);
        var along = Math.Min(1e-9, lateral * Directions.LongitudinalToLateral);
        return new Permeability(lateral / tilt, lateral * tilt, along);
    }
}

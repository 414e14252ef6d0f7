namespace Alburnum.Impregnation.Prediction;

/// <summary>How permeable a kind of wood is, and how unevenly: log-normal between batches, between pieces and within a piece.</summary>
public sealed record PermeabilityLaw
{
    /// <summary>Checks every number.</summary>
    /// <param name="name">What the law speaks of, for instance "treatability class 3" or "spruce".</param>
    /// <param name="lateralMedianM2">Median permeability to liquid across the grain, m². 1e-24 to 1e-10.</param>
    /// <param name="tangentialToRadial">Tangential over radial. 0.01 to 100.</param>
    /// <param name="longitudinalToLateral">Along the grain over across it. 1 to 1e7.</param>
    /// <param name="batchLnSpread">Standard deviation of the natural logarithm between batches, and of our not knowing the median. 0 to 5.</param>
    /// <param name="pieceLnSpread">The same between the pieces of a batch. 0 to 5.</param>
    /// <param name="withinLnSpread">The same between places of one piece. 0 to 5.</param>
    /// <param name="isInference">True where the numbers were worked back from depths or classes rather than measured.</param>
    /// <param name="provenance">Source and standing.</param>
    public PermeabilityLaw(
        string name,
        double lateralMedianM2,
        double tangentialToRadial,
        double longitudinalToLateral,
        double batchLnSpread,
        double pieceLnSpread,
        double withinLnSpread,
        bool isInference,
        Provenance provenance
    )
    {
        Name = name;
        LateralMedianM2 = Require.InRange(lateralMedianM2, 1e-24, 1e-10, "m²");
        TangentialToRadial = Require.InRange(tangentialToRadial, 0.01, 100, "(ratio)");
        LongitudinalToLateral = Require.InRange(longitudinalToLateral, 1, 1e7, "(ratio)");
        BatchLnSpread = Require.InRange(batchLnSpread, 0, 5, "");
        PieceLnSpread = Require.InRange(pieceLnSpread, 0, 5, "");
        WithinLnSpread = Require.InRange(withinLnSpread, 0, 5, "");
        IsInference = isInference;
        Provenance = provenance;
    }

    /// <summary>What the law speaks of.</summary>
    public string Name { get; }

    /// <summary>Median permeability across the grain, m²: the geometric mean of radial and tangential.</summary>
    public double LateralMedianM2 { get; }

    /// <summary>Tangential over radial.</summary>
    public double TangentialToRadial { get; }

    /// <summary>Along the grain over across it.</summary>
    public double LongitudinalToLateral { get; }

    /// <summary>Spread of the logarithm between batches, our not knowing the median included.</summary>
    public double BatchLnSpread { get; }

    /// <summary>Spread of the logarithm between pieces.</summary>
    public double PieceLnSpread { get; }

    /// <summary>Spread of the logarithm within a piece.</summary>
    public double WithinLnSpread { get; }

    /// <summary>True where the numbers were worked back rather than measured.</summary>
    public bool IsInference { get; }

    /// <summary>Source and standing.</summary>
    public Provenance Provenance { get; }

    /// <summary>The median wood in its three directions, multiplied by a factor.</summary>
    /// <param name="factor">Above 0.</param>
    public Permeability Typical(double factor = 1)
    {
        var lateral = LateralMedianM2 * Require.Positive(factor, "(ratio)");
        var tilt = Math.Sqrt(TangentialToRadial);
        return new Permeability(lateral / tilt, lateral * tilt, Math.Min(1e-9, lateral * LongitudinalToLateral));
    }
}
